import { hasLetters, isTimeBlock } from '../plan/blocks-of.ts';
import type { Block, Plan } from '../plan/plan.ts';
import { isRest, type Part, secondsOf } from './part.ts';
import { teachingSeconds } from './teaching-seconds.ts';
import type { TimingContext } from './timing-context.ts';

type PartsOf = (block: Block) => readonly Part[];

/**
 * The parts of each block as they stand in the class: last rests kept or replaced, count-ins in their place,
 * a cool-down to the end with what is left. `partsOf` gives a block by itself.
 */
export function partsOfClass(
  plan: Plan,
  context: TimingContext,
  partsOf: PartsOf,
): readonly (readonly Part[])[] {
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
  return part !== undefined && isRest(part) && part.belongsTo === undefined;
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
  if (rest === undefined || !isRest(rest) || rest.belongsTo === 'partner') return { taken: 0, parts };
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
