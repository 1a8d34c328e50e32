import { describe, expect, test } from 'vitest';
import type { Letter, Plan } from '../../../domain/plan/plan.ts';
import { planDifference } from '../../../domain/plan/plan-difference.ts';
import { letters, on, open, plan, rounds, time } from '../../helpers/plan-builder.ts';

const [squat, row, plank] = letters('squat', 'row', 'plank');
if (squat === undefined || row === undefined || plank === undefined) throw new Error('three letters');

const circuit = (lines: readonly Letter[], restSeconds = 20) =>
  rounds('circuit', 3, on(40, restSeconds), lines);
const first: Plan = plan([open('warm-up', 360), circuit([squat, row, plank]), open('cool-down', 300)]);
const changedTo = (lines: readonly Letter[], restSeconds?: number): Plan => ({
  ...first,
  blocks: [open('warm-up', 360), circuit(lines, restSeconds), open('cool-down', 300)],
});

describe('what differs between two versions', () => {
  test('nothing, where only spans and ids of moves differ', () => {
    const span = { start: 9, end: 12 };
    const reread = { ...squat, span, moves: squat.moves.map((move) => ({ ...move, span })) };
    expect(planDifference(first, changedTo([reread, row, plank]))).toEqual([]);
  });

  test('an added and a dropped letter, by the label each has where it stands', () => {
    expect(planDifference(first, changedTo([squat, row]))).toEqual([
      { kind: 'letter dropped', label: 'C', letter: plank },
    ]);
    expect(planDifference(changedTo([squat, row]), first)).toEqual([
      { kind: 'letter added', label: 'C', letter: plank },
    ]);
  });

  test('a changed letter', () => {
    const short = { ...row, restSeconds: 10 };
    expect(planDifference(first, changedTo([squat, short, plank]))).toEqual([
      { kind: 'letter changed', label: 'B', before: row, after: short },
    ]);
  });

  test('only the letter that moved, not those it passed', () => {
    expect(planDifference(first, changedTo([plank, squat, row]))).toEqual([
      { kind: 'letter moved', from: 'C', to: 'A', letter: plank },
    ]);
  });

  test('a changed block apart from its letters, and whole blocks', () => {
    const slower = changedTo([squat, row, plank], 30);
    expect(planDifference(first, slower)).toEqual([
      { kind: 'block changed', before: first.blocks[1], after: slower.blocks[1], place: 1 },
    ]);
    const water = time('water', 60);
    const watered = { ...first, blocks: [...first.blocks.slice(0, 2), water, ...first.blocks.slice(2)] };
    expect(planDifference(first, watered)).toEqual([{ kind: 'block added', block: water, place: 2 }]);
    expect(planDifference(watered, first)).toEqual([{ kind: 'block dropped', block: water, place: 2 }]);
  });

  test('facts of the title line', () => {
    const crowd = { ...first, facts: { ...first.facts, people: 18 } };
    expect(planDifference(first, crowd)).toEqual([
      { kind: 'fact changed', fact: 'people', before: first.facts, after: crowd.facts },
    ]);
  });
});
