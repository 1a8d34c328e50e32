import type { Match } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import type { LabelRef } from './edit.ts';

/** A label as the class prints it: `C`, `B1`, `AA`. */
export function labelAt(tokens: readonly Token[], at: number): Match<LabelRef> {
  const word = tokens[at];
  if (word?.kind !== 'word' || !/^[a-z]{1,2}$/.test(word.text)) return undefined;
  const number = tokens[at + 1];
  const numbered = number?.kind === 'number' && number.glued && Number.isInteger(number.value);
  const label = word.text.toUpperCase() + (numbered ? number.text : '');
  const end = numbered ? number.end : word.end;
  return { value: { label, span: { start: word.start, end } }, next: numbered ? at + 2 : at + 1 };
}
