import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';

/** What the person is told where free text may tell of someone's health; undefined where it may be posted. */
export function whyNotPosted({ words }: Desk, text: string): Message | undefined {
  const word = words.privateWordIn(text);
  return word === undefined ? undefined : { text: words.privacy.found(inertText(word)) };
}

/** The same for a class, an edit, or a line that is kept; it stays in the person's own message. */
export function whyNotKept({ words }: Desk, text: string): Message | undefined {
  const word = words.privateWordIn(text);
  return word === undefined ? undefined : { text: words.privacy.notKept(inertText(word)) };
}
