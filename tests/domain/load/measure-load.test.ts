import { expect, test } from 'vitest';
import type { Move } from '../../../domain/catalogue/move.ts';
import { measureLoad } from '../../../domain/load/measure-load.ts';
import type { Block } from '../../../domain/plan/plan.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import {
  amrap,
  emom,
  ladder,
  letter,
  letters,
  move,
  on,
  open,
  plan,
  rounds,
  tabata,
  testContext,
  testMove,
} from '../../helpers/plan-builder.ts';

const loadOf = (blocks: readonly Block[], moves: readonly Move[], settings = {}) => {
  const context = testContext(...moves);
  const own = { ...context, settings: { ...context.settings, ...settings } };
  const whole = plan(blocks);
  return measureLoad(whole, buildTimeline(whole, own), own);
};

test('fractional sets, worked (Pelland JC et al. Sports Med 2025, weights; sums are arithmetic)', () => {
  const moves = [
    testMove('push-up', { primeMovers: ['chest'], assisting: ['shoulders', 'triceps'] }),
    testMove('press', { primeMovers: ['shoulders'], assisting: ['triceps'] }),
    testMove('row', { primeMovers: ['upper back'], assisting: ['biceps', 'lats', 'shoulders'] }),
    testMove('squat', { primeMovers: ['quadriceps'], assisting: ['glutes', 'hamstrings'] }),
  ];
  const line = (id: string, times: number) => letter([move(id)], { rounds: times });
  const block = rounds('straight', 4, on(40, 20), [
    line('push-up', 4),
    line('press', 3),
    line('row', 4),
    line('squat', 4),
  ]);
  expect(loadOf([block], moves).setsByMuscle).toEqual({
    chest: 4,
    shoulders: 7,
    triceps: 3.5,
    'upper back': 4,
    lats: 2,
    biceps: 2,
    quadriceps: 4,
    glutes: 2,
    hamstrings: 2,
  });
});

const squat = testMove('squat', { primeMovers: ['quadriceps'] });
const plank = testMove('plank', { primeMovers: ['abdominals'], effort: 'hold', pattern: 'anti-extension' });
const swing = testMove('swing', { primeMovers: ['glutes'], traits: ['ballistic'], pattern: 'hinge' });
const jump = testMove('jump', { primeMovers: ['quadriceps'], pattern: 'jump' });
const burpee = testMove('burpee', { effort: 'conditioning', pattern: 'locomotion' });
const bug = testMove('bug', { primeMovers: ['abdominals'], sides: 'alternating by nature' });
const all = [squat, plank, swing, jump, burpee, bug];

/** Sets and seconds of the only row that a block gives; the rules are common practice but the 1 and ½. */
const cases: readonly { rule: string; block: Block; sets: number; tension: number; conditioning?: number }[] =
  [
    {
      rule: 'a bout of 30 s is a set',
      block: rounds('circuit', 3, on(30, 10), letters('squat')),
      sets: 3,
      tension: 90,
    },
    {
      rule: 'a bout of 29 s half',
      block: rounds('circuit', 3, on(29, 10), letters('squat')),
      sets: 1.5,
      tension: 87,
    },
    {
      rule: 'a bout of 15 s half',
      block: rounds('circuit', 1, on(15, 10), letters('squat')),
      sets: 0.5,
      tension: 15,
    },
    {
      rule: 'a bout of 14 s time only',
      block: rounds('circuit', 1, on(14, 10), letters('squat')),
      sets: 0,
      tension: 14,
    },
    {
      rule: 'both sides together are one bout: 15 + 15 s is a set, 15 s a side less 3 s late on one',
      block: rounds('circuit', 1, on(30, 10), [letter([move('squat', { sides: 'split sides' })])]),
      sets: 1,
      tension: (15 + 15 - 3) / 2,
    },
    {
      rule: 'each side: two sides make one set, 40 s a side less 3 s late on one',
      block: rounds('circuit', 1, on(40, 10), [letter([move('squat', { sides: 'each side' })])]),
      sets: 1,
      tension: (40 + 40 - 3) / 2,
    },
    {
      rule: 'whole set each side: two sides make one set',
      block: rounds('circuit', 2, on(40, 10), [
        letter([move('squat', { sides: 'split sides' })], { wholeSetEachSide: true }),
      ]),
      sets: 2,
      tension: (4 * 40 - 2 * 3) / 2,
    },
    {
      rule: 'alternating work is half its time a side',
      block: rounds('circuit', 1, on(40, 10), [letter([move('squat', { sides: 'alternating' })])]),
      sets: 1,
      tension: 20,
    },
    {
      rule: 'one side only is half of what both would be',
      block: rounds('circuit', 1, on(40, 10), [letter([move('squat', { sides: 'right' })])]),
      sets: 0.5,
      tension: 20,
    },
    {
      rule: 'one side only of 20 s is half of a bout of 40 s',
      block: rounds('circuit', 1, on(20, 10), [letter([move('squat', { sides: 'left' })])]),
      sets: 0.5,
      tension: 10,
    },
    {
      rule: 'what alternates by nature is half its time a side too',
      block: rounds('circuit', 1, on(40, 10), letters('bug')),
      sets: 1,
      tension: 20,
    },
    {
      rule: 'in pairs, swap: each of the two turns is a bout',
      block: rounds('circuit', 1, on(40, 10), letters('squat'), { pairs: 'swap' }),
      sets: 2,
      tension: 80,
    },
    {
      rule: 'a hold of 30 s is half',
      block: rounds('circuit', 2, on(30, 10), letters('plank')),
      sets: 1,
      tension: 60,
    },
    {
      rule: 'a shorter hold none',
      block: rounds('circuit', 2, on(29, 10), letters('plank')),
      sets: 0,
      tension: 58,
    },
    {
      rule: 'swings count half',
      block: rounds('circuit', 2, on(30, 10), letters('swing')),
      sets: 1,
      tension: 60,
    },
    {
      rule: 'jumps count half',
      block: rounds('circuit', 2, on(30, 10), letters('jump')),
      sets: 1,
      tension: 60,
    },
    {
      rule: 'conditioning is minutes, no sets',
      block: rounds('circuit', 2, on(30, 10), letters('burpee')),
      sets: 0,
      tension: 0,
      conditioning: 60,
    },
    {
      rule: 'tabata: 8 short bouts of half a set',
      block: tabata(1, letters('squat')),
      sets: 4,
      tension: 160,
    },
    {
      rule: 'short bouts: at most 4 sets a move a block',
      block: tabata(2, letters('squat')),
      sets: 4,
      tension: 320,
    },
    {
      rule: 'EMOM: 6 reps are a set however short, at most 4',
      block: emom(3, [letter([move('squat', { reps: 6 })])]),
      sets: 3,
      tension: 54,
    },
    {
      rule: 'EMOM: fewer reps by their seconds (5 reps × 3 s = 15 s)',
      block: emom(3, [letter([move('squat', { reps: 5 })])]),
      sets: 1.5,
      tension: 45,
    },
    {
      rule: 'untimed work: 6 reps are a set',
      block: rounds('straight', 3, on(0, 60), [letter([move('squat', { reps: 6 })])]),
      sets: 3,
      tension: 54,
    },
    {
      rule: 'reps on the clock are a target: the seconds count',
      block: rounds('circuit', 2, on(20, 10), [letter([move('squat', { reps: 8 })])]),
      sets: 1,
      tension: 40,
    },
    {
      rule: 'AMRAP with rounds said: 5 × 6 reps ÷ 10',
      block: amrap(480, [letter([move('squat', { reps: 6 })])], { aboutRounds: 5 }),
      sets: 3,
      tension: 480,
    },
    {
      rule: 'AMRAP without: 90 s ÷ (10 reps × 3 s) = 3 rounds',
      block: amrap(90, [letter([move('squat', { reps: 10 })])]),
      sets: 3,
      tension: 90,
    },
    { rule: 'AMRAP with no reps: 90 s ÷ 45', block: amrap(90, letters('squat')), sets: 2, tension: 90 },
    {
      rule: 'AMRAP in pairs, one rests: each has half of the 180 s',
      block: amrap(180, letters('squat'), { pairs: 'one rests' }),
      sets: 2,
      tension: 90,
    },
    { rule: 'AMRAP: at least half a set', block: amrap(5, letters('squat')), sets: 0.5, tension: 5 },
    { rule: 'AMRAP: at most 4 sets a move', block: amrap(900, letters('squat')), sets: 4, tension: 900 },
    {
      rule: 'for time is one round: 30 reps ÷ 10',
      block: amrap(600, [letter([move('squat', { reps: 30 })])], { kind: 'for time' }),
      sets: 3,
      tension: 600,
    },
    {
      rule: 'for time of several rounds is not open-ended: 5 × 10 reps of 30 s',
      block: amrap(600, [letter([move('squat', { reps: 10 })])], { kind: 'for time', aboutRounds: 5 }),
      sets: 5,
      tension: 600,
    },
    {
      rule: 'ladder 12 10 8: 30 reps ÷ 10, 90 s',
      block: ladder([12, 10, 8], letters('squat')),
      sets: 3,
      tension: 90,
    },
    {
      rule: 'ladder, whole set each side: 30 reps a side ÷ 10, 90 s a side',
      block: ladder(
        [12, 10, 8],
        [letter([move('squat', { sides: 'split sides' })], { wholeSetEachSide: true })],
      ),
      sets: 3,
      tension: 180 / 2,
    },
    {
      rule: 'ladder, whole set each side: what works both sides at once is done twice, 60 ÷ 10',
      block: ladder([12, 10, 8], [letter([move('squat')], { wholeSetEachSide: true })]),
      sets: 6,
      tension: 180,
    },
    {
      rule: 'AMRAP, whole set each side: 2 rounds of 10 reps a side, 30 + 3 s a side',
      block: amrap(132, [
        letter([move('squat', { reps: 10, sides: 'split sides' })], { wholeSetEachSide: true }),
      ]),
      sets: 2,
      tension: 132 / 2,
    },
    {
      rule: 'AMRAP, whole set each side: what works both sides at once is done twice, 2 rounds of 20 reps',
      block: amrap(120, [letter([move('squat', { reps: 10 })], { wholeSetEachSide: true })]),
      sets: 4,
      tension: 120,
    },
    {
      rule: 'ladder: 5 reps of its own on each of 4 rungs, 20 ÷ 10',
      block: ladder([12, 10, 8, 6], [letter([move('squat', { reps: 5 })])]),
      sets: 2,
      tension: 60,
    },
    {
      rule: 'ladder under a cap of half its time: half its reps',
      block: ladder([12, 10, 8], letters('squat'), { capSeconds: 45 }),
      sets: 1.5,
      tension: 45,
    },
    {
      rule: 'ladder of short rungs: at most 4',
      block: ladder([9, 9, 9, 9, 9, 9], letters('squat')),
      sets: 4,
      tension: 162,
    },
  ];

test.each(cases)('$rule', ({ block, sets, tension, conditioning = 0 }) => {
  const { rows } = loadOf([block], all);
  expect(rows.map(({ sets: s, tensionSeconds: t, conditioningSeconds: c }) => [s, t, c])).toEqual([
    [sets, tension, conditioning],
  ]);
});

test.each([
  { what: '30 s at 3 s', seconds: 30, tempo: [2, 0, 1, 0], reps: 10 },
  { what: '40 s at 1-0-1-0', seconds: 40, tempo: [1, 0, 1, 0], reps: 20 },
  { what: '40 s at 2-0-2-0', seconds: 40, tempo: [2, 0, 2, 0], reps: 10 },
])('reps in a window: $what is $reps (arithmetic)', ({ seconds, tempo, reps }) => {
  const [lowerSeconds = 0, bottomPauseSeconds = 0, liftSeconds = 0, topPauseSeconds = 0] = tempo;
  const line = letter([
    move('squat', { tempo: { lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds } }),
  ]);
  expect(loadOf([rounds('circuit', 1, on(seconds, 0), [line])], all).rows[0]?.reps).toBe(reps);
});

test('AMRAP without rounds counts the change-overs in (pick up 3 + put down 2 a round)', () => {
  const press = testMove('press', { kit: [{ item: 'dumbbell', pieces: 2 }], primeMovers: ['shoulders'] });
  const lines = [letter([move('squat', { reps: 10 })]), letter([move('press', { reps: 10 })])];
  const { rows } = loadOf([amrap(195, lines)], [squat, press]);
  // 195 s ÷ (30 + 30 + 5) = 3 rounds: 3 sets each, half of the stretch each; both shown as about.
  expect(rows.map(({ sets, tensionSeconds, about }) => ({ sets, tensionSeconds, about }))).toEqual([
    { sets: 3, tensionSeconds: 97.5, about: true },
    { sets: 3, tensionSeconds: 97.5, about: true },
  ]);
});

test('a late start into an AMRAP is taken from its first move', () => {
  const press = testMove('press', { kit: [{ item: 'dumbbell', pieces: 2 }], primeMovers: ['shoulders'] });
  // No gap; pick up 3, and 2 more in the first round: 5 s of the first half of 100 s.
  const blocks = [rounds('circuit', 1, on(30, 0), letters('squat')), amrap(100, letters('press', 'plank'))];
  const { rows } = loadOf(blocks, [press, ...all]);
  expect(rows.map(({ tensionSeconds }) => tensionSeconds)).toEqual([30, 45, 50]);
});

test('reps of both sides are counted in shared work: 3 rounds of 5 each side', () => {
  const line = letter([move('squat', { sides: 'each side', reps: 5 })]);
  expect(loadOf([amrap(90, [line], { aboutRounds: 3 })], all).rows[0]?.reps).toBe(30);
});

test('late starts shorten time under tension and remove no set', () => {
  const row = testMove('row', { kit: [{ item: 'dumbbell', pieces: 2 }], primeMovers: ['lats'] });
  // Pick up 3, and 2 more in the first round; no gap.
  const { rows } = loadOf([rounds('circuit', 1, on(30, 0), letters('squat', 'row'))], [squat, row]);
  expect(rows.map(({ sets, tensionSeconds }) => [sets, tensionSeconds])).toEqual([
    [1, 30],
    [1, 25],
  ]);
});

test('patterns count the sets of their moves; an assisting muscle is under tension for the whole bout', () => {
  const press = testMove('press', {
    primeMovers: ['chest'],
    assisting: ['triceps'],
    pattern: 'horizontal push',
  });
  const load = loadOf(
    [rounds('circuit', 2, on(40, 20), letters('press', 'squat', 'burpee'))],
    [press, ...all],
  );
  expect(load).toMatchObject({
    setsByMuscle: { chest: 2, triceps: 1, quadriceps: 2 },
    tensionSecondsByMuscle: { chest: 80, triceps: 80, quadriceps: 80 },
    setsByPattern: { 'horizontal push': 2, squat: 2, locomotion: 0 },
    conditioningSeconds: 80,
  });
});

test('open lines, plain words and warm-ups load nothing', () => {
  const wish = { words: 'core', muscles: [], patterns: [], kit: [], without: [], standing: false };
  const lines = [
    letter([move('open', { choice: { kind: 'open', wish } })]),
    letter([move('dance', { choice: { kind: 'words', text: 'dance' } })]),
  ];
  const load = loadOf(
    [open('warm-up', 300), rounds('circuit', 3, on(40, 20), lines), amrap(300, lines)],
    all,
  );
  expect(load).toEqual({
    setsByMuscle: {},
    tensionSecondsByMuscle: {},
    setsByPattern: {},
    conditioningSeconds: 0,
    rows: [],
  });
});

test('a studio’s own move counts as one of the catalogue does', () => {
  const own = testMove('crawl', { primeMovers: ['shoulders'], pattern: 'locomotion' });
  const block = rounds('circuit', 2, on(0, 0), [letter([move('crawl', { reps: 12 })])], { kind: 'straight' });
  // 12 reps × 3 s = 36 s a set.
  expect(loadOf([block], all, { ownMoves: [own] })).toMatchObject({
    setsByMuscle: { shoulders: 2 },
    tensionSecondsByMuscle: { shoulders: 72 },
  });
});

test('session load stands where an effort is told (RPE 7 × 60 min = 420)', () => {
  const context = testContext(...all);
  const whole = plan([open('warm-up', 3600)]);
  const load = measureLoad(whole, buildTimeline(whole, context), { ...context, groupEffort: 7 });
  expect(load.sessionLoad).toBe(420);
});

test('energy is absent until the studio turns it on; then one row a block over its whole length', () => {
  const block = rounds('circuit', 2, on(40, 20), letters('squat', 'swing'));
  const hard = { ...swing, energy: { edition: 2024, code: '02058', met: 9.8 } } as const;
  expect(loadOf([block], [squat, hard]).energy).toBeUndefined();
  // 220 s at 9.8 MET: 9.8 × 3.5 × kg ÷ 200 × 220 ÷ 60.
  const { energy } = loadOf([block], [squat, hard], { energyOn: true });
  expect(energy?.rows).toEqual([{ block: 0, edition: 2024, code: '02058', met: 9.8, seconds: 220 }]);
  expect(energy?.lightKcal).toBeCloseTo(34.59, 2);
  expect(energy?.heavyKcal).toBeCloseTo(59.74, 2);
});
