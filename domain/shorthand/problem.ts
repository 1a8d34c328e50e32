import type { BlockKind } from '../plan/plan.ts';
import type { Span } from '../span.ts';

/** A name that may have been meant: a move, with its canonical name. */
export type NearName = { readonly moveId: string; readonly name: string };

/**
 * What could not be read. `line` counts from 1; `span` is in the whole draft as kept; `read` is the text
 * under the span. The words for people live in `bot/words`.
 */
export type Problem = {
  readonly line: number;
  readonly span: Span;
  readonly read: string;
} & ProblemKind;

export type LimitedThing =
  | 'slot'
  | 'plan'
  | 'work'
  | 'rest'
  | 'rounds'
  | 'level'
  | 'people'
  | 'reps'
  | 'rpe'
  | 'length'
  | 'rungs'
  | 'weight'
  | 'metres';

export type ProblemKind =
  // Names
  | { readonly code: 'unknown-move'; readonly near: readonly NearName[] }
  | { readonly code: 'ambiguous-move'; readonly choices: readonly NearName[] }
  | { readonly code: 'unknown-kit' }
  | { readonly code: 'unknown-wish' }
  // Words and numbers that fit nowhere; `works` is a form that would work.
  | { readonly code: 'unknown-words'; readonly on: BlockKind | 'move' | 'kit'; readonly works: string }
  | { readonly code: 'number-needed'; readonly block: BlockKind; readonly works: string }
  | { readonly code: 'unit-needed'; readonly works: readonly string[] }
  | { readonly code: 'sign-asked'; readonly works: readonly string[] }
  | { readonly code: 'said-twice'; readonly what: string }
  | { readonly code: 'not-here'; readonly what: ModifierName; readonly block: BlockKind }
  | {
      readonly code: 'out-of-range';
      readonly what: LimitedThing;
      readonly least: number;
      readonly most: number;
    }
  | { readonly code: 'too-many'; readonly what: 'blocks' | 'letters' | 'moves'; readonly most: number }
  | { readonly code: 'message-too-long'; readonly length: number; readonly most: number }
  // Lines out of place
  | { readonly code: 'no-block' }
  | { readonly code: 'no-moves'; readonly block: BlockKind }
  | { readonly code: 'line-before-block' }
  | { readonly code: 'line-under-time'; readonly block: BlockKind }
  | { readonly code: 'say-without-letter' }
  | { readonly code: 'misplaced-time'; readonly block: BlockKind; readonly at: 'start' | 'end' }
  | { readonly code: 'each-round-not-last' }
  // Blocks
  | { readonly code: 'rounds-mismatch'; readonly values: number; readonly rounds: number }
  | { readonly code: 'lists-differ'; readonly works: number; readonly rests: number }
  | { readonly code: 'pairs-asked' }
  /** Under a superset or its kin: so many lines don't part into letters of `each`. */
  | {
      readonly code: 'lines-left-over';
      readonly lines: number;
      readonly each: number;
      readonly works: string;
    }
  | { readonly code: 'tabata-is-fixed' }
  | { readonly code: 'whole-minutes' }
  | { readonly code: 'moment-past' }
  /** A day of the month with a weekday that is not its own. `date`: `YYYY-MM-DD`. */
  | { readonly code: 'other-weekday'; readonly date: string }
  // Moves
  | { readonly code: 'two-moves'; readonly first: string; readonly second: string }
  | { readonly code: 'name-needed' }
  | { readonly code: 'sides-not-possible'; readonly move: string }
  | {
      readonly code: 'sides-break-frame';
      readonly block: BlockKind;
      readonly sides: 'each side' | 'whole set each side';
    }
  | { readonly code: 'odd-reps'; readonly reps: number }
  | { readonly code: 'time-or-reps-needed'; readonly block: BlockKind }
  | { readonly code: 'interval-too-short'; readonly needSeconds: number; readonly intervalSeconds: number }
  | { readonly code: 'by-round-mismatch'; readonly moves: number; readonly rounds: number }
  // Edits
  | { readonly code: 'unknown-edit'; readonly nearest?: string }
  | { readonly code: 'edit-incomplete'; readonly works: string }
  | { readonly code: 'no-such-letter'; readonly label: string; readonly last?: string }
  | { readonly code: 'letter-gone'; readonly label: string }
  | { readonly code: 'no-such-block'; readonly word: string }
  | { readonly code: 'several-blocks'; readonly word: string; readonly count: number }
  | { readonly code: 'one-move-needed'; readonly label: string; readonly moves: readonly string[] }
  | { readonly code: 'no-option'; readonly kind: 'easier' | 'harder'; readonly label: string }
  | { readonly code: 'block-without-numbers'; readonly block: BlockKind }
  | { readonly code: 'last-block' }
  | { readonly code: 'edit-unclear' };

/** What may stand on a block line or behind a letter, by the word people type. */
export type ModifierName =
  | 'rest'
  | 'work'
  | 'rounds'
  | 'between rounds'
  | 'between letters'
  | 'between'
  | 'each round'
  | 'people a station'
  | 'march in the rests'
  | 'in pairs'
  | 'burnout'
  | 'count-in'
  | 'about rounds'
  | 'in'
  | 'sets of its own'
  | 'time of its own'
  | 'to the end'
  | 'whole set each side'
  | 'by round'
  | 'explain';
