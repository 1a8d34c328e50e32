import type { KitItem } from '../catalogue/kit.ts';
import { spanOf } from './blocks/clauses.ts';
import { kitName, kitPhrases } from './kit-words.ts';
import type { Line } from './lines-of.ts';
import { anyPhrase, phraseOf, sign } from './matches.ts';
import { type Token, tokensOf } from './tokens-of.ts';
import { type Told, tellNote, tellProblem } from './told.ts';

const kitLine = /^\s*(?:kit|equipment)\s*:/;

export function isKitLine(line: Line): boolean {
  return kitLine.test(line.clean);
}

/** `kit: dumbbells, mats`, `kit: none`; the kit in the catalogue's order of saying, each once. */
export function readKitLine(line: Line, told: Told): readonly KitItem[] | undefined {
  return readKit(tokensOf(line, kitLine.exec(line.clean)?.[0].length ?? 0), line.number, told);
}

/** Kit words up to the line's end; absent where one is unknown. */
export function readKit(tokens: readonly Token[], line: number, told: Told): readonly KitItem[] | undefined {
  const before = told.problems.length;
  const items: KitItem[] = [];
  const tellUnknown = (from: number, next: number) =>
    tellProblem(told, line, spanOf(tokens, from, next), { code: 'unknown-kit' });
  const none = anyPhrase(tokens, 0, ['none', 'no kit', 'nothing', 'body weight only', 'body weight']);
  if (none !== undefined && none.next >= tokens.length) return [];
  let unknownFrom: number | undefined;
  for (let at = 0; at <= tokens.length; ) {
    const joiner = at < tokens.length ? joinerAt(tokens, at) : undefined;
    const from = pastWords(tokens, at);
    const found = phraseOf(tokens, from, kitPhrases);
    const ends = at === tokens.length || joiner !== undefined || found !== undefined;
    if (ends && unknownFrom !== undefined) tellUnknown(unknownFrom, at);
    if (ends) unknownFrom = undefined;
    else unknownFrom ??= at;
    if (found !== undefined) {
      items.push(...found.value);
      if (found.value.length > 1 || from > at) {
        const span = spanOf(tokens, at, found.next);
        const as = found.value.map(kitName).join(' and ');
        tellNote(told, { code: 'read-as', read: told.text.slice(span.start, span.end), as }, span);
      }
    }
    at = found?.next ?? joiner ?? at + 1;
  }
  if (items.length === 0 && told.problems.length === before) {
    tellProblem(told, line, spanOf(tokens, 0, tokens.length), { code: 'unknown-kit' });
  }
  return told.problems.length > before ? undefined : [...new Set(items)];
}

const besideKit: ReadonlySet<string> = new Set([
  'light',
  'medium',
  'heavy',
  'pair',
  'pairs',
  'of',
  'a',
  'some',
]);

/** The place behind words that choose among the pieces of one kit. */
function pastWords(tokens: readonly Token[], at: number): number {
  const behind = tokens.findIndex(({ text }, index) => index >= at && !besideKit.has(text));
  return behind === -1 ? at : behind;
}

function joinerAt(tokens: readonly Token[], at: number): number | undefined {
  const text = [',', '+', '&', 'and', '.'].find((each) => sign(tokens, at, each) !== undefined);
  return text === undefined ? undefined : at + 1;
}
