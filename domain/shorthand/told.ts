import type { Span } from '../span.ts';
import type { Note, NoteKind } from './note.ts';
import type { Problem, ProblemKind } from './problem.ts';

/** Collects what is told while one draft is read; one bad line never stops the next. */
export type Told = {
  readonly text: string;
  readonly problems: Problem[];
  readonly notes: Note[];
};

export function nothingTold(text: string): Told {
  return { text, problems: [], notes: [] };
}

export function tellProblem(told: Told, line: number, span: Span, kind: ProblemKind): void {
  told.problems.push({ line, span, read: told.text.slice(span.start, span.end), ...kind });
}

export function tellNote(told: Told, kind: NoteKind, span?: Span): void {
  told.notes.push(span === undefined ? kind : { span, ...kind });
}
