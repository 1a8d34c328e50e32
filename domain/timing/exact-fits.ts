import { clockText } from '../plan/clock-text.ts';
import type { Plan } from '../plan/plan.ts';
import { buildTimeline } from './build-timeline.ts';
import type { FitProposal } from './fit.ts';
import { type End, endOf, takenBy, withLength } from './fit-ends.ts';
import { type Lever, leversOf } from './fit-levers.ts';
import { type LengthOf, lengthMeter } from './length-of-class.ts';
import { teachingSeconds } from './teaching-seconds.ts';
import type { TimingContext } from './timing-context.ts';

/** A change with what it leaves to the ends, not built yet. */
type Draft = {
  readonly kind: FitProposal['kind'];
  readonly block: number;
  readonly workChangeSeconds: number;
  /** What it makes of a block's own times are multiples of five seconds, as instructors set their timers. */
  readonly isEven: boolean;
  readonly lines: readonly string[];
  readonly plan: Plan;
};

/** The class with all lengths fixed, so that every change shows in its total, and where it has to get to. */
type Task = {
  readonly plan: Plan;
  readonly needSeconds: number;
  readonly coolDown?: End;
  readonly warmUp?: End;
  /** A cool-down to the end takes what is left by itself and needs no line, or now has to be given a length. */
  readonly toTheEnd?: 'stays' | 'gets a length';
};

/**
 * Ways to make the class last `targetSeconds` by one change with the remainder on the cool-down, then the
 * warm-up, inside their bounds: least change of work first, then fewest lines, then plan order; `most` of
 * them, of different kinds, in each kind one with even times where there is one. Each is built, and only what
 * comes out exact is told.
 */
export function exactFits(
  plan: Plan,
  targetSeconds: number,
  most: number,
  context: TimingContext,
): readonly FitProposal[] {
  const lengthOf = lengthMeter(context);
  const task = taskOf(plan, targetSeconds, lengthOf, context);
  if (task.needSeconds === 0) return [];
  const direction = task.needSeconds < 0 ? 'shorter' : 'longer';
  const drafts = [
    ...draftsOfEnds(task),
    ...leversOf(task.plan, direction, lengthOf, context).flatMap((lever) =>
      draftsOfLever(lever, task, lengthOf),
    ),
  ];
  const isExact = (draft: Draft) => buildTimeline(draft.plan, context).totalSeconds === targetSeconds;
  return [...new Set(drafts.map(({ kind }) => kind))]
    .flatMap((kind) => {
      const own = drafts.filter((draft) => draft.kind === kind).toSorted(byEvenTimes);
      return own.find(isExact) ?? [];
    })
    .toSorted(byLeastChange)
    .slice(0, most)
    .map(({ kind, workChangeSeconds, lines }) => ({
      edit: lines.join('\n'),
      kind,
      workChangeSeconds,
      totalSeconds: targetSeconds,
    }));
}

function byEvenTimes(one: Draft, other: Draft): number {
  return Number(other.isEven) - Number(one.isEven) || byLeastChange(one, other);
}

function byLeastChange(one: Draft, other: Draft): number {
  return (
    Math.abs(one.workChangeSeconds) - Math.abs(other.workChangeSeconds) ||
    one.lines.length - other.lines.length ||
    one.block - other.block
  );
}

function taskOf(plan: Plan, targetSeconds: number, lengthOf: LengthOf, context: TimingContext): Task {
  const { settings } = context;
  const open = plan.blocks.findIndex((block) => 'length' in block && block.length.kind === 'to the end');
  const takesTheRest = open >= 0 && targetSeconds === teachingSeconds(plan, settings);
  const fixed =
    open < 0
      ? plan
      : withLength(
          plan,
          open,
          takesTheRest ? settings.floors.leastCoolDownSeconds : secondsOfBlock(plan, open, context),
        );
  const coolDown = endOf(fixed, 'cool-down', settings.floors);
  const warmUp = endOf(fixed, 'warm-up', settings.floors);
  return {
    plan: fixed,
    needSeconds: targetSeconds - lengthOf(fixed).totalSeconds,
    ...(coolDown === undefined
      ? {}
      : { coolDown: takesTheRest ? { ...coolDown, mostSeconds: Number.POSITIVE_INFINITY } : coolDown }),
    ...(warmUp === undefined ? {} : { warmUp }),
    ...(open < 0 ? {} : { toTheEnd: takesTheRest ? 'stays' : 'gets a length' }),
  };
}

function secondsOfBlock(plan: Plan, index: number, context: TimingContext): number {
  const time = buildTimeline(plan, context).blocks[index];
  return time === undefined ? 0 : time.endSeconds - time.startSeconds;
}

/** The cool-down, then the warm-up where that is not enough; and the warm-up alone. */
function draftsOfEnds(task: Task): readonly Draft[] {
  const { coolDown, warmUp, needSeconds, plan } = task;
  const warmUpOnly = coolDown === undefined ? task : { ...task, coolDown: held(coolDown) };
  const alone = takenBy(warmUp, needSeconds) === needSeconds ? warmUp : undefined;
  return [
    ...(coolDown === undefined || takenBy(coolDown, needSeconds) === 0
      ? []
      : draftOf('cool-down', coolDown.block, 0, [], plan, needSeconds, task)),
    ...(alone === undefined ? [] : draftOf('warm-up', alone.block, 0, [], plan, needSeconds, warmUpOnly)),
  ];
}

/** An end that stays as it is. */
function held(end: End): End {
  return { ...end, leastSeconds: end.seconds, mostSeconds: end.seconds };
}

/** A change in the fewest steps that leave a remainder which the ends can take, and one to even times. */
function draftsOfLever(lever: Lever, task: Task, lengthOf: LengthOf): readonly Draft[] {
  const isTaken = (steps: number) =>
    steps >= 1 &&
    steps <= lever.mostSteps &&
    remainderAtEnds(task.needSeconds - steps * lever.totalAStep, task) === 0;
  const wanted = stepsToTry(lever, task);
  const even = wanted.flatMap((steps) => evenSteps(lever, steps)).find(isTaken);
  const fewest = wanted.find(isTaken);
  return [...new Set([even, fewest])].flatMap((steps) =>
    steps === undefined ? [] : draftOfSteps(lever, steps, task, lengthOf),
  );
}

function draftOfSteps(lever: Lever, steps: number, task: Task, lengthOf: LengthOf): readonly Draft[] {
  const changed = lever.apply(task.plan, steps);
  const drafts = draftOf(
    lever.kind,
    lever.block,
    lengthOf(changed).workSeconds - lengthOf(task.plan).workSeconds,
    [lever.line(steps)],
    changed,
    task.needSeconds - steps * lever.totalAStep,
    task,
  );
  return drafts.map((draft) => ({
    ...draft,
    isEven: (lever.secondsAfter?.(steps) ?? 0) % evenSeconds === 0,
  }));
}

/** Common practice, no published source: timers are set in fives. */
const evenSeconds = 5;

/** The steps to the nearest even times on either side, the nearer first; none where no seconds are changed. */
function evenSteps({ secondsAfter }: Lever, steps: number): readonly number[] {
  if (secondsAfter === undefined) return [];
  const over = secondsAfter(steps) % evenSeconds;
  if (over === 0) return [steps];
  const down = (secondsAfter(1) - secondsAfter(0)) * over;
  const up = Math.sign(down) * (evenSeconds - over);
  return [steps - down, steps + up].toSorted(
    (one, other) => Math.abs(one - steps) - Math.abs(other - steps) || one - other,
  );
}

/**
 * Where the ends alone could do it, or it is rest that changes, the change does all it can and leaves only what
 * does not divide; else it is as small as the ends allow.
 */
function stepsToTry(lever: Lever, task: Task): readonly number[] {
  const whole = task.needSeconds / lever.totalAStep;
  const atLeast = Math.abs(remainderAtEnds(task.needSeconds, task) / lever.totalAStep);
  const doesAll = atLeast === 0 || lever.kind === 'rest';
  const wanted = doesAll ? [Math.floor(whole), Math.ceil(whole)] : [Math.ceil(atLeast)];
  return [...wanted, lever.mostSteps].filter((steps) => steps >= 1 && steps <= lever.mostSteps);
}

/** Seconds that neither end can take. */
function remainderAtEnds(seconds: number, { coolDown, warmUp }: Task): number {
  const left = seconds - takenBy(coolDown, seconds);
  return left - takenBy(warmUp, left);
}

/** The change with its remainder put on the ends; none where they can't take it. */
function draftOf(
  kind: FitProposal['kind'],
  block: number,
  workChangeSeconds: number,
  lines: readonly string[],
  changed: Plan,
  remainderSeconds: number,
  task: Task,
): readonly Draft[] {
  if (remainderAtEnds(remainderSeconds, task) !== 0) return [];
  const onCoolDown = takenBy(task.coolDown, remainderSeconds);
  const onWarmUp = takenBy(task.warmUp, remainderSeconds - onCoolDown);
  const settled = settle(settle(changed, task.coolDown, onCoolDown), task.warmUp, onWarmUp);
  const draft = {
    kind,
    block,
    workChangeSeconds,
    isEven: true,
    lines: [...lines, ...lineOf(task.coolDown, onCoolDown, task), ...lineOf(task.warmUp, onWarmUp, task)],
    plan: task.toTheEnd === 'stays' ? openAgain(settled) : settled,
  };
  return draft.lines.length === 0 ? [] : [draft];
}

function settle(plan: Plan, end: End | undefined, seconds: number): Plan {
  const index = end === undefined ? -1 : plan.blocks.findIndex(({ kind }) => kind === end.kind);
  return end === undefined || seconds === 0 ? plan : withLength(plan, index, end.seconds + seconds);
}

function lineOf(end: End | undefined, seconds: number, task: Task): readonly string[] {
  if (end === undefined) return [];
  const takesTheRest = end.kind === 'cool-down' && task.toTheEnd === 'stays';
  const isSaid = end.kind === 'cool-down' && task.toTheEnd === 'gets a length';
  if (takesTheRest || (seconds === 0 && !isSaid)) return [];
  return [`${end.kind} ${clockText(end.seconds + seconds)}`];
}

function openAgain(plan: Plan): Plan {
  return {
    ...plan,
    blocks: plan.blocks.map((block) =>
      block.kind === 'cool-down' ? { ...block, length: { kind: 'to the end' } } : block,
    ),
  };
}
