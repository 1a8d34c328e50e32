/** Makes what a person typed inert: no mention, link or date of theirs takes effect. */
export function escapeText(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;');
}

/** Typed text inside our own markup: escaped, and its `*`, `_`, `~` and backticks kept from pairing up. */
export function inertText(text: string): string {
  return escapeText(text).replace(/[*_~`]/g, (sign) => `\u200b${sign}\u200b`);
}

/** Typed text inside a code block of ours: escaped, and its backticks kept from ending the block. */
export function codeText(text: string): string {
  return escapeText(text).replace(/`/g, '\u200b`\u200b');
}
