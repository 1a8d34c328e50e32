import { hasLetters } from '../plan/blocks-of.ts';
import { labelsByLine } from '../plan/labels.ts';
import type { Block, Letter, LetteredBlock, LineId, Plan, RoundsBlock, TimeBlock } from '../plan/plan.ts';
import type { lengthMeter } from './build-timeline.ts';
import type { FitProposal } from './fit.ts';
import type { TimingContext } from './timing-context.ts';

/** A change that can be made in steps: a round, a letter, a second of work or rest of one block. */
export type Lever = {
  readonly kind: FitProposal['kind'];
  /** Where it stands in the plan. */
  readonly block: number;
  readonly mostSteps: number;
  /** What one step does to the class, in seconds. */
  readonly totalAStep: number;
  readonly workAStep: number;
  readonly apply: (plan: Plan, steps: number) => Plan;
  /** The line of the edit language that does the same. */
  readonly line: (steps: number) => string;
};

/** A lever whose effect is not measured yet. */
type Grip = Omit<Lever, 'totalAStep' | 'workAStep'>;

export type Direction = 'shorter' | 'longer';

/** Kravitz, after Morgan and Adamson: circuit work of 15–45 s; work is cut no further. */
const leastWorkSeconds = 15;
/** How far a proposal lengthens what is there. Common practice, no published source. */
const mostLonger = 1.5;
const mostRounds = 50;

/** Every lever that moves the class the way it should go. */
export function leversOf(
  plan: Plan,
  direction: Direction,
  lengthOf: ReturnType<typeof lengthMeter>,
  context: TimingContext,
): readonly Lever[] {
  const labels = labelsByLine(plan);
  const before = lengthOf(plan);
  const sign = direction === 'shorter' ? -1 : 1;
  return plan.blocks
    .flatMap((block, index) =>
      hasLetters(block) ? gripsOf(plan, block, index, direction, labels, context) : [],
    )
    .filter(({ mostSteps }) => mostSteps > 0)
    .map((grip) => {
      const after = lengthOf(grip.apply(plan, 1));
      return {
        ...grip,
        totalAStep: after.totalSeconds - before.totalSeconds,
        workAStep: after.workSeconds - before.workSeconds,
      };
    })
    .filter(({ totalAStep }) => totalAStep * sign > 0);
}

function gripsOf(
  plan: Plan,
  block: LetteredBlock,
  index: number,
  direction: Direction,
  labels: ReadonlyMap<LineId, string>,
  context: TimingContext,
): readonly Grip[] {
  const first = labels.get(block.letters[0]?.id ?? '') ?? '';
  const last = labels.get(block.letters.at(-1)?.id ?? '') ?? '';
  const least = context.settings.floors.leastRestSeconds;
  return [
    ...('rounds' in block ? roundsGrips(block, index, direction, first, least) : []),
    ...restLineGrips(plan, index, direction, last, context),
    ...(direction === 'shorter' ? letterGrips(plan, block, index, labels) : []),
  ];
}

function roundsGrips(
  block: RoundsBlock,
  index: number,
  direction: Direction,
  label: string,
  leastRest: number,
): readonly Grip[] {
  if (block.intervals.length > 1) return [];
  const sign = direction === 'shorter' ? -1 : 1;
  const rounds: Grip = {
    kind: 'rounds',
    block: index,
    mostSteps: direction === 'shorter' ? block.rounds - 1 : mostRounds - block.rounds,
    apply: (plan, steps) => withBlock(plan, index, { ...block, rounds: block.rounds + sign * steps }),
    line: (steps) => `rounds ${label} x${block.rounds + sign * steps}`,
  };
  return [
    rounds,
    ...intervalGrips(block, index, direction, label, leastRest),
    ...betweenGrips(block, index, direction, label, leastRest),
  ];
}

function intervalGrips(
  block: RoundsBlock,
  index: number,
  direction: Direction,
  label: string,
  leastRest: number,
): readonly Grip[] {
  const [interval] = block.intervals;
  if (interval === undefined || interval.workSeconds === 0) return [];
  const { workSeconds, restSeconds } = interval;
  const sign = direction === 'shorter' ? -1 : 1;
  const on = (work: number, rest: number) => [{ workSeconds: work, restSeconds: rest }];
  return [
    {
      kind: 'work',
      block: index,
      mostSteps: room(workSeconds, direction, leastWorkSeconds),
      apply: (plan, steps) =>
        withBlock(plan, index, { ...block, intervals: on(workSeconds + sign * steps, restSeconds) }),
      line: (steps) => `block ${label} ${workSeconds + sign * steps}/${restSeconds}`,
    },
    {
      kind: 'rest',
      block: index,
      mostSteps: room(restSeconds, direction, leastRest),
      apply: (plan, steps) =>
        withBlock(plan, index, { ...block, intervals: on(workSeconds, restSeconds + sign * steps) }),
      line: (steps) => `block ${label} ${workSeconds}/${restSeconds + sign * steps}`,
    },
  ];
}

function betweenGrips(
  block: RoundsBlock,
  index: number,
  direction: Direction,
  label: string,
  leastRest: number,
): readonly Grip[] {
  const seconds = block.betweenRoundsSeconds;
  if (seconds === undefined) return [];
  const sign = direction === 'shorter' ? -1 : 1;
  return [
    {
      kind: 'rest',
      block: index,
      mostSteps: room(seconds, direction, leastRest),
      apply: (plan, steps) =>
        withBlock(plan, index, { ...block, betweenRoundsSeconds: seconds + sign * steps }),
      line: (steps) => `between rounds ${label} ${seconds + sign * steps}`,
    },
  ];
}

/** The one rest line behind a block. */
function restLineGrips(
  plan: Plan,
  index: number,
  direction: Direction,
  label: string,
  { settings }: TimingContext,
): readonly Grip[] {
  const line = plan.blocks[index + 1];
  if (line?.kind !== 'rest' || plan.blocks[index + 2]?.kind === 'rest') return [];
  const { seconds } = line;
  const sign = direction === 'shorter' ? -1 : 1;
  const { floors, checks } = settings;
  const least = line.explain
    ? Math.max(floors.leastRestSeconds, checks.explainNewMoveSeconds)
    : floors.leastRestSeconds;
  const changed = (steps: number): TimeBlock => ({ ...line, seconds: seconds + sign * steps });
  return [
    {
      kind: 'rest',
      block: index,
      mostSteps: room(seconds, direction, least),
      apply: (whole, steps) => withBlock(whole, index + 1, changed(steps)),
      line: (steps) => `rest after ${label} ${seconds + sign * steps}`,
    },
  ];
}

function letterGrips(
  plan: Plan,
  block: LetteredBlock,
  index: number,
  labels: ReadonlyMap<LineId, string>,
): readonly Grip[] {
  const isLast = plan.blocks.filter(hasLetters).flatMap(({ letters }) => letters).length === 1;
  return block.letters.map((letter) => ({
    kind: 'letter',
    block: index,
    mostSteps: isLast ? 0 : 1,
    apply: (whole) => withoutLetter(whole, index, block, letter),
    line: () => `drop ${labels.get(letter.id)}`,
  }));
}

/** A block's only letter takes the block and its rest line with it. */
function withoutLetter(plan: Plan, index: number, block: LetteredBlock, letter: Letter): Plan {
  const letters = block.letters.filter(({ id }) => id !== letter.id);
  if (letters.length > 0) return withBlock(plan, index, { ...block, letters });
  const until = plan.blocks[index + 1]?.kind === 'rest' ? index + 2 : index + 1;
  return { ...plan, blocks: plan.blocks.toSpliced(index, until - index) };
}

function room(seconds: number, direction: Direction, least: number): number {
  if (direction === 'shorter') return seconds - least;
  return seconds === 0 ? 0 : Math.floor(seconds * mostLonger) - seconds;
}

function withBlock(plan: Plan, index: number, block: Block): Plan {
  return { ...plan, blocks: plan.blocks.with(index, block) };
}
