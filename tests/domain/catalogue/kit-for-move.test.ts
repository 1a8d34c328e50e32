import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { KitItem } from '../../../domain/catalogue/kit.ts';
import { kitForMove } from '../../../domain/catalogue/kit-for-move.ts';

const kitFor = (id: string, ...atHand: readonly KitItem[]) => {
  const move = catalogue.byId.get(id);
  if (move === undefined) throw new Error(`no move ${id}`);
  return kitForMove(move, (item) => atHand.includes(item));
};

describe('the kit one person takes', () => {
  test('is the first of the move’s kits that is at hand', () => {
    expect(kitFor('goblet-squat', 'dumbbell', 'kettlebell')).toEqual([{ item: 'dumbbell', pieces: 1 }]);
    expect(kitFor('goblet-squat', 'kettlebell')).toEqual([{ item: 'kettlebell', pieces: 1 }]);
    expect(kitFor('bent-over-row', 'barbell', 'plate')).toEqual([
      { item: 'barbell', pieces: 1 },
      { item: 'plate', pieces: 2 },
    ]);
  });

  test('is none where something needed is missing', () => {
    expect(kitFor('goblet-squat', 'mat', 'chair')).toBeUndefined();
    expect(kitFor('dumbbell-step-up', 'dumbbell')).toBeUndefined();
  });

  test('has a mat where there is one, and does without where not', () => {
    expect(kitFor('plank', 'mat')).toEqual([{ item: 'mat', pieces: 1 }]);
    expect(kitFor('plank')).toEqual([]);
    expect(kitFor('dumbbell-floor-press', 'dumbbell')).toEqual([{ item: 'dumbbell', pieces: 2 }]);
  });

  test('is nothing for a move that needs nothing', () => {
    expect(kitFor('bodyweight-squat')).toEqual([]);
  });
});
