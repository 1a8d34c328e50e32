import type { AmrapBlock, LadderBlock, Letter, PlannedMove } from '../plan/plan.ts';
import type { Part } from './part.ts';
import { secondsPerRep } from './seconds-per-rep.ts';
import type { TimingContext } from './timing-context.ts';
import { movesInRound } from './work-of-letter.ts';
import { workSecondsOf } from './work-of-move.ts';

/** AMRAP, for time, ladder: one stretch of work that its moves share. */
export function partsOfSharedWork(block: AmrapBlock | LadderBlock, context: TimingContext): readonly Part[] {
  const seconds =
    block.kind === 'ladder' ? (block.capSeconds ?? ladderSeconds(block, context)) : block.seconds;
  const sharedBy = block.letters.flatMap((letter) => letter.moves.map((move) => move.id));
  return [{ kind: 'work', seconds, sharedBy }];
}

/** Seconds of all its reps with no rest; a move with reps of its own does those on every rung. */
export function ladderSeconds(block: LadderBlock, context: TimingContext): number {
  return block.rungs
    .flatMap((reps, index) =>
      block.letters
        .flatMap((letter) => movesInRound(letter, index + 1).map((planned) => ({ planned, letter })))
        .map((line) => secondsOnce(line, line.planned.reps ?? reps, context)),
    )
    .reduce((sum, seconds) => sum + seconds, 0);
}

/** Seconds of a move once through at so many reps, both sides together; its own time where it has one. */
export function secondsOnce(
  { planned, letter }: { readonly planned: PlannedMove; readonly letter: Letter },
  reps: number,
  context: TimingContext,
): number {
  const oneGo =
    planned.workSeconds === undefined
      ? Math.round(reps * secondsPerRep(planned, context))
      : workSecondsOf(planned, undefined, context);
  return planned.sides === 'each side' || letter.wholeSetEachSide ? 2 * oneGo : oneGo;
}
