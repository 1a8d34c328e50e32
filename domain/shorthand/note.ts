import type { Span } from '../span.ts';

/** What was assumed while reading; never stops a plan. */
export type Note = { readonly span?: Span } & NoteKind;

export type NoteKind =
  | { readonly code: 'slot-assumed'; readonly slotSeconds: number }
  | { readonly code: 'title-missing' };
