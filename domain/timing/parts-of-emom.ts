import type { EmomBlock, PlannedMove } from '../plan/plan.ts';
import { type Part, restPart, secondsOf } from './part.ts';
import type { TimingContext } from './timing-context.ts';
import { workOfLetter } from './work-of-letter.ts';
import { workSecondsOf } from './work-of-move.ts';

/** A letter on every interval, in turn; what its moves leave of it is rest that belongs to it. */
export function partsOfEmom(block: EmomBlock, context: TimingContext): readonly Part[] {
  return Array.from({ length: block.intervals }, (_, index) => index).flatMap((index) => {
    const letter = block.letters[index % block.letters.length];
    if (letter === undefined) return [];
    const round = Math.floor(index / block.letters.length) + 1;
    const secondsFor = (planned: PlannedMove) => workSecondsOf(planned, block.workSeconds, context);
    const work = within(workOfLetter(block, letter, round, secondsFor, context), block.intervalSeconds);
    const left = block.intervalSeconds - secondsOf(work);
    return [...work, ...restPart(left, { letter: letter.id, round, belongsTo: 'interval' })];
  });
}

/** The next interval starts on time, whatever the work in this one asks for. */
function within(work: readonly Part[], seconds: number): readonly Part[] {
  const starts = work.map((_, index) => secondsOf(work.slice(0, index)));
  return work.flatMap((part, index) => {
    const left = seconds - (starts[index] ?? 0);
    return left > 0 ? [{ ...part, seconds: Math.min(part.seconds, left) }] : [];
  });
}
