import { describe, expect, test } from 'vitest';
import { type Limit, optionsSheet } from '../../../domain/plan/options-sheet.ts';
import { contextWith, planOf } from '../checks/subject-of.ts';

const text = `Options, 40 min, level 2, 10 people
kit: dumbbells, mats
warm-up 5:00
circuit x3, 40/20
goblet squat
push-up easier wall push-up
dead bug
dumbbell shoulder press + squat jump
mountain climber
cool-down to the end`;

const sheet = (...limits: readonly Limit[]): Readonly<Record<string, string>> => {
  const context = contextWith();
  return Object.fromEntries(
    optionsSheet(planOf(text, context), limits, context).map(({ label, does }) => [
      label,
      does.kind === 'instead' ? `${does.moveId} (${does.from})` : does.kind,
    ]),
  );
};

describe('optionsSheet', () => {
  test('no jumps: the easier option of the catalogue', () => {
    expect(sheet('no jumps')).toEqual({
      A: 'as planned',
      B: 'as planned',
      C: 'as planned',
      D1: 'as planned',
      D2: 'squat-to-calf-raise (the catalogue)',
      E: 'as planned',
    });
  });

  test('no floor: the option named on the line comes first', () => {
    expect(sheet('no floor')).toEqual({
      A: 'as planned',
      B: 'wall-push-up (the plan)',
      C: 'standing-crunch (the catalogue)',
      D1: 'as planned',
      D2: 'as planned',
      E: 'standing-crunch (the catalogue)',
    });
  });

  test.each([
    [
      'no wrists',
      {
        A: 'as planned',
        B: 'wall-push-up (the plan)',
        C: 'as planned',
        D1: 'as planned',
        D2: 'as planned',
        E: 'plank-reach (the catalogue)',
      },
    ],
    [
      'nothing overhead',
      {
        A: 'as planned',
        B: 'as planned',
        C: 'as planned',
        D1: 'lateral-raise (the catalogue)',
        D2: 'as planned',
        E: 'as planned',
      },
    ],
    [
      'not on the back',
      {
        A: 'as planned',
        B: 'as planned',
        C: 'plank-toe-tap (the catalogue)',
        D1: 'as planned',
        D2: 'as planned',
        E: 'as planned',
      },
    ],
  ] as const)('%s', (limit, expected) => {
    expect(sheet(limit)).toEqual(expected);
  });

  test('several limits at once', () => {
    expect(sheet('no floor', 'nothing overhead', 'no jumps')).toEqual({
      A: 'as planned',
      B: 'wall-push-up (the plan)',
      C: 'standing-crunch (the catalogue)',
      D1: 'lateral-raise (the catalogue)',
      D2: 'squat-to-calf-raise (the catalogue)',
      E: 'standing-crunch (the catalogue)',
    });
  });
});
