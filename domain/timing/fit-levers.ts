import { hasLetters } from '../plan/blocks-of.ts';
import { clockText } from '../plan/clock-text.ts';
import { labelsByLine } from '../plan/labels.ts';
import type {
  AmrapBlock,
  Block,
  EmomBlock,
  Interval,
  Letter,
  LetteredBlock,
  Plan,
  RoundsBlock,
} from '../plan/plan.ts';
import type { FitProposal } from './fit.ts';
import type { LengthOf } from './length-of-class.ts';
import type { TimingContext } from './timing-context.ts';

/** A change that can be made in steps: a round, a letter, a second of work or rest of one block. */
export type Lever = {
  readonly kind: FitProposal['kind'];
  /** Where it stands in the plan. */
  readonly block: number;
  readonly mostSteps: number;
  /** What one step does to the length of the class, in seconds. */
  readonly totalAStep: number;
  readonly apply: (plan: Plan, steps: number) => Plan;
  /** The work or rest that so many steps leave, where it is seconds that change. */
  readonly secondsAfter?: (steps: number) => number;
  /** The line of the edit language that does the same. */
  readonly line: (steps: number) => string;
};

/** A lever whose effect is not measured yet. */
type Grip = Omit<Lever, 'totalAStep'>;

export type Direction = 'shorter' | 'longer';

/** Kravitz, after Morgan and Adamson: circuit work of 15–45 s; work is cut no further. */
const leastWorkSeconds = 15;
/** How far a proposal lengthens what is there. Common practice, no published source. */
const mostLonger = 1.5;
/** A short block may still grow by as many rounds. Common practice, no published source. */
const mostRoundsMore = 2;
/** What the shorthand reads. */
const mostRounds = 50;
const mostIntervalSeconds = 1800;

/** Every lever that moves the class the way it should go. */
export function leversOf(
  plan: Plan,
  direction: Direction,
  lengthOf: LengthOf,
  context: TimingContext,
): readonly Lever[] {
  const before = lengthOf(plan);
  const sign = direction === 'shorter' ? -1 : 1;
  return gripsOf(plan, sign, context)
    .filter(({ mostSteps }) => mostSteps > 0)
    .map((grip) => ({
      ...grip,
      totalAStep: lengthOf(grip.apply(plan, 1)).totalSeconds - before.totalSeconds,
    }))
    .filter(({ totalAStep }) => totalAStep * sign > 0);
}

/** Where a block stands, what its first and last letters are called, and which way it should go. */
type Place = {
  readonly index: number;
  readonly first: string;
  readonly last: string;
  readonly sign: 1 | -1;
  readonly leastRestSeconds: number;
};

function gripsOf(plan: Plan, sign: 1 | -1, { settings }: TimingContext): readonly Grip[] {
  const labels = labelsByLine(plan);
  const labelOf = (letter: Letter | undefined) => labels.get(letter?.id ?? '') ?? '';
  const { leastRestSeconds } = settings.floors;
  const leastExplainSeconds = Math.max(leastRestSeconds, settings.checks.explainNewMoveSeconds);
  return plan.blocks.flatMap((block, index) => {
    if (!hasLetters(block)) return [];
    const { letters } = block;
    const place = {
      index,
      first: labelOf(letters[0]),
      last: labelOf(letters.at(-1)),
      sign,
      leastRestSeconds,
    };
    return [
      ...('rounds' in block ? roundsGrips(block, place) : []),
      ...(block.kind === 'emom' ? emomGrips(block, place) : []),
      ...(block.kind === 'amrap' ? amrapGrips(block, place) : []),
      ...restLineGrips(plan, place, leastExplainSeconds),
      ...(sign < 0 ? letterGrips(plan, block, index, labelOf) : []),
    ];
  });
}

function roundsGrips(block: RoundsBlock, place: Place): readonly Grip[] {
  if (block.intervals.length > 1) return [];
  const { index, first, sign } = place;
  const hasAMoveARound = block.letters.some(({ order }) => order === 'by round');
  const mostMore = Math.max(mostRoundsMore, Math.floor(block.rounds * (mostLonger - 1)));
  const mostSteps = sign < 0 ? block.rounds - 1 : Math.min(mostMore, mostRounds - block.rounds);
  return [
    {
      kind: 'rounds',
      block: index,
      mostSteps: hasAMoveARound ? 0 : mostSteps,
      apply: (plan, steps) => withBlock(plan, index, { ...block, rounds: block.rounds + sign * steps }),
      line: (steps) => `rounds ${first} x${block.rounds + sign * steps}`,
    },
    ...intervalGrips(block, place),
    ...betweenGrips(block, place),
  ];
}

/** Every letter once more, or once less. */
function emomGrips(block: EmomBlock, { index, first, sign }: Place): readonly Grip[] {
  const { intervals } = block;
  const aStep = block.letters.length;
  const most = sign < 0 ? intervals - aStep : Math.max(aStep, Math.floor(intervals * (mostLonger - 1)));
  const after = (steps: number) => intervals + sign * steps * aStep;
  return [
    {
      kind: 'rounds',
      block: index,
      mostSteps: Math.floor(most / aStep),
      apply: (plan, steps) => withBlock(plan, index, { ...block, intervals: after(steps) }),
      line: (steps) => `rounds ${first} x${after(steps)}`,
    },
  ];
}

/** Whole minutes; at least half of it stays. */
function amrapGrips(block: AmrapBlock, { index, first, sign }: Place): readonly Grip[] {
  const after = (steps: number) => block.seconds + sign * steps * 60;
  return [
    {
      kind: 'work',
      block: index,
      mostSteps: Math.floor((block.seconds * (mostLonger - 1)) / 60),
      apply: (plan, steps) => withBlock(plan, index, { ...block, seconds: after(steps) }),
      line: (steps) => `block ${first} ${clockText(after(steps))}`,
    },
  ];
}

function intervalGrips(block: RoundsBlock, place: Place): readonly Grip[] {
  const [interval] = block.intervals;
  if (interval === undefined || interval.workSeconds === 0) return [];
  const { workSeconds, restSeconds } = interval;
  const { index, first, sign } = place;
  const grip = (kind: 'work' | 'rest', mostSteps: number, at: (steps: number) => Interval): Grip => ({
    kind,
    block: index,
    mostSteps,
    secondsAfter: (steps) => (kind === 'work' ? at(steps).workSeconds : at(steps).restSeconds),
    apply: (plan, steps) => withBlock(plan, index, { ...block, intervals: [at(steps)] }),
    line: (steps) => `block ${first} ${at(steps).workSeconds}/${at(steps).restSeconds}`,
  });
  return [
    grip('work', room(workSeconds, sign, leastWorkSeconds), (steps) => ({
      workSeconds: workSeconds + sign * steps,
      restSeconds,
    })),
    grip('rest', room(restSeconds, sign, place.leastRestSeconds), (steps) => ({
      workSeconds,
      restSeconds: restSeconds + sign * steps,
    })),
  ];
}

function betweenGrips(block: RoundsBlock, { index, first, sign, leastRestSeconds }: Place): readonly Grip[] {
  const seconds = block.betweenRoundsSeconds;
  if (seconds === undefined) return [];
  return [
    {
      kind: 'rest',
      block: index,
      mostSteps: room(seconds, sign, leastRestSeconds),
      secondsAfter: (steps) => seconds + sign * steps,
      apply: (plan, steps) =>
        withBlock(plan, index, { ...block, betweenRoundsSeconds: seconds + sign * steps }),
      line: (steps) => `between rounds ${first} ${seconds + sign * steps}`,
    },
  ];
}

/** The one rest line behind a block; what is explained in it keeps its seconds. */
function restLineGrips(plan: Plan, place: Place, leastExplainSeconds: number): readonly Grip[] {
  const { index, last, sign, leastRestSeconds } = place;
  const line = plan.blocks[index + 1];
  if (line?.kind !== 'rest' || plan.blocks[index + 2]?.kind === 'rest') return [];
  const { seconds } = line;
  return [
    {
      kind: 'rest',
      block: index,
      mostSteps: room(seconds, sign, line.explain ? leastExplainSeconds : leastRestSeconds),
      secondsAfter: (steps) => seconds + sign * steps,
      apply: (whole, steps) => withBlock(whole, index + 1, { ...line, seconds: seconds + sign * steps }),
      line: (steps) => `rest after ${last} ${seconds + sign * steps}`,
    },
  ];
}

function letterGrips(
  plan: Plan,
  block: LetteredBlock,
  index: number,
  labelOf: (letter: Letter) => string,
): readonly Grip[] {
  const isOnlyOne = plan.blocks.filter(hasLetters).flatMap(({ letters }) => letters).length === 1;
  return block.letters.map((letter) => ({
    kind: 'letter',
    block: index,
    mostSteps: isOnlyOne ? 0 : 1,
    apply: (whole) => withoutLetter(whole, index, block, letter),
    line: () => `drop ${labelOf(letter)}`,
  }));
}

/** A block's only letter takes the block and its rest line with it. */
function withoutLetter(plan: Plan, index: number, block: LetteredBlock, letter: Letter): Plan {
  const letters = block.letters.filter(({ id }) => id !== letter.id);
  if (letters.length > 0) return withBlock(plan, index, { ...block, letters });
  const until = plan.blocks[index + 1]?.kind === 'rest' ? index + 2 : index + 1;
  return { ...plan, blocks: plan.blocks.toSpliced(index, until - index) };
}

/** How many seconds may go or come. */
function room(seconds: number, sign: 1 | -1, least: number): number {
  if (sign < 0) return seconds - least;
  return Math.min(mostIntervalSeconds, Math.floor(seconds * mostLonger)) - seconds;
}

function withBlock(plan: Plan, index: number, block: Block): Plan {
  return { ...plan, blocks: plan.blocks.with(index, block) };
}
