import { hasLetters, isTimeBlock } from '../plan/blocks-of.ts';
import type { Block, Plan } from '../plan/plan.ts';
import { type Part, secondsOf } from './part.ts';
import { partsOfBlock } from './parts-of-block.ts';
import { teachingSeconds } from './teaching-seconds.ts';
import type { BlockTime, Segment, SegmentKind, Timeline } from './timeline.ts';
import type { TimingContext } from './timing-context.ts';
import { lateStarts } from './transitions.ts';

const restKinds: ReadonlySet<SegmentKind> = new Set(['rest', 'between-rounds', 'between-blocks']);

/** The whole class on the clock, in whole seconds from its start: segments touch and never overlap. */
export function buildTimeline(plan: Plan, context: TimingContext): Timeline {
  const partsByBlock = partsOfClass(plan, context, (block) => partsOfBlock(block, context));
  const segments = layOut(partsByBlock);
  const late = lateStarts(plan, segments, context);
  return {
    totalSeconds: segments.at(-1)?.endSeconds ?? 0,
    workSeconds: sum(segments.filter(({ kind }) => kind === 'work')),
    restSeconds: sum(segments.filter(({ kind }) => restKinds.has(kind))),
    lateStartSeconds: late.reduce((total, { lateSeconds }) => total + lateSeconds, 0),
    segments,
    lateStarts: late,
    blocks: blockTimes(partsByBlock),
  };
}

/** Length and work of a class, in seconds. */
export type LengthOf = (plan: Plan) => Pick<Timeline, 'totalSeconds' | 'workSeconds'>;

/** Measures variants of a class one after the other; a block that stays the same is laid out once. */
export function lengthMeter(context: TimingContext): LengthOf {
  const known = new Map<Block, readonly Part[]>();
  const partsOf = (block: Block) => {
    const parts = known.get(block) ?? partsOfBlock(block, context);
    known.set(block, parts);
    return parts;
  };
  return (plan) => {
    const parts = partsOfClass(plan, context, partsOf).flat();
    return {
      totalSeconds: secondsOf(parts),
      workSeconds: secondsOf(parts.filter(({ kind }) => kind === 'work')),
    };
  };
}

type PartsOf = (block: Block) => readonly Part[];

function partsOfClass(plan: Plan, context: TimingContext, partsOf: PartsOf): readonly (readonly Part[])[] {
  const arranged = arrange(plan, context, partsOf);
  const toTheEnd = plan.blocks.findIndex((block) => 'length' in block && block.length.kind === 'to the end');
  if (toTheEnd < 0) return arranged;
  const others = secondsOf(arranged.flat()) - secondsOf(arranged[toTheEnd] ?? []);
  const left = teachingSeconds(plan, context.settings) - others;
  const seconds = Math.max(left, context.settings.floors.leastCoolDownSeconds);
  return arranged.with(toTheEnd, [{ kind: 'open', seconds }]);
}

function arrange(plan: Plan, context: TimingContext, partsOf: PartsOf): readonly (readonly Part[])[] {
  const trimmed = plan.blocks.map((block, index) => {
    const parts = partsOf(block);
    return endsWithoutRest(plan.blocks[index + 1]) ? withoutLastRest(parts) : parts;
  });
  return withoutClosingRests(withCountIns(plan.blocks, trimmed, context));
}

/** A line of time replaces the rest before it, and a class never ends in one. */
function endsWithoutRest(next: Block | undefined): boolean {
  return next === undefined || isTimeBlock(next);
}

function isLooseRest(part: Part | undefined): part is Part {
  return part !== undefined && restKinds.has(part.kind) && part.ofInterval !== true;
}

function withoutLastRest(parts: readonly Part[]): readonly Part[] {
  return parts.length > 1 && isLooseRest(parts.at(-1)) ? parts.slice(0, -1) : parts;
}

function withoutClosingRests(partsByBlock: readonly (readonly Part[])[]): readonly (readonly Part[])[] {
  const last = partsByBlock.findLastIndex((parts) => parts.length > 0);
  const parts = partsByBlock[last];
  if (parts === undefined || !isLooseRest(parts.at(-1))) return partsByBlock;
  return withoutClosingRests(partsByBlock.with(last, parts.slice(0, -1)));
}

/** Each count-in takes the last seconds of the rest that stands before it, and only what lacks is time of its own. */
function withCountIns(
  blocks: readonly Block[],
  partsByBlock: readonly (readonly Part[])[],
  { settings }: TimingContext,
): readonly (readonly Part[])[] {
  return blocks.reduce((done: readonly (readonly Part[])[], block, index) => {
    const parts = done[index] ?? [];
    const seconds = hasLetters(block) ? (block.countInSeconds ?? settings.countInSeconds) : 0;
    if (seconds === 0 || parts.length === 0) return done;
    const before = done.slice(0, index).findLastIndex((earlier) => earlier.length > 0);
    const shortened = takeFromRest(done[before] ?? [], seconds);
    const own = seconds - shortened.taken;
    const counted = own > 0 ? [countIn(own), ...parts] : parts;
    return done.with(index, counted).map((each, place) => (place === before ? shortened.parts : each));
  }, partsByBlock);
}

function takeFromRest(parts: readonly Part[], seconds: number) {
  const rest = parts.at(-1);
  if (rest === undefined || !restKinds.has(rest.kind)) return { taken: 0, parts };
  const taken = Math.min(seconds, rest.seconds);
  const left = { ...rest, seconds: rest.seconds - taken };
  return {
    taken,
    parts: [...parts.slice(0, -1), ...(left.seconds > 0 ? [left] : []), countIn(taken)],
  };
}

function countIn(seconds: number): Part {
  return { kind: 'count-in', seconds };
}

function layOut(partsByBlock: readonly (readonly Part[])[]): readonly Segment[] {
  let clock = 0;
  return partsByBlock.flatMap((parts, block) =>
    parts.map(({ seconds, ofInterval: _, kind, ...facts }) => {
      const startSeconds = clock;
      clock += seconds;
      return { kind, startSeconds, endSeconds: clock, block, ...facts };
    }),
  );
}

function blockTimes(partsByBlock: readonly (readonly Part[])[]): readonly BlockTime[] {
  let clock = 0;
  return partsByBlock.map((parts, block) => {
    const startSeconds = clock;
    clock += secondsOf(parts);
    const workSeconds = secondsOf(parts.filter(({ kind }) => kind === 'work'));
    return { block, startSeconds, endSeconds: clock, workSeconds };
  });
}

function sum(segments: readonly Segment[]): number {
  return segments.reduce((total, { startSeconds, endSeconds }) => total + endSeconds - startSeconds, 0);
}
