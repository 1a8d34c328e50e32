import type { Token } from './tokens-of.ts';

/** What matching looks at; any token of a line has it. */
export type Readable = Omit<Token, 'kind'> & { readonly kind: string };

/** What was recognised at a place in a line, and the place behind it; `undefined` where nothing was. */
export type Match<Value> = { readonly value: Value; readonly next: number } | undefined;

export type Matcher<Value> = (tokens: readonly Token[], at: number) => Match<Value>;

/** A phrase whose words may be joined by spaces, hyphens or nothing: `warm up` matches `warm-up`, `warmup`. */
export function phrase(tokens: readonly Readable[], at: number, words: string): Match<string> {
  if (words.charAt(0) !== tokens[at]?.text.charAt(0)) return undefined;
  const wanted = words.replaceAll(/[\s-]/g, '');
  let seen = '';
  let next = at;
  for (let token = tokens[next]; token !== undefined; token = tokens[next]) {
    next += 1;
    if (token.text === '-' && seen !== '') continue;
    seen += token.text;
    if (seen === wanted) return { value: words, next };
    if (!wanted.startsWith(seen)) return undefined;
  }
  return undefined;
}

/** The longest of several phrases that stands here. */
export function anyPhrase<Words extends string>(
  tokens: readonly Readable[],
  at: number,
  phrases: readonly Words[],
): Match<Words> {
  let best: Match<Words>;
  for (const words of phrases) {
    const found = phrase(tokens, at, words);
    if (found !== undefined && found.next > (best?.next ?? at)) best = { value: words, next: found.next };
  }
  return best;
}

/** The value behind the longest phrase of a table that stands here. */
export function phraseOf<Value>(
  tokens: readonly Readable[],
  at: number,
  table: ReadonlyMap<string, Value>,
): Match<Value> {
  const found = anyPhrase(tokens, at, [...table.keys()]);
  const value = found && table.get(found.value);
  return found === undefined || value === undefined ? undefined : { value, next: found.next };
}

export function sign(tokens: readonly Readable[], at: number, text: string): Match<string> {
  return tokens[at]?.text === text ? { value: text, next: at + 1 } : undefined;
}

/** A whole number. */
export function wholeNumber(tokens: readonly Readable[], at: number): Match<number> {
  const token = tokens[at];
  if (token?.kind !== 'number' || !Number.isInteger(token.value)) return undefined;
  return { value: token.value, next: at + 1 };
}

/** The place behind an optional phrase. */
export function past(tokens: readonly Readable[], at: number, ...phrases: readonly string[]): number {
  return anyPhrase(tokens, at, phrases)?.next ?? at;
}
