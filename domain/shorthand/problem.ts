import type { Span } from '../span.ts';

/** A name that may have been meant: a move, with its canonical name. */
export type NearName = { readonly moveId: string; readonly name: string };

/**
 * What could not be read. `line` counts from 1; `span` is in the whole draft. `code` and its facts are
 * narrowed by the union below; the words live in `bot/words`.
 */
type ProblemPlace = { readonly line: number; readonly span: Span; readonly read: string };

export type Problem = ProblemPlace & ProblemKind;

export type ProblemKind =
  | { readonly code: 'unknown-move'; readonly near: readonly NearName[] }
  | { readonly code: 'ambiguous-move'; readonly choices: readonly NearName[] }
  | { readonly code: 'number-needed'; readonly block: string; readonly works: string };
