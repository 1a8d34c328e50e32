import type { BlockKind } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import type { Line } from '../lines-of.ts';
import type { NoteKind } from '../note.ts';
import type { ProblemKind } from '../problem.ts';
import { type Told, tellNote, tellProblem } from '../told.ts';
import type { NameBook } from './name-book.ts';
import type { MoveToken } from './pack-tokens.ts';

/** One line of moves under reading. `timed`: the block's clock gives the work. */
export type LetterReading = {
  readonly line: Line;
  readonly kind: BlockKind;
  readonly timed: boolean;
  readonly book: NameBook;
  readonly told: Told;
};

export function tellAt(reading: LetterReading, span: Span, problem: ProblemKind): undefined {
  tellProblem(reading.told, reading.line.number, span, problem);
}

export function noteAt(reading: LetterReading, span: Span, note: NoteKind): void {
  tellNote(reading.told, note, span);
}

/** The stretch of the draft that these tokens cover. */
export function spanOfTokens(tokens: readonly MoveToken[]): Span {
  const start = tokens[0]?.start ?? 0;
  return { start, end: tokens.at(-1)?.end ?? start };
}

/** The tokens' words as the look-up wants them: glued where typed so, one space elsewhere. */
export function wordsOf(tokens: readonly MoveToken[]): string {
  return tokens
    .map((token, index) =>
      index > 0 && token.start !== tokens[index - 1]?.end ? ` ${token.text}` : token.text,
    )
    .join('');
}
