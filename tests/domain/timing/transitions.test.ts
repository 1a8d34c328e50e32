import { expect, test } from 'vitest';
import type { Move } from '../../../domain/catalogue/move.ts';
import type { Letter, PlannedMove } from '../../../domain/plan/plan.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { transitionSeconds } from '../../../domain/timing/transitions.ts';
import { letter, move, on, plan, rounds, testContext, testMove } from '../../helpers/plan-builder.ts';

/** Every figure follows from the default settings, which are common practice, no published source. */

const dumbbells = { kit: [{ item: 'dumbbell', pieces: 2 }] } as const;
const oneDumbbell = { kit: [{ item: 'dumbbell', pieces: 1 }] } as const;
const kettlebell = { kit: [{ item: 'kettlebell', pieces: 1 }] } as const;

const cases: readonly {
  what: string;
  from: Partial<Move>;
  to: Partial<Move>;
  fromLine?: Partial<PlannedMove>;
  toLine?: Partial<PlannedMove>;
  seconds: number;
}[] = [
  { what: 'nothing to do', from: {}, to: {}, seconds: 0 },
  { what: 'put down', from: dumbbells, to: {}, seconds: 2 },
  { what: 'pick up', from: {}, to: dumbbells, seconds: 3 },
  { what: 'swap', from: dumbbells, to: kettlebell, seconds: 5 },
  { what: 'the same kit stays in the hands', from: dumbbells, to: dumbbells, seconds: 0 },
  { what: 'one of a pair is put down', from: dumbbells, to: oneDumbbell, seconds: 2 },
  { what: 'a second one is picked up', from: oneDumbbell, to: dumbbells, seconds: 3 },
  {
    what: 'another weight of the same kit is a swap',
    from: oneDumbbell,
    to: oneDumbbell,
    fromLine: { weight: { kind: 'mass', amount: 8, unit: 'kg' } },
    toLine: { weight: { kind: 'mass', amount: 12, unit: 'kg' } },
    seconds: 5,
  },
  { what: 'a mat is not picked up', from: {}, to: { kit: [{ item: 'mat', pieces: 1 }] }, seconds: 0 },
  { what: 'stand to kneel', from: {}, to: { position: 'kneeling' }, seconds: 3 },
  { what: 'stand to floor', from: {}, to: { position: 'prone' }, seconds: 5 },
  { what: 'floor to stand', from: { position: 'supine' }, to: {}, seconds: 5 },
  { what: 'turn over on the floor', from: { position: 'prone' }, to: { position: 'supine' }, seconds: 2 },
  { what: 'kit and position add up', from: {}, to: { position: 'supine', ...dumbbells }, seconds: 8 },
];

test.each(cases)('$what: $seconds s', ({ from, to, fromLine, toLine, seconds }) => {
  const end = (id: string, facts: Partial<Move>, line: Partial<PlannedMove> = {}) => ({
    planned: move(id, line),
    known: testMove(id, facts),
    kit: facts.kit ?? [],
  });
  const need = (firstRound: boolean, factor = 1) =>
    transitionSeconds(end('from', from, fromLine), end('to', to, toLine), firstRound, {
      ...defaultSettings.transitions,
      factor,
    });
  const extra = defaultSettings.transitions.firstRoundExtraSeconds;
  expect(need(false)).toBe(seconds);
  expect(need(true)).toBe(seconds === 0 ? 0 : seconds + extra);
  expect(need(false, 1.5)).toBe(Math.round(seconds * 1.5));
});

test('an open line or a line of plain words needs nothing that can be known', () => {
  const known = { planned: move('squat'), known: testMove('squat', dumbbells), ...dumbbells };
  const words = { planned: move('x', { choice: { kind: 'words', text: 'dance' } }), kit: [] };
  expect(transitionSeconds(known, words, true, defaultSettings.transitions)).toBe(0);
  expect(transitionSeconds(words, known, true, defaultSettings.transitions)).toBe(0);
});

const context = testContext(testMove('squat', dumbbells), testMove('plank', { position: 'prone' }));
const late = (lines: readonly Letter[], restSeconds: number, times = 1) =>
  buildTimeline(plan([rounds('circuit', times, on(40, restSeconds), lines)]), context).lateStarts.map(
    ({ startSeconds, needSeconds, gapSeconds, lateSeconds }) => [
      startSeconds,
      needSeconds,
      gapSeconds,
      lateSeconds,
    ],
  );
const squat = letter([move('squat')]);
const plank = letter([move('plank')]);

test('before the first bout there is no need; a gap as long as the need is enough', () => {
  expect(late([squat, plank], 9)).toEqual([]);
});

test('need beyond the gap is a late start, longer in the first round', () => {
  // Put down 2 + to the floor 5 = 7, and 2 more in round 1; back: pick up 3 + stand 5 = 8.
  expect(late([squat, plank], 5, 2)).toEqual([
    [45, 9, 5, 4],
    [90, 8, 5, 3],
    [135, 7, 5, 2],
  ]);
});

test('the kit at hand decides what is in the hands', () => {
  const either = testMove('squat', { ...dumbbells, otherKit: [kettlebell.kit] });
  const own = testContext(either, testMove('swing', kettlebell));
  const pair = plan([rounds('circuit', 1, on(40, 0), [letter([move('squat'), move('swing')])])], {
    kit: ['kettlebell'],
  });
  // With dumbbells it would be a swap, 5 s.
  expect(buildTimeline(pair, own).lateStarts).toEqual([]);
  const { kit: _, ...facts } = pair.facts;
  expect(buildTimeline({ ...pair, facts }, own).lateStartSeconds).toBe(7);
});

test('a superset leaves no gap', () => {
  expect(late([letter([move('squat'), move('plank')])], 20)).toEqual([[40, 9, 0, 9]]);
});

test('a change of side takes 3 s, of which an odd split gives one', () => {
  const lunge = (seconds: number) => letter([move('plank', { sides: 'split sides', workSeconds: seconds })]);
  expect(late([lunge(40)], 20)).toEqual([[20, 3, 0, 3]]);
  expect(late([lunge(45)], 20)).toEqual([[23, 3, 1, 2]]);
});
