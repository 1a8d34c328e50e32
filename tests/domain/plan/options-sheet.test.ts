import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Move } from '../../../domain/catalogue/move.ts';
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
      does.kind === 'instead'
        ? `${does.from === 'the plan' ? does.moveId : 'instead'} (${does.from})`
        : does.kind,
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
      D2: 'instead (the catalogue)',
      E: 'as planned',
    });
  });

  test('no floor: the option named on the line comes first', () => {
    expect(sheet('no floor')).toEqual({
      A: 'as planned',
      B: 'wall-push-up (the plan)',
      C: 'instead (the catalogue)',
      D1: 'as planned',
      D2: 'as planned',
      E: 'instead (the catalogue)',
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
        E: 'instead (the catalogue)',
      },
    ],
    [
      'nothing overhead',
      {
        A: 'as planned',
        B: 'as planned',
        C: 'as planned',
        D1: 'instead (the catalogue)',
        D2: 'as planned',
        E: 'as planned',
      },
    ],
    [
      'not on the back',
      {
        A: 'as planned',
        B: 'as planned',
        C: 'instead (the catalogue)',
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
      C: 'instead (the catalogue)',
      D1: 'instead (the catalogue)',
      D2: 'instead (the catalogue)',
      E: 'instead (the catalogue)',
    });
  });

  test.each([
    ['no jumps', (move: Move) => !move.traits.includes('impact')],
    ['no floor', (move: Move) => move.position === 'standing' && !move.traits.includes('head below heart')],
    ['no wrists', (move: Move) => !move.traits.includes('wrists')],
    ['nothing overhead', (move: Move) => !move.traits.includes('overhead')],
    ['not on the back', (move: Move) => move.position !== 'supine'],
  ] as const)('%s: every option fits, trains the same muscle and has its kit there', (limit, fits) => {
    const context = contextWith();
    const told = optionsSheet(planOf(text, context), [limit], context).flatMap(({ moveId, does }) =>
      does.kind === 'instead'
        ? [{ planned: catalogue.byId.get(moveId), option: catalogue.byId.get(does.moveId) }]
        : [],
    );
    expect(told.length).toBeGreaterThan(0);
    expect(
      told.filter(
        ({ planned, option }) =>
          option === undefined ||
          !fits(option) ||
          option.primeMovers[0] !== planned?.primeMovers[0] ||
          !option.kit.every(({ item }) => item === 'dumbbell' || item === 'mat'),
      ),
    ).toEqual([]);
  });
});
