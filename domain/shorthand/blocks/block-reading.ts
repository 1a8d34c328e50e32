import type { BlockKind } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import type { Line } from '../lines-of.ts';
import type { NoteKind } from '../note.ts';
import type { LimitedThing, ProblemKind } from '../problem.ts';
import type { Token } from '../tokens-of.ts';
import { type Told, tellNote, tellProblem } from '../told.ts';
import { type Clause, type ClauseKind, modifierNames, type PlacedClause, spanOf } from './clauses.ts';

/** One block line under reading: its tokens, the place behind its word, and what has been told. */
export type BlockReading = {
  readonly line: Line;
  readonly kind: BlockKind;
  readonly tokens: readonly Token[];
  readonly at: number;
  readonly told: Told;
  /** The whole line without blanks at its ends. */
  readonly span: Span;
};

export function tell(reading: BlockReading, span: Span, problem: ProblemKind): undefined {
  tellProblem(reading.told, reading.line.number, span, problem);
}

export function say(reading: BlockReading, span: Span, note: NoteKind): void {
  tellNote(reading.told, note, span);
}

/** The words of the line up to `at`, for a problem with what is missing behind them. */
export function wordSpan(reading: BlockReading): Span {
  return spanOf(reading.tokens, 0, Math.max(1, reading.at));
}

/** The clause of this kind, where it was said. */
export function clauseOf<Kind extends ClauseKind>(
  clauses: readonly PlacedClause[],
  kind: Kind,
): (PlacedClause & { readonly kind: Kind }) | undefined {
  return clauses.find((clause): clause is PlacedClause & { readonly kind: Kind } => clause.kind === kind);
}

/** Tells every clause that this kind of block has no place for, and every one said twice. */
export function onlyThese(
  reading: BlockReading,
  clauses: readonly PlacedClause[],
  allowed: readonly ClauseKind[],
  works: string,
): void {
  const seen = new Set<ClauseKind>();
  for (const clause of clauses) {
    const what = modifierNames[clause.kind];
    if (!allowed.includes(clause.kind)) {
      const unknown = { code: 'unknown-words', on: reading.kind, works } as const;
      tell(
        reading,
        clause.span,
        what === undefined ? unknown : { code: 'not-here', what, block: reading.kind },
      );
    } else if (seen.has(clause.kind)) {
      tell(reading, clause.span, { code: 'said-twice', what: what ?? clause.kind });
    }
    seen.add(clause.kind);
  }
}

/** Tells a value outside its limits. */
export function within(
  reading: BlockReading,
  span: Span,
  what: LimitedThing,
  value: number,
  range: { readonly least: number; readonly most: number },
): void {
  if (value < range.least || value > range.most)
    tell(reading, span, { code: 'out-of-range', what, ...range });
}

/** A block's name as typed in brackets. */
export function nameOf(reading: BlockReading, clauses: readonly PlacedClause[]): { readonly name?: string } {
  const clause: (Clause & { readonly kind: 'name' }) | undefined = clauseOf(clauses, 'name');
  if (clause === undefined) return {};
  const name = reading.told.text
    .slice(clause.start, clause.end)
    .replaceAll(/[*_`\s]+/g, ' ')
    .trim();
  return name === '' ? {} : { name };
}
