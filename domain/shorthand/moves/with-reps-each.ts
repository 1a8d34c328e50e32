import type { Letter, PlannedMove } from '../../plan/plan.ts';
import type { RepsEach } from '../blocks/read-block-line.ts';
import { type Told, tellNote, tellProblem } from '../told.ts';

/** The reps of the block's line on every move that says neither reps nor time; how they are read is said. */
export function withRepsEach(
  letters: readonly Letter[],
  { reps, span }: RepsEach,
  line: number,
  told: Told,
): readonly Letter[] {
  const taking = letters.flatMap(({ moves }) => moves).filter(takesReps);
  for (const move of taking) {
    if (move.sides === 'split sides' && reps % 2 === 1)
      tellProblem(told, line, span, { code: 'odd-reps', reps });
  }
  const wordsOf = (move: PlannedMove) => told.text.slice(move.span.start, move.span.end).trim();
  const as = taking.map((move) => `${reps} ${wordsOf(move)}`).join(', ');
  if (taking.length > 0)
    tellNote(told, { code: 'read-as', read: told.text.slice(span.start, span.end), as }, span);
  return letters.map((letter) => ({
    ...letter,
    moves: letter.moves.map((move) => (takesReps(move) ? { ...move, reps } : move)),
  }));
}

function takesReps({ reps, workSeconds, metres }: PlannedMove): boolean {
  return reps === undefined && workSeconds === undefined && metres === undefined;
}
