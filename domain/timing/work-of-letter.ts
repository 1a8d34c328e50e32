import type { Letter, LetteredBlock, PlannedMove } from '../plan/plan.ts';
import type { Part } from './part.ts';
import { knownMove } from './planned-moves.ts';
import type { TimingContext } from './timing-context.ts';
import { workOfMove } from './work-of-move.ts';

/** The moves a letter has in a round, from 1: all of them, or the one whose turn it is. */
export function movesInRound(letter: Letter, round: number): readonly PlannedMove[] {
  if (letter.order === 'in turn') return letter.moves;
  const move = letter.moves[(round - 1) % letter.moves.length];
  return move === undefined ? [] : [move];
}

/** A one-sided move on that side only, one typed for the left on the other; what works both sides stays. */
function onSide(planned: PlannedMove, side: 'right' | 'left', context: TimingContext): PlannedMove {
  if (planned.sides === 'left') return { ...planned, sides: side === 'right' ? 'left' : 'right' };
  return takesASide(planned, context) ? { ...planned, sides: side } : planned;
}

/** Whether a move in a whole set each side is done on one side at a time; what is not is done twice as it is. */
export function takesASide({ sides, ...planned }: PlannedMove, context: TimingContext): boolean {
  if (sides === 'both') return knownMove({ sides, ...planned }, context)?.sides === 'one-sided';
  return sides !== 'alternating';
}

/**
 * A letter once through in a round, its moves back to back: on the right, then on the left for a whole set
 * each side; twice where partners swap roles.
 */
export function workOfLetter(
  block: LetteredBlock,
  letter: Letter,
  round: number,
  secondsFor: (planned: PlannedMove) => number,
  context: TimingContext,
): readonly Part[] {
  const place = { letter: letter.id, round };
  const moves = movesInRound(letter, round);
  const once = (run: readonly PlannedMove[]) =>
    run.flatMap((planned) => workOfMove(planned, secondsFor(planned), place));
  const set = letter.wholeSetEachSide
    ? (['right', 'left'] as const).flatMap((side) => once(moves.map((move) => onSide(move, side, context))))
    : once(moves);
  return block.pairs === 'swap' ? [...set, ...set] : set;
}
