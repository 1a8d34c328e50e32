import { describe, expect, test } from 'vitest';
import type { Block, Plan, PlanFacts } from '../../../domain/plan/plan.ts';
import { fitToSlot } from '../../../domain/timing/fit-to-slot.ts';
import {
  amrap,
  emom,
  letter,
  letters,
  move,
  on,
  open,
  plan,
  rounds,
  testContext,
  time,
} from '../../helpers/plan-builder.ts';

const context = testContext();
const slot = (seconds: number): Partial<PlanFacts> => ({ slotSeconds: seconds });
const fitOf = (whole: Plan) => fitToSlot(whole, context);
const proposalsOf = (blocks: readonly Block[], slotSeconds: number) =>
  fitOf(plan(blocks, slot(slotSeconds))).proposals.map(({ kind, edit, workChangeSeconds }) => [
    kind,
    edit,
    workChangeSeconds,
  ]);

// 360 + (3 × 3 × 60) 540 + 360 = 1,260 s; its last rest is kept.
const circuit = rounds('circuit', 3, on(40, 20), letters('squat', 'row', 'press'));
const roomy = [open('warm-up', 360), circuit, open('cool-down', 360)];
// The same with ends at the studio's least: 300 + 540 + 300 = 1,140 s.
const tight = [open('warm-up', 300), circuit, open('cool-down', 300)];

test('a class that fits exactly needs nothing', () => {
  expect(fitOf(plan(roomy, slot(1260)))).toMatchObject({
    teachingSeconds: 1260,
    totalSeconds: 1260,
    spareSeconds: 0,
    proposals: [],
  });
});

describe('over the teaching time', () => {
  test('what the ends can give comes first, in plan order, then the rests of a block', () => {
    // 60 s over: either end, or 9 × −5 s of rest, to an even time, and 15 s of the cool-down.
    expect(proposalsOf(roomy, 1200)).toEqual([
      ['warm-up', 'warm-up 5:00', 0],
      ['cool-down', 'cool-down 5:00', 0],
      ['rest', 'block A 40/15\ncool-down 5:45', 0],
    ]);
  });

  test('the cool-down, then the warm-up, where one is not enough', () => {
    // 100 s over: 60 from the cool-down, 40 from the warm-up; or 9 × −10 s of rest and 10 s;
    // or 9 × −10 s of work and 10 s.
    expect(proposalsOf(roomy, 1160)).toEqual([
      ['rest', 'block A 40/10\ncool-down 5:50', 0],
      ['cool-down', 'cool-down 5:00\nwarm-up 5:20', 0],
      ['work', 'block A 30/20\ncool-down 5:50', -90],
    ]);
  });

  test('floors are never cut: work, a letter, a round remain', () => {
    // 100 s over: rests could give 90 and nothing else can; work 9 × −15 s, 35 s back on the cool-down.
    expect(proposalsOf(tight, 1040)).toEqual([
      ['rounds', 'rounds A x2\ncool-down 6:20', -120],
      ['letter', 'drop A\ncool-down 6:20', -120],
      ['work', 'block A 25/20\ncool-down 5:35', -135],
    ]);
  });

  test('least change of work first', () => {
    const changes = fitOf(plan(tight, slot(1040))).proposals.map((each) => Math.abs(each.workChangeSeconds));
    expect(changes).toEqual(changes.toSorted((one, other) => one - other));
  });

  test('times are multiples of five where that can be exact, to the second where only that can', () => {
    // 3 × 40 + 2 × 20 = 160 s with nothing else to give: 4 s less are 2 × −2 s of rest; 3 s less 3 × −1 s of work.
    const alone = [rounds('finisher', 3, on(40, 20), letters('squat'))];
    expect(proposalsOf(alone, 150)).toEqual([['rest', 'block A 40/15', 0]]);
    expect(proposalsOf(alone, 145)).toEqual([['work', 'block A 35/20', -15]]);
    expect(proposalsOf(alone, 156)).toEqual([['rest', 'block A 40/18', 0]]);
    expect(proposalsOf(alone, 157)).toEqual([['work', 'block A 39/20', -3]]);
    // What is odd already and stays so is the instructor's; what changes gets even.
    const odd = [
      open('warm-up', 300),
      rounds('circuit', 3, on(42, 18), letters('squat', 'row')),
      open('cool-down', 400),
    ];
    expect(proposalsOf(odd, 1_010)).toContainEqual(['rest', 'block A 42/10\ncool-down 6:38', 0]);
  });

  test('a cool-down to the end takes what is left by itself, and needs no line', () => {
    // 300 + 540 + at least 300 = 1,140: 40 over. 9 × −5 s of rest, or a second of work at 9 × −5.
    expect(proposalsOf([open('warm-up', 300), circuit, open('cool-down', 'to the end')], 1100)).toEqual([
      ['rest', 'block A 40/15', 0],
      ['work', 'block A 35/20', -45],
      ['rounds', 'rounds A x2', -120],
    ]);
  });

  test('a rest line and the rest between rounds can give too; explaining keeps its seconds', () => {
    const blocks = (rest: number, explain: boolean) => [
      open('warm-up', 300),
      rounds('circuit', 2, on(40, 0), letters('squat'), { betweenRoundsSeconds: 60 }),
      time('rest', rest, explain),
      rounds('finisher', 1, on(60, 0), letters('row')),
      open('cool-down', 300),
    ];
    // 300 + 140 + 60 + 60 + 300 = 860 s.
    expect(proposalsOf(blocks(60, false), 830)[0]).toEqual(['rest', 'between rounds A 30', 0]);
    // 55 s over are more than either rest can give: a round of 40 s and its rest, 45 s back.
    expect(proposalsOf(blocks(60, false), 805)[0]).toEqual(['rounds', 'rounds A x1\ncool-down 5:45', -40]);
    // 12 s of explaining can only give 2; the block's other rest gives the rest of it.
    expect(proposalsOf(blocks(12, true), 807)[0]).toEqual(['rest', 'between rounds A 55', 0]);
  });

  test('an end that is below the floor already is left as it is', () => {
    // 240 + 540 + 300 = 1,080 s, 30 over; only work can give, 9 × −5 s with 15 s back.
    const blocks = [open('warm-up', 240), { ...circuit, intervals: [on(50, 10)] }, open('cool-down', 300)];
    expect(proposalsOf(blocks, 1050)[0]).toEqual(['work', 'block A 45/10\ncool-down 5:15', -45]);
  });

  test('where nothing can be exact, nothing is proposed', () => {
    expect(proposalsOf([open('warm-up', 300), open('cool-down', 300)], 500)).toEqual([]);
    // One round of one move, no ends: 11 s can't be made of work, since that stays at 15 s or more.
    expect(proposalsOf([rounds('finisher', 1, on(20, 0), letters('squat'))], 9)).toEqual([]);
  });

  test('a proposal adds at most two rounds, or half of what is there', () => {
    const short = (count: number) => [rounds('finisher', count, on(40, 20), letters('squat', 'row'))];
    const edits = (count: number, seconds: number) =>
      proposalsOf(short(count), seconds).flatMap(([kind, edit]) => (kind === 'rounds' ? [edit] : []));
    // A round is 120 s, the class ends without its last rest.
    expect(edits(2, 4 * 120 - 20)).toEqual(['rounds A x4']);
    expect(edits(2, 5 * 120 - 20)).toEqual([]);
    expect(edits(8, 12 * 120 - 20)).toEqual(['rounds A x12']);
    expect(edits(8, 13 * 120 - 20)).toEqual([]);
  });

  test('an EMOM gives or takes whole cycles of its letters, an AMRAP whole minutes, half of it at most', () => {
    const lines = letters('squat', 'row');
    const cycles = [open('warm-up', 300), emom(10, lines, { workSeconds: 40 }), open('cool-down', 300)];
    // 300 + 600 + 300 = 1,200 s.
    expect(proposalsOf(cycles, 1080)).toEqual([['rounds', 'rounds A x8', -80]]);
    expect(proposalsOf(cycles, 1140)).toEqual([['rounds', 'rounds A x8\ncool-down 6:00', -80]]);
    const open8 = [open('warm-up', 300), amrap(480, lines), open('cool-down', 300)];
    expect(proposalsOf(open8, 900)).toEqual([['work', 'block A 5:00', -180]]);
    expect(proposalsOf(open8, 820)).toEqual([]);
  });

  test('blocks whose rounds differ are left alone', () => {
    const list = rounds('circuit', 3, [on(20, 10), on(30, 10), on(40, 10)], letters('squat', 'row'));
    const kinds = proposalsOf([open('warm-up', 300), list, open('cool-down', 300)], 740).map(
      ([kind]) => kind,
    );
    expect(kinds).toEqual(['letter']);
  });

  test('dropping the only letter of a block takes its rest line with it', () => {
    const blocks = [
      open('warm-up', 300),
      rounds('finisher', 1, on(60, 0), [letter([move('swing', { workSeconds: 90 })])]),
      time('rest', 10),
      rounds('finisher', 1, on(60, 0), [letter([move('row', { workSeconds: 80 })])]),
      open('cool-down', 300),
    ];
    // 300 + 90 + 10 + 80 + 300 = 780.
    expect(proposalsOf(blocks, 680)).toEqual([['letter', 'drop A', -90]]);
  });
});

describe('under the teaching time', () => {
  test('the spare time is filled by the ends, up to ten minutes, a rest, a round, work', () => {
    // 100 s spare.
    expect(proposalsOf(tight, 1240)).toEqual([
      ['warm-up', 'warm-up 6:40', 0],
      ['cool-down', 'cool-down 6:40', 0],
      ['rest', 'block A 40/30\ncool-down 5:10', 0],
    ]);
  });

  test('beyond the ends a round is added, the remainder on the cool-down, then the warm-up', () => {
    // 760 s spare; the ends take 600, so a round of 180 is the least; work 9 × 20 s is 20 s more than is missing.
    const proposals = proposalsOf(tight, 1900);
    expect(proposals).toContainEqual(['rounds', 'rounds A x4\ncool-down 10:00\nwarm-up 9:40', 120]);
    expect(proposals).toContainEqual(['work', 'block A 60/20\ncool-down 10:00\nwarm-up 9:40', 180]);
  });
});

describe('late starts', () => {
  test('a cut for 3 and for 5 minutes, each exact', () => {
    const { lateStartCuts } = fitOf(
      plan([open('warm-up', 480), circuit, open('cool-down', 540)], slot(1560)),
    );
    expect(lateStartCuts).toEqual([
      {
        lateSeconds: 180,
        proposal: { kind: 'warm-up', edit: 'warm-up 5:00', workChangeSeconds: 0, totalSeconds: 1380 },
      },
      {
        lateSeconds: 300,
        proposal: {
          kind: 'rest',
          edit: 'block A 40/10\ncool-down 5:30',
          workChangeSeconds: 0,
          totalSeconds: 1260,
        },
      },
    ]);
  });

  test('spare time that covers it needs no cut', () => {
    expect(fitOf(plan(tight, slot(1140 + 300))).lateStartCuts).toEqual([
      { lateSeconds: 180 },
      { lateSeconds: 300 },
    ]);
  });

  test('a cool-down to the end is given a length, or it would grow again', () => {
    // 1,140 s with the cool-down at its least of 300; 3 rounds of 180: one less is 180.
    const blocks = [open('warm-up', 300), circuit, open('cool-down', 'to the end')];
    const [cut] = fitOf(plan(blocks, slot(1140))).lateStartCuts;
    expect(cut?.proposal).toMatchObject({ edit: 'rounds A x2\ncool-down 5:00', totalSeconds: 960 });
  });

  test('so too where only the warm-up is cut', () => {
    const blocks = [open('warm-up', 600), circuit, open('cool-down', 'to the end')];
    const [cut] = fitOf(plan(blocks, slot(1440))).lateStartCuts;
    expect(cut?.proposal).toMatchObject({ edit: 'cool-down 5:00\nwarm-up 7:00', totalSeconds: 1260 });
  });
});
