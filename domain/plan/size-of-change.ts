import { hasLetters, isOpenBlock, isTimeBlock } from './blocks-of.ts';
import type { Block, Letter, LetteredBlock, Plan, PlannedMove, RoundsBlock } from './plan.ts';
import { samePlain } from './same-plain.ts';

/** Seconds by which a length may move in a small change: common practice, no published source. */
const smallSeconds = 10;

/** How much a new version differs from an approved one: in its day alone, a little, or more. */
export type ChangeSize = 'same class' | 'small' | 'large';

/**
 * Small are an easier option named, lengths up to 10 s longer or shorter, and fewer rounds; the same class on
 * another day is the same class.
 */
export function sizeOfChange(before: Plan, after: Plan): ChangeSize {
  const { startsAt: _, ...was } = before.facts;
  const { startsAt: __, ...is } = after.facts;
  if (!samePlain(was, is)) return 'large';
  if (samePlain(before.blocks, after.blocks)) return 'same class';
  const masked = after.blocks.map((block, place) => maskBlock(before.blocks[place], block));
  return samePlain(before.blocks, masked) ? 'small' : 'large';
}

/** The block with what changed a little as it was; all that changed more stays. */
function maskBlock(before: Block | undefined, after: Block): Block {
  if (before === undefined) return after;
  if (isTimeBlock(before) && isTimeBlock(after) && isNear(before.seconds, after.seconds))
    return { ...after, seconds: before.seconds };
  if (isOpenBlock(before) && isOpenBlock(after)) {
    const { length } = before;
    const near =
      length.kind === 'fixed' &&
      after.length.kind === 'fixed' &&
      isNear(length.seconds, after.length.seconds);
    return near ? { ...after, length } : after;
  }
  if (!hasLetters(before) || !hasLetters(after)) return after;
  const letters = after.letters.map((letter, place) => maskLetter(before.letters[place], letter));
  return maskNumbers(before, { ...after, letters });
}

function maskNumbers(before: LetteredBlock, after: LetteredBlock): LetteredBlock {
  return isRounds(before) && isRounds(after)
    ? {
        ...after,
        rounds: Math.max(after.rounds, before.rounds),
        intervals: areNear(before, after) ? before.intervals : after.intervals,
      }
    : after;
}

function isRounds(block: LetteredBlock): block is RoundsBlock {
  return 'rounds' in block;
}

/** One value for all rounds, each within the bounds. */
function areNear(before: RoundsBlock, after: RoundsBlock): boolean {
  return (
    before.intervals.length === after.intervals.length &&
    before.intervals.every(({ workSeconds, restSeconds }, place) => {
      const now = after.intervals[place];
      return (
        now !== undefined && isNear(workSeconds, now.workSeconds) && isNear(restSeconds, now.restSeconds)
      );
    })
  );
}

function maskLetter(before: Letter | undefined, after: Letter): Letter {
  if (before === undefined) return after;
  const moves = after.moves.map((move, place) => maskMove(before.moves[place], move));
  const near = isNear(before.restSeconds, after.restSeconds) && before.restSeconds !== undefined;
  return { ...after, moves, ...(near ? { restSeconds: before.restSeconds } : {}) };
}

function maskMove(before: PlannedMove | undefined, after: PlannedMove): PlannedMove {
  if (before === undefined) return after;
  const { options, workSeconds } = before;
  const kept = after.options.slice(0, options.length);
  const added = after.options.slice(options.length);
  const named = samePlain(kept, options) && added.every(({ kind }) => kind === 'easier');
  return {
    ...after,
    ...(workSeconds !== undefined && isNear(workSeconds, after.workSeconds) ? { workSeconds } : {}),
    ...(named ? { options } : {}),
  };
}

function isNear(before: number | undefined, after: number | undefined): boolean {
  return before !== undefined && after !== undefined && Math.abs(after - before) <= smallSeconds;
}
