import type { Span } from '../../span.ts';
import { duration, durations } from '../durations.ts';
import { anyPhrase, type Match, type Matcher, past, phrase, sign, wholeNumber } from '../matches.ts';
import type { ModifierName } from '../problem.ts';
import type { Token } from '../tokens-of.ts';

/** One thing said on a block line behind its word. */
export type Clause =
  | { readonly kind: 'rounds'; readonly rounds: number }
  | { readonly kind: 'work' | 'rest'; readonly values: readonly number[] }
  | { readonly kind: 'interval'; readonly workSeconds: number; readonly restSeconds: number }
  | {
      readonly kind: 'between' | 'between rounds' | 'between letters' | 'count-in' | 'in';
      readonly seconds: number;
      readonly bare: boolean;
    }
  | { readonly kind: 'people a station'; readonly people: number }
  | { readonly kind: 'in pairs'; readonly how: 'swap' | 'one rests' | undefined }
  | { readonly kind: 'about rounds'; readonly rounds: number }
  | { readonly kind: 'reps'; readonly reps: number }
  | { readonly kind: 'march in the rests' | 'burnout' | 'explain' | 'to the end' }
  | { readonly kind: 'name'; readonly start: number; readonly end: number }
  | { readonly kind: 'tabata protocol' }
  | { readonly kind: 'length'; readonly seconds: number; readonly bare: boolean; readonly number: number }
  | { readonly kind: 'unknown' };

export type ClauseKind = Clause['kind'];
export type PlacedClause = Clause & { readonly span: Span };

/** What a clause is called where it does not belong; the rest are plain unknown words. */
export const modifierNames: Readonly<Partial<Record<ClauseKind, ModifierName>>> = {
  rounds: 'rounds',
  work: 'work',
  rest: 'rest',
  interval: 'work',
  between: 'between',
  'between rounds': 'between rounds',
  'between letters': 'between letters',
  'count-in': 'count-in',
  in: 'in',
  'people a station': 'people a station',
  'in pairs': 'in pairs',
  'about rounds': 'about rounds',
  'march in the rests': 'march in the rests',
  burnout: 'burnout',
  explain: 'explain',
  'to the end': 'to the end',
};

/**
 * Everything said from `at` on, in order, commas skipped. Words that say nothing become one `unknown` clause
 * each run. A bare length is read in `bareUnit`.
 */
export function clausesOf(
  tokens: readonly Token[],
  at: number,
  bareUnit: 'seconds' | 'minutes',
): readonly PlacedClause[] {
  const clauses: PlacedClause[] = [];
  let next = at;
  let unknownFrom: number | undefined;
  const closeUnknown = (until: number) => {
    if (unknownFrom !== undefined)
      clauses.push({ kind: 'unknown', span: spanOf(tokens, unknownFrom, until) });
    unknownFrom = undefined;
  };
  while (next < tokens.length) {
    if (isBreak(tokens, next)) {
      closeUnknown(next);
      next += 1;
      continue;
    }
    const found = clauseAt(tokens, next, bareUnit);
    if (found === undefined) {
      unknownFrom ??= next;
      next += 1;
      continue;
    }
    closeUnknown(next);
    clauses.push({ ...found.value, span: spanOf(tokens, next, found.next) });
    next = found.next;
  }
  closeUnknown(tokens.length);
  return clauses;
}

export function spanOf(tokens: readonly Token[], from: number, until: number): Span {
  const start = tokens[from]?.start ?? tokens.at(-1)?.end ?? 0;
  return { start, end: tokens[until - 1]?.end ?? start };
}

function isBreak(tokens: readonly Token[], at: number): boolean {
  const text = tokens[at]?.text;
  if (text === ',' || text === '.') return true;
  return text === ':' && !(tokens[at + 1]?.kind === 'number' && tokens[at + 1]?.glued === true);
}

function clauseAt(tokens: readonly Token[], at: number, bareUnit: 'seconds' | 'minutes'): Match<Clause> {
  for (const matcher of matchers) {
    const found = matcher(tokens, at);
    if (found !== undefined) return found;
  }
  const length = duration(tokens, at, bareUnit);
  return length && { value: { kind: 'length', ...length.value }, next: length.next };
}

const protocol: Matcher<Clause> = (tokens, at) => {
  const found = anyPhrase(tokens, at, ['(8x20/10)', '8x20/10', '20/10x8', '(20/10)']);
  return found && { value: { kind: 'tabata protocol' }, next: found.next };
};

const bracketedName: Matcher<Clause> = (tokens, at) => {
  if (tokens[at]?.text !== '(') return undefined;
  const close = tokens.findIndex((token, index) => index > at && token.text === ')');
  const first = tokens[at + 1];
  const last = tokens[close - 1];
  if (close < at + 2 || first === undefined || last === undefined) return undefined;
  return { value: { kind: 'name', start: first.start, end: last.end }, next: close + 1 };
};

const betweenWords = {
  'between rounds': 'between rounds',
  'between each round': 'between rounds',
  'between letters': 'between letters',
  'between moves': 'between letters',
  between: 'between',
  'each round': 'between rounds',
  'every round': 'between rounds',
  'after each round': 'between rounds',
} as const;
const betweenPhrases = [
  'between rounds',
  'between each round',
  'between letters',
  'between moves',
  'between',
] as const;
const eachPhrases = ['each round', 'every round', 'after each round'] as const;

const between: Matcher<Clause> = (tokens, at) => {
  const words = anyPhrase(tokens, at, betweenPhrases);
  if (words !== undefined) {
    const length = duration(tokens, past(tokens, words.next, 'rest'), 'seconds');
    return length && lengthClause(betweenWords[words.value], length);
  }
  const length = duration(tokens, past(tokens, at, 'rest'), 'seconds');
  const behind =
    length && anyPhrase(tokens, past(tokens, length.next, 'rest'), [...betweenPhrases, ...eachPhrases]);
  if (behind === undefined || duration(tokens, past(tokens, behind.next, 'rest'), 'seconds') !== undefined)
    return undefined;
  return length && lengthClause(betweenWords[behind.value], { value: length.value, next: behind.next });
};

function lengthClause(
  kind: 'between' | 'between rounds' | 'between letters' | 'count-in' | 'in',
  length: { readonly value: { readonly seconds: number; readonly bare: boolean }; readonly next: number },
): Match<Clause> {
  return { value: { kind, seconds: length.value.seconds, bare: length.value.bare }, next: length.next };
}

const lists: Matcher<Clause> = (tokens, at) => {
  const word = anyPhrase(tokens, at, ['work', 'rest'] as const);
  const values = word && durations(tokens, word.next);
  return word && values && { value: { kind: word.value, values: values.value }, next: values.next };
};

const interval: Matcher<Clause> = (tokens, at) => {
  const work = duration(tokens, at, 'seconds');
  if (work === undefined) return undefined;
  const slash = sign(tokens, work.next, '/');
  if (slash !== undefined) {
    const rest = duration(tokens, slash.next, 'seconds');
    return rest && intervalClause(work.value.seconds, rest.value.seconds, rest.next);
  }
  const on = anyPhrase(tokens, work.next, ['on', 'work', 'of work']);
  if (on === undefined) return restOnly(tokens, work);
  const rest = duration(tokens, past(tokens, on.next, ',', 'and', '/'), 'seconds');
  const off = rest && anyPhrase(tokens, rest.next, ['off', 'rest', 'of rest']);
  if (rest !== undefined && off !== undefined) {
    return intervalClause(work.value.seconds, rest.value.seconds, off.next);
  }
  return { value: { kind: 'work', values: [work.value.seconds] }, next: on.next };
};

function intervalClause(workSeconds: number, restSeconds: number, next: number): Match<Clause> {
  return { value: { kind: 'interval', workSeconds, restSeconds }, next };
}

function restOnly(
  tokens: readonly Token[],
  length: { readonly value: { readonly seconds: number }; readonly next: number },
): Match<Clause> {
  const rest = anyPhrase(tokens, length.next, ['rest', 'off']);
  return rest && { value: { kind: 'rest', values: [length.value.seconds] }, next: rest.next };
}

const roundsClause: Matcher<Clause> = (tokens, at) => {
  const x = phrase(tokens, at, 'x');
  const behind = x && wholeNumber(tokens, x.next);
  if (behind !== undefined) return { value: { kind: 'rounds', rounds: behind.value }, next: behind.next };
  const number = wholeNumber(tokens, at);
  const word = number && anyPhrase(tokens, number.next, ['x', 'rounds', 'round', 'sets', 'set', 'times']);
  if (number === undefined || word === undefined || belongsBehind(tokens, number.next)) return undefined;
  return { value: { kind: 'rounds', rounds: number.value }, next: word.next };
};

/** No work is as short as this, so that in `2 x 3, 40/20` the 3 are rounds. */
const mostLoneRounds = 14;

/** In `2 x3` and `2 x 3` the sign goes with the number behind it; in `3 x 40/20` with the one before. */
function belongsBehind(tokens: readonly Token[], at: number): boolean {
  const [x, number] = [tokens[at], tokens[at + 1]];
  if (x?.text !== 'x' || x.glued || number?.kind !== 'number') return false;
  const hasUnit = duration(tokens, at + 1, 'seconds')?.value.bare === false;
  return number.glued || (number.value <= mostLoneRounds && tokens[at + 2]?.text !== '/' && !hasUnit);
}

const aboutRounds: Matcher<Clause> = (tokens, at) => {
  const about = anyPhrase(tokens, at, ['about', 'around', 'roughly', '~']);
  const number = about && wholeNumber(tokens, about.next);
  if (number === undefined) return undefined;
  const word = anyPhrase(tokens, number.next, ['rounds', 'round']);
  return { value: { kind: 'about rounds', rounds: number.value }, next: word?.next ?? number.next };
};

const repsClause: Matcher<Clause> = (tokens, at) => {
  const number = wholeNumber(tokens, at);
  const word = number && anyPhrase(tokens, number.next, ['reps', 'rep', 'reps each']);
  return number && word && { value: { kind: 'reps', reps: number.value }, next: word.next };
};

const eachStation: Matcher<Clause> = (tokens, at) => {
  const number = wholeNumber(tokens, at);
  if (number === undefined) return undefined;
  const people = past(tokens, number.next, 'people', 'person', 'ppl');
  const word = anyPhrase(tokens, people, [
    'each station',
    'each',
    'a station',
    'per station',
    'at each station',
  ]);
  return word && { value: { kind: 'people a station', people: number.value }, next: word.next };
};

const inPairs: Matcher<Clause> = (tokens, at) => {
  const words = anyPhrase(tokens, at, ['in pairs']);
  if (words === undefined) return undefined;
  const how = anyPhrase(tokens, past(tokens, words.next, ','), [
    'swap',
    'swapping',
    'one rests',
    'one resting',
  ]);
  const value = how && (how.value.startsWith('swap') ? 'swap' : 'one rests');
  return { value: { kind: 'in pairs', how: value }, next: how?.next ?? words.next };
};

const countIn: Matcher<Clause> = (tokens, at) => {
  const word = phrase(tokens, at, 'count in');
  const length = word && duration(tokens, word.next, 'seconds');
  return length && lengthClause('count-in', length);
};

const cap: Matcher<Clause> = (tokens, at) => {
  const word = anyPhrase(tokens, at, ['in', 'cap', 'capped at', 'time cap', 'cap of']);
  const length = word && duration(tokens, word.next, 'seconds');
  return length && lengthClause('in', length);
};

const plainPhrases = new Map<string, 'march in the rests' | 'burnout' | 'explain' | 'to the end'>([
  ['march in the rests', 'march in the rests'],
  ['march in the rest', 'march in the rests'],
  ['march in rests', 'march in the rests'],
  ['marching in the rests', 'march in the rests'],
  ['burnout', 'burnout'],
  ['explain', 'explain'],
  ['explaining', 'explain'],
  ['demo', 'explain'],
  ['to the end', 'to the end'],
  ['to end', 'to the end'],
]);

const plainClause: Matcher<Clause> = (tokens, at) => {
  const found = anyPhrase(tokens, at, [...plainPhrases.keys()]);
  const kind = found && plainPhrases.get(found.value);
  return found && kind && { value: { kind }, next: found.next };
};

/** In the order tried: a longer form stands before the one it contains. */
const matchers: readonly Matcher<Clause>[] = [
  protocol,
  bracketedName,
  between,
  lists,
  plainClause,
  inPairs,
  countIn,
  aboutRounds,
  cap,
  repsClause,
  eachStation,
  roundsClause,
  interval,
];
