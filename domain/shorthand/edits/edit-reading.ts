import { spanOfLine } from '../group-lines.ts';
import type { Line } from '../lines-of.ts';
import type { ProblemKind } from '../problem.ts';
import type { Token } from '../tokens-of.ts';
import { type Told, tellProblem } from '../told.ts';

/** One line of an edit message under reading; `at` is the place behind its word. */
export type EditReading = {
  readonly line: Line;
  readonly tokens: readonly Token[];
  readonly at: number;
  /** The lines behind it up to the next edit: what an added block holds. */
  readonly below: readonly Line[];
  readonly told: Told;
};

export function tellEdit(reading: EditReading, problem: ProblemKind): undefined {
  tellProblem(reading.told, reading.line.number, spanOfLine(reading.line), problem);
}

/** The line with everything before and behind these tokens blanked, so that places still agree. */
export function partOfLine(line: Line, tokens: readonly Token[], from: number, until: number): Line {
  const start = (tokens[from]?.start ?? line.start + line.clean.length) - line.start;
  const end = (tokens[until - 1]?.end ?? line.start + line.clean.length) - line.start;
  return { ...line, clean: ' '.repeat(start) + line.clean.slice(start, Math.max(start, end)) };
}
