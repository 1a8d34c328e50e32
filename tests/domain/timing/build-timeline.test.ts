import { expect, test } from 'vitest';
import type { Block, Plan } from '../../../domain/plan/plan.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import type { Timeline } from '../../../domain/timing/timeline.ts';
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
  time,
} from '../../helpers/plan-builder.ts';

const context = testContext(
  testMove('squat'),
  testMove('row'),
  testMove('plank'),
  testMove('lunge'),
  testMove('kickback', { sides: 'one-sided' }),
);
const build = (blocks: readonly Block[], facts: Partial<Plan['facts']> = {}) =>
  buildTimeline(plan(blocks, facts), context);

/** A timeline in short: `work 40 squat right`, one segment each. */
const told = ({ segments }: Timeline): readonly string[] =>
  segments.map(({ kind, startSeconds, endSeconds, move: line, side, also }) =>
    [kind, endSeconds - startSeconds, kind === 'work' ? line?.replace('line ', '') : undefined, side, also]
      .filter((word) => word !== undefined)
      .join(' '),
  );

const pair = letter([move('squat'), move('row')]);
const warmUp = open('warm-up', 300);
const coolDown = open('cool-down', 300);
const circuit = (facts = {}) => rounds('circuit', 2, on(40, 20), letters('squat', 'row'), facts);

const cases: readonly { rule: string; blocks: readonly Block[]; expected: readonly string[] }[] = [
  {
    rule: 'circuit: all letters in turn, then again; the last rest goes at the end of the class',
    blocks: [circuit()],
    expected: [
      'work 40 squat',
      'rest 20',
      'work 40 row',
      'rest 20',
      'work 40 squat',
      'rest 20',
      'work 40 row',
    ],
  },
  {
    rule: 'the last rest is kept where another block follows at once',
    blocks: [rounds('circuit', 1, on(40, 20), letters('squat')), coolDown],
    expected: ['work 40 squat', 'rest 20', 'open 300'],
  },
  {
    rule: 'a rest line replaces it, once',
    blocks: [rounds('circuit', 1, on(40, 20), letters('squat')), time('rest', 60), coolDown],
    expected: ['work 40 squat', 'between-blocks 60', 'open 300'],
  },
  {
    rule: 'a rest line replaces the rest of a last letter of its own too',
    blocks: [
      rounds('circuit', 1, on(40, 20), [letter([move('squat')], { restSeconds: 90 })]),
      time('rest', 60),
      coolDown,
    ],
    expected: ['work 40 squat', 'between-blocks 60', 'open 300'],
  },
  {
    rule: 'water, explain, set-up do as a rest line does; several add up',
    blocks: [
      rounds('circuit', 1, on(40, 20), letters('squat')),
      time('water', 60),
      time('explain', 30),
      time('set-up', 45),
      rounds('circuit', 1, on(40, 20), letters('row')),
    ],
    expected: ['work 40 squat', 'between-blocks 60 water', 'explain 30', 'set-up 45', 'work 40 row'],
  },
  {
    rule: 'rest with explain puts the explaining inside',
    blocks: [
      rounds('circuit', 1, on(40, 20), letters('squat')),
      time('rest', 60, true),
      rounds('circuit', 1, on(40, 20), letters('row')),
    ],
    expected: ['work 40 squat', 'between-blocks 60 explain', 'work 40 row'],
  },
  {
    rule: 'explain and set-up may open a class, clear-up may end it',
    blocks: [
      time('set-up', 60),
      time('explain', 30),
      rounds('circuit', 1, on(40, 20), letters('squat')),
      time('clear-up', 90),
    ],
    expected: ['set-up 60', 'explain 30', 'work 40 squat', 'set-up 90 clear-up'],
  },
  {
    rule: 'straight sets: a letter all its rounds, then the next; the rest after every round',
    blocks: [rounds('straight', 2, on(40, 20), letters('squat', 'row'))],
    expected: [
      'work 40 squat',
      'rest 20',
      'work 40 squat',
      'rest 20',
      'work 40 row',
      'rest 20',
      'work 40 row',
    ],
  },
  {
    rule: 'straight sets: a letter with its own rounds and reps',
    blocks: [
      rounds('straight', 3, undefined, [
        letter([move('squat', { reps: 10 })], { rounds: 2, restSeconds: 60 }),
      ]),
    ],
    expected: ['work 30 squat', 'rest 60', 'work 30 squat'],
  },
  {
    rule: 'straight sets by reps: the block’s rest after every round',
    blocks: [rounds('straight', 2, on(0, 45), [letter([move('squat', { reps: 10 })])])],
    expected: ['work 30 squat', 'rest 45', 'work 30 squat'],
  },
  {
    rule: 'between rounds replaces the rest at the end of every round but the last',
    blocks: [circuit({ betweenRoundsSeconds: 60 }), coolDown],
    expected: [
      'work 40 squat',
      'rest 20',
      'work 40 row',
      'between-rounds 60',
      'work 40 squat',
      'rest 20',
      'work 40 row',
      'rest 20',
      'open 300',
    ],
  },
  {
    rule: 'between letters does the same in straight sets',
    blocks: [
      rounds('straight', 2, on(40, 20), letters('squat', 'row'), { betweenLettersSeconds: 90 }),
      coolDown,
    ],
    expected: [
      'work 40 squat',
      'rest 20',
      'work 40 squat',
      'rest 90',
      'work 40 row',
      'rest 20',
      'work 40 row',
      'rest 20',
      'open 300',
    ],
  },
  {
    rule: 'lists of work and rest are one value a round',
    blocks: [rounds('circuit', 3, [on(20, 10), on(30, 10), on(40, 10)], letters('squat'))],
    expected: ['work 20 squat', 'rest 10', 'work 30 squat', 'rest 10', 'work 40 squat'],
  },
  {
    rule: 'stations of unequal length are as typed',
    blocks: [
      rounds('stations', 1, on(45, 15), [
        letter([move('squat', { workSeconds: 60 })]),
        letter([move('row')]),
      ]),
    ],
    expected: ['work 60 squat', 'rest 15', 'work 45 row'],
  },
  {
    rule: 'a superset has no rest inside, its letter’s own rest after it',
    blocks: [rounds('circuit', 1, on(40, 20), [{ ...pair, restSeconds: 15 }, ...letters('plank')])],
    expected: ['work 40 squat', 'work 40 row', 'rest 15', 'work 40 plank'],
  },
  {
    rule: 'finisher with no rest',
    blocks: [rounds('finisher', 2, on(60, 0), letters('squat'))],
    expected: ['work 60 squat', 'work 60 squat'],
  },
  {
    rule: 'an odd split is two equal halves, the odd second being the change',
    blocks: [rounds('circuit', 1, on(45, 0), [letter([move('lunge', { sides: 'split sides' })])])],
    expected: ['work 22 lunge right', 'change 1', 'work 22 lunge left'],
  },
  {
    rule: 'an even split has no change',
    blocks: [rounds('circuit', 1, on(40, 0), [letter([move('lunge', { sides: 'split sides' })])])],
    expected: ['work 20 lunge right', 'work 20 lunge left'],
  },
  {
    rule: 'each side is the full work a side, one after the other',
    blocks: [rounds('circuit', 1, on(40, 20), [letter([move('lunge', { sides: 'each side' })])])],
    expected: ['work 40 lunge right', 'work 40 lunge left'],
  },
  {
    rule: 'alternating and one side are one bout',
    blocks: [
      rounds('circuit', 1, on(40, 0), [
        letter([move('lunge', { sides: 'alternating' })]),
        letter([move('row', { sides: 'left' })]),
      ]),
    ],
    expected: ['work 40 lunge alternating', 'work 40 row left'],
  },
  {
    rule: 'whole set each side: the letter once on the right, once on the left, no rest between',
    blocks: [
      rounds('circuit', 1, on(30, 15), [
        letter([move('lunge', { sides: 'split sides' }), move('squat')], { wholeSetEachSide: true }),
      ]),
    ],
    expected: ['work 30 lunge right', 'work 30 squat', 'work 30 lunge left', 'work 30 squat'],
  },
  {
    rule: 'whole set each side: a one-sided move with no side word takes the side of the set',
    blocks: [
      rounds('circuit', 1, on(30, 15), [
        letter([move('kickback'), move('squat')], { wholeSetEachSide: true }),
      ]),
    ],
    expected: ['work 30 kickback right', 'work 30 squat', 'work 30 kickback left', 'work 30 squat'],
  },
  {
    rule: 'whole set each side: a typed side is that of the first time through, the other one follows',
    blocks: [
      rounds('circuit', 1, on(30, 15), [
        letter([move('lunge', { sides: 'right' }), move('row', { sides: 'left' })], {
          wholeSetEachSide: true,
        }),
      ]),
    ],
    expected: ['work 30 lunge right', 'work 30 row left', 'work 30 lunge left', 'work 30 row right'],
  },
  {
    rule: 'reps each side are the reps a side; no word is half each; alternating is reps in all (3 s a rep)',
    blocks: [
      rounds('straight', 1, undefined, [
        letter([move('lunge', { sides: 'each side', reps: 8 })]),
        letter([move('row', { sides: 'split sides', reps: 8 })]),
        letter([move('squat', { sides: 'alternating', reps: 8 })]),
      ]),
    ],
    expected: [
      'work 24 lunge right',
      'work 24 lunge left',
      'work 12 row right',
      'work 12 row left',
      'work 24 squat alternating',
    ],
  },
  {
    rule: 'by round: one of its moves a round',
    blocks: [
      rounds('circuit', 3, on(30, 10), [
        letter([move('squat'), move('row'), move('plank')], { order: 'by round' }),
      ]),
    ],
    expected: ['work 30 squat', 'rest 10', 'work 30 row', 'rest 10', 'work 30 plank'],
  },
  {
    rule: 'in pairs, swap: the letter twice, no rest between',
    blocks: [rounds('circuit', 2, on(40, 20), letters('squat'), { pairs: 'swap' })],
    expected: ['work 40 squat', 'work 40 squat', 'rest 20', 'work 40 squat', 'work 40 squat'],
  },
  {
    rule: 'in pairs, one rests: as long of rest as of work, in place of the block’s rest',
    blocks: [rounds('circuit', 2, on(40, 20), letters('squat'), { pairs: 'one rests' }), coolDown],
    expected: ['work 40 squat', 'rest 40', 'work 40 squat', 'rest 40', 'open 300'],
  },
  {
    rule: 'in pairs, one rests: both get equal turns, whatever follows, and other rests come on top',
    blocks: [
      rounds('circuit', 2, on(40, 20), letters('squat'), { pairs: 'one rests', betweenRoundsSeconds: 30 }),
      time('rest', 60),
      rounds('circuit', 1, on(30, 0), [letter([move('row')], { restSeconds: 15 })], {
        pairs: 'one rests',
        countInSeconds: 5,
      }),
      rounds('circuit', 1, on(30, 0), letters('plank'), { pairs: 'one rests', countInSeconds: 5 }),
    ],
    expected: [
      'work 40 squat',
      'rest 40',
      'between-rounds 30',
      'work 40 squat',
      'rest 40',
      'between-blocks 55',
      'count-in 5',
      'work 30 row',
      'rest 30',
      'rest 10',
      'count-in 5',
      'work 30 plank',
      'rest 30',
    ],
  },
  {
    rule: 'in pairs, one rests: a count-in leaves the partner’s turn whole',
    blocks: [
      rounds('circuit', 1, on(40, 20), letters('squat'), { pairs: 'one rests' }),
      rounds('circuit', 1, on(30, 0), letters('row'), { countInSeconds: 5 }),
    ],
    expected: ['work 40 squat', 'rest 40', 'count-in 5', 'work 30 row'],
  },
  {
    rule: 'EMOM: a letter on every interval in turn; the remainder stays even where a rest line or nothing follows',
    blocks: [
      emom(2, [letter([move('squat', { reps: 10 })]), letter([move('row', { reps: 8 })])]),
      time('rest', 60),
      emom(1, letters('plank'), { intervalSeconds: 90, workSeconds: 40 }),
    ],
    expected: [
      'work 30 squat',
      'rest 30',
      'work 24 row',
      'rest 36',
      'between-blocks 60',
      'work 40 plank',
      'rest 50',
    ],
  },
  {
    rule: 'EMOM: each move of a letter takes the block’s work',
    blocks: [emom(1, [pair], { workSeconds: 20 })],
    expected: ['work 20 squat', 'work 20 row', 'rest 20'],
  },
  {
    rule: 'EMOM: the next interval starts on time, whatever the work asks for',
    blocks: [emom(2, [pair], { workSeconds: 40 })],
    expected: ['work 40 squat', 'work 20 row', 'work 40 squat', 'work 20 row'],
  },
  {
    rule: 'AMRAP, for time: one stretch of work',
    blocks: [amrap(480, letters('squat', 'row')), amrap(600, letters('plank'), { kind: 'for time' })],
    expected: ['work 480', 'work 600'],
  },
  {
    rule: 'ladder: all reps × their seconds a rep, no rest (2 moves × 15 reps × 3 s)',
    blocks: [ladder([5, 4, 3, 2, 1], letters('squat', 'row'))],
    expected: ['work 90'],
  },
  {
    rule: 'ladder: a move with reps of its own does those on every rung ((15 + 5 × 2) × 3 s)',
    blocks: [ladder([5, 4, 3, 2, 1], [letter([move('squat')]), letter([move('row', { reps: 2 })])])],
    expected: ['work 75'],
  },
  {
    rule: 'ladder: a whole set each side is done on the right and on the left (2 × 2 moves × 15 reps × 3 s)',
    blocks: [
      ladder(
        [5, 4, 3, 2, 1],
        [letter([move('lunge', { sides: 'split sides' }), move('squat')], { wholeSetEachSide: true })],
      ),
    ],
    expected: ['work 180'],
  },
  {
    rule: 'ladder with a cap is exactly the cap',
    blocks: [ladder([21, 15, 9], letters('squat', 'row'), { capSeconds: 360 })],
    expected: ['work 360'],
  },
  {
    rule: 'count-in: the last seconds of the rest before the block',
    blocks: [
      warmUp,
      time('rest', 60),
      rounds('circuit', 1, on(40, 20), letters('squat'), { countInSeconds: 5 }),
    ],
    expected: ['open 300', 'between-blocks 55', 'count-in 5', 'work 40 squat'],
  },
  {
    rule: 'count-in: of the last rest that is kept between two blocks',
    blocks: [
      rounds('circuit', 1, on(40, 20), letters('squat')),
      rounds('circuit', 1, on(40, 20), letters('row'), { countInSeconds: 5 }),
    ],
    expected: ['work 40 squat', 'rest 15', 'count-in 5', 'work 40 row'],
  },
  {
    rule: 'count-in: time of its own where no rest stands',
    blocks: [warmUp, rounds('circuit', 1, on(40, 20), letters('squat'), { countInSeconds: 5 })],
    expected: ['open 300', 'count-in 5', 'work 40 squat'],
  },
  {
    rule: 'count-in: what a shorter rest lacks is its own',
    blocks: [
      rounds('circuit', 1, on(40, 3), letters('squat')),
      rounds('circuit', 1, on(40, 3), letters('row'), { countInSeconds: 5 }),
    ],
    expected: ['work 40 squat', 'count-in 3', 'count-in 2', 'work 40 row'],
  },
];

test.each(cases)('$rule', ({ blocks, expected }) => {
  expect(told(build(blocks))).toEqual(expected);
});

test('tabata: moves in turn, each time starting with the first, its last 10 s before the break', () => {
  const timeline = build([tabata(2, letters('squat', 'row', 'plank'), { betweenSeconds: 60 })]);
  expect(told(timeline).filter((line) => !line.startsWith('rest'))).toEqual([
    ...['squat', 'row', 'plank', 'squat', 'row', 'plank', 'squat', 'row'].map((id) => `work 20 ${id}`),
    'between-rounds 60',
    ...['squat', 'row', 'plank', 'squat', 'row', 'plank', 'squat', 'row'].map((id) => `work 20 ${id}`),
  ]);
  expect(timeline.totalSeconds).toBe(240 + 60 + 230);
});

test('tabata x3 without a break follows on: 240 + 240 + 230', () => {
  expect(build([tabata(3, letters('squat'))]).totalSeconds).toBe(710);
});

test('EMOM 12 is always 12:00, last in the class or not', () => {
  const twelve = emom(12, [letter([move('squat', { reps: 8 })])]);
  expect(build([twelve]).totalSeconds).toBe(720);
  expect(build([twelve, coolDown]).totalSeconds).toBe(720 + 300);
});

const toTheEnd = open('cool-down', 'to the end');

test.each([
  { what: 'takes what is left of the slot', slotSeconds: 1800, coolDownSeconds: 1800 - 300 - 240 },
  { what: 'takes the studio’s least where less is left', slotSeconds: 600, coolDownSeconds: 300 },
])('cool-down to the end $what', ({ slotSeconds, coolDownSeconds }) => {
  // warm-up 300, circuit 2 rounds × 2 letters × 60, its last rest kept: 240
  const timeline = build([warmUp, circuit(), toTheEnd], { slotSeconds });
  expect(timeline.blocks.at(-1)).toEqual({
    block: 2,
    startSeconds: 540,
    endSeconds: 540 + coolDownSeconds,
    workSeconds: 0,
  });
});

test('the teaching time is the slot less the room’s door and clear-up seconds', () => {
  const room = { name: 'Loft', kit: {}, doorSeconds: 120, clearUpSeconds: 180 };
  const settings = { ...context.settings, rooms: [room] };
  const timeline = buildTimeline(plan([warmUp, toTheEnd], { slotSeconds: 1800, room: 'Loft' }), {
    ...context,
    settings,
  });
  expect(timeline.totalSeconds).toBe(1500);
});

test('a segment carries its block, letter, move, side, round and reps', () => {
  const line = letter([move('lunge', { sides: 'each side', reps: 6 })]);
  const { segments } = build([warmUp, rounds('circuit', 1, on(20, 10), [line])]);
  expect(segments).toEqual([
    { kind: 'open', startSeconds: 0, endSeconds: 300, block: 0 },
    ...(['right', 'left'] as const).map((side, index) => ({
      kind: 'work',
      startSeconds: 300 + 20 * index,
      endSeconds: 320 + 20 * index,
      block: 1,
      letter: 'letter line lunge',
      move: 'line lunge',
      side,
      round: 1,
      reps: 6,
    })),
  ]);
});

test('rest seconds are rest, between rounds and between blocks; block times include their last rest', () => {
  const timeline = build([
    warmUp,
    circuit({ betweenRoundsSeconds: 60 }),
    time('rest', 90),
    circuit(),
    coolDown,
  ]);
  // 2 rounds: 160 work; rests 20 + 60 + 20, the fourth replaced; then 90; then 4 × 20.
  expect(timeline).toMatchObject({ workSeconds: 320, restSeconds: 100 + 90 + 80 });
  expect(timeline.blocks.map(({ startSeconds, endSeconds }) => endSeconds - startSeconds)).toEqual([
    300, 260, 90, 240, 300,
  ]);
});
