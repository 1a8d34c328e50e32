/** A stretch of the draft as kept: `start` inclusive, `end` exclusive, in UTF-16 units of the whole text. */
export type Span = { readonly start: number; readonly end: number };
