import { describe, expect, test } from 'vitest';
import { kitRotations, kitShortages } from '../../../domain/calendar/kit-shortages.ts';
import type { Settings } from '../../../domain/settings.ts';
import { letters, on, plan, rounds, testContext, testMove } from '../../helpers/plan-builder.ts';

const base = testContext(
  testMove('swing', { kit: [{ item: 'kettlebell', pieces: 1 }] }),
  testMove('press', { kit: [{ item: 'dumbbell', pieces: 2 }] }),
  testMove('push-up'),
);
const settings: Settings = {
  ...base.settings,
  rooms: [{ name: 'Hall', kit: { kettlebell: 12, dumbbell: 30 }, doorSeconds: 0, clearUpSeconds: 0 }],
};
const context = { ...base, settings };
const circuit = plan([rounds('circuit', 3, on(40, 20), letters('push-up', 'swing'))]);
const straight = plan([rounds('straight', 3, on(40, 20), letters('press'))]);

describe('kit for those who came', () => {
  test('is short by what the room does not have', () => {
    expect(kitShortages(circuit, 18, 'Hall', context)).toEqual([
      { item: 'kettlebell', needPieces: 18, havePieces: 12 },
    ]);
    expect(kitShortages(circuit, 12, 'Hall', context)).toEqual([]);
    expect(kitShortages(circuit, 18, 'Attic', context)).toEqual([]);
  });

  test('those over start at a letter of the block that needs none of it', () => {
    expect(kitRotations(circuit, 18, 'Hall', context)).toEqual([
      {
        item: 'kettlebell',
        needPieces: 18,
        havePieces: 12,
        label: 'B',
        atOnce: 12,
        over: 6,
        startAt: 'A',
      },
    ]);
  });

  test('where every letter needs it, they share', () => {
    expect(kitRotations(straight, 16, 'Hall', context)).toEqual([
      { item: 'dumbbell', needPieces: 32, havePieces: 30, label: 'A', atOnce: 15, over: 1 },
    ]);
  });
});
