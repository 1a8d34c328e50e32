import { describe, expect, test } from 'vitest';
import { layOut } from '../../../domain/calendar/lay-out.ts';
import type { Block } from '../../../domain/plan/plan.ts';
import { defaultSettings, type Room } from '../../../domain/settings.ts';
import {
  letter,
  letters,
  move,
  on,
  open,
  plan,
  rounds,
  testContext,
  testMove,
} from '../../helpers/plan-builder.ts';

const hall: Room = { name: 'Hall', kit: { dumbbell: 24, mat: 20 }, doorSeconds: 0, clearUpSeconds: 0 };
const context = {
  ...testContext(
    testMove('press', { kit: [{ item: 'dumbbell', pieces: 2 }] }),
    testMove('goblet', { kit: [{ item: 'dumbbell', pieces: 1 }] }),
    testMove('plank', { kit: [{ item: 'mat', pieces: 1 }] }),
    testMove('swing', {
      kit: [{ item: 'kettlebell', pieces: 1 }],
      otherKit: [[{ item: 'dumbbell', pieces: 1 }]],
    }),
    testMove('squat'),
  ),
  settings: { ...defaultSettings, rooms: [hall] },
};
const circuit = rounds('circuit', 3, on(40, 20), letters('press', 'goblet', 'plank'));

describe('what to lay out for a head count', () => {
  test.each<[string, readonly Block[], number, Record<string, number>]>([
    ['everyone at once: the most a person holds', [circuit], 12, { dumbbell: 24, mat: 12 }],
    ['one person', [circuit], 1, { dumbbell: 2, mat: 1 }],
    [
      'pieces of one block are used again in the next',
      [circuit, { ...circuit, id: 'next' }],
      4,
      { dumbbell: 8, mat: 4 },
    ],
    [
      'both moves of a superset, with the same pair',
      [rounds('circuit', 3, on(40, 20), [letter([move('press'), move('goblet'), move('plank')])])],
      5,
      { dumbbell: 10, mat: 5 },
    ],
    [
      'stations: the people at each, all stations at once',
      [
        rounds('stations', 2, on(45, 15), letters('press', 'goblet', 'plank', 'squat'), {
          peoplePerStation: 2,
        }),
      ],
      8,
      { dumbbell: 6, mat: 2 },
    ],
    [
      'stations without a number share the people out',
      [rounds('stations', 2, on(45, 15), letters('press', 'goblet', 'plank', 'squat'))],
      10,
      { dumbbell: 9, mat: 3 },
    ],
    [
      'in pairs, one rests: one of the two',
      [rounds('circuit', 3, on(40, 20), letters('press'), { pairs: 'one rests' })],
      9,
      { dumbbell: 10 },
    ],
    ['no kit', [open('warm-up', 300), rounds('circuit', 3, on(40, 20), letters('squat'))], 12, {}],
  ])('%s', (_, blocks, people, expected) => {
    const laidOut = layOut(plan(blocks), people, context);
    expect(Object.fromEntries(laidOut.map(({ item, pieces }) => [item, pieces]))).toEqual(expected);
  });

  test("where the room has no kettlebells, the move's other kit", () => {
    const swings = rounds('circuit', 3, on(40, 20), letters('swing'));
    expect(layOut(plan([swings], { room: 'Hall' }), 6, context)).toEqual([{ item: 'dumbbell', pieces: 6 }]);
    expect(layOut(plan([swings]), 6, context)).toEqual([{ item: 'kettlebell', pieces: 6 }]);
  });
});
