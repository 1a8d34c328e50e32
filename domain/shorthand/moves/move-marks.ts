import type { Tempo } from '../../catalogue/move.ts';
import type { Option, SideUse, Weight } from '../../plan/plan.ts';
import { duration } from '../durations.ts';
import { anyPhrase, type Match, phrase, phraseOf, sign, wholeNumber } from '../matches.ts';
import type { MoveToken } from './pack-tokens.ts';

/** One thing said beside a move's name. */
export type MoveMark =
  | { readonly kind: 'time'; readonly seconds: number }
  | { readonly kind: 'reps'; readonly reps: number }
  | { readonly kind: 'sets'; readonly rounds: number; readonly reps: number }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'tempo'; readonly tempo: Tempo; readonly threeNumbers: boolean }
  | { readonly kind: 'sides'; readonly sides: SideUse }
  | { readonly kind: 'weight'; readonly weight: Weight }
  | { readonly kind: 'rpe'; readonly rpe: number }
  | { readonly kind: 'metres'; readonly metres: number }
  | { readonly kind: 'at'; readonly value: number }
  | { readonly kind: 'option'; readonly option: Option['kind'] }
  | { readonly kind: 'note' };

type MarkMatcher = (tokens: readonly MoveToken[], at: number) => Match<MoveMark>;

const sideWords = new Map<string, SideUse>([
  ['each side', 'each side'],
  ['e/s', 'each side'],
  ['l/r', 'each side'],
  ['r/l', 'each side'],
  ['per side', 'each side'],
  ['each leg', 'each side'],
  ['each arm', 'each side'],
  ['split sides', 'split sides'],
  ['split side', 'split sides'],
  ['alternating', 'alternating'],
  ['alternate', 'alternating'],
  ['alt', 'alternating'],
  ['right', 'right'],
  ['right side', 'right'],
  ['left', 'left'],
  ['left side', 'left'],
]);

const feels = new Map<string, Weight>([
  ['light', { kind: 'feel', feel: 'light' }],
  ['medium', { kind: 'feel', feel: 'medium' }],
  ['heavy', { kind: 'feel', feel: 'heavy' }],
]);

const massUnits = new Map<string, 'kg' | 'lb'>([
  ['kg', 'kg'],
  ['kgs', 'kg'],
  ['kilo', 'kg'],
  ['kilos', 'kg'],
  ['lb', 'lb'],
  ['lbs', 'lb'],
  ['pounds', 'lb'],
]);

const metreWords = ['m', 'metre', 'metres', 'meter', 'meters'];

const note: MarkMatcher = (tokens, at) =>
  tokens[at]?.kind === 'note' ? { value: { kind: 'note' }, next: at + 1 } : undefined;

const option: MarkMatcher = (tokens, at) => {
  const word = anyPhrase(tokens, at, ['easier', 'harder', 'or'] as const);
  return word && { value: { kind: 'option', option: word.value }, next: word.next };
};

const sides: MarkMatcher = (tokens, at) => {
  const found = phraseOf(tokens, at, sideWords);
  return found && { value: { kind: 'sides', sides: found.value }, next: found.next };
};

const feel: MarkMatcher = (tokens, at) => {
  const found = phraseOf(tokens, at, feels);
  return found && { value: { kind: 'weight', weight: found.value }, next: found.next };
};

const rpe: MarkMatcher = (tokens, at) => {
  const word = phrase(tokens, at, 'rpe');
  const number = word && tokens[word.next];
  if (word === undefined || number?.kind !== 'number' || hasUnit(tokens, word.next + 1)) return undefined;
  return { value: { kind: 'rpe', rpe: number.value }, next: word.next + 1 };
};

const atSign: MarkMatcher = (tokens, at) => {
  const number = tokens[at + 1];
  if (tokens[at]?.text !== '@' || number?.kind !== 'number' || hasUnit(tokens, at + 2)) return undefined;
  return { value: { kind: 'at', value: number.value }, next: at + 2 };
};

/** Whether the number before this place is a weight, a time or a distance. */
function hasUnit(tokens: readonly MoveToken[], at: number): boolean {
  const length = duration(tokens, at - 1, 'seconds');
  return phraseOf(tokens, at, massUnits) !== undefined || length?.value.bare === false;
}

/** `tempo 3-1-1-0`; `x` is explosive and counts as 1 s; three numbers leave out the last pause. */
const tempo: MarkMatcher = (tokens, at) => {
  const word = phrase(tokens, at, 'tempo');
  if (word === undefined) return undefined;
  const { parts, next } = digitsOfTempo(tokens, word.next) ?? partsOfTempo(tokens, word.next);
  const [lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds = 0] = parts;
  if (lowerSeconds === undefined || bottomPauseSeconds === undefined || liftSeconds === undefined) {
    return undefined;
  }
  const value = { lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds };
  return { value: { kind: 'tempo', tempo: value, threeNumbers: parts.length === 3 }, next };
};

type TempoParts = { readonly parts: readonly number[]; readonly next: number };

/** `3-1-1-0`, `3/1/1/0`, `3 1 1 0`. */
function partsOfTempo(tokens: readonly MoveToken[], at: number): TempoParts {
  const parts: number[] = [];
  let next = at;
  while (parts.length < 4) {
    const joined = (sign(tokens, next, '-') ?? sign(tokens, next, '/'))?.next;
    const part = parts.length === 0 || joined !== undefined || isLoneDigit(tokens, next);
    const found = part ? tempoPart(tokens, joined ?? next) : undefined;
    if (found === undefined) break;
    parts.push(found.value);
    next = found.next;
  }
  return { parts, next };
}

/** A digit that stands apart and belongs to nothing behind it. */
function isLoneDigit(tokens: readonly MoveToken[], at: number): boolean {
  const token = tokens[at];
  if (token?.kind !== 'number' || !/^\d$/.test(token.text) || hasUnit(tokens, at + 1)) return false;
  return anyPhrase(tokens, at + 1, ['x', 'reps', 'rep', ...metreWords]) === undefined;
}

/** `3110`, `31x1`: a digit a part. */
function digitsOfTempo(tokens: readonly MoveToken[], at: number): TempoParts | undefined {
  const behind = tokens.findIndex(
    ({ kind, glued }, index) =>
      index >= at && ((index > at && !glued) || (kind !== 'number' && kind !== 'word')),
  );
  const next = behind === -1 ? tokens.length : behind;
  const text = tokens
    .slice(at, next)
    .map((token) => token.text)
    .join('');
  if (!/^[\dx]{3,4}$/.test(text)) return undefined;
  return { parts: Array.from(text, (part) => (part === 'x' ? 1 : Number(part))), next };
}

function tempoPart(tokens: readonly MoveToken[], at: number): Match<number> {
  return tokens[at]?.text === 'x' ? { value: 1, next: at + 1 } : wholeNumber(tokens, at);
}

const sets: MarkMatcher = (tokens, at) => {
  const rounds = wholeNumber(tokens, at);
  const x = rounds && anyPhrase(tokens, rounds.next, ['x', 'sets of']);
  const reps = x && wholeNumber(tokens, x.next);
  if (rounds === undefined || reps === undefined || hasUnit(tokens, reps.next)) return undefined;
  const word = anyPhrase(tokens, reps.next, ['reps', 'rep']);
  return { value: { kind: 'sets', rounds: rounds.value, reps: reps.value }, next: word?.next ?? reps.next };
};

const timesReps: MarkMatcher = (tokens, at) => {
  const x = phrase(tokens, at, 'x');
  const reps = x && wholeNumber(tokens, x.next);
  if (reps === undefined || hasUnit(tokens, reps.next)) return undefined;
  const word = anyPhrase(tokens, reps.next, ['reps', 'rep']);
  return { value: { kind: 'reps', reps: reps.value }, next: word?.next ?? reps.next };
};

const measure: MarkMatcher = (tokens, from) => {
  const at = pastCount(tokens, sign(tokens, from, '@')?.next ?? from);
  const token = tokens[at];
  if (token?.kind !== 'number') return undefined;
  const mass = phraseOf(tokens, at + 1, massUnits);
  if (mass !== undefined) {
    const weight: Weight = { kind: 'mass', amount: token.value, unit: mass.value };
    return { value: { kind: 'weight', weight }, next: mass.next };
  }
  const metres = anyPhrase(tokens, at + 1, metreWords);
  if (metres !== undefined) return { value: { kind: 'metres', metres: token.value }, next: metres.next };
  const reps = anyPhrase(tokens, at + 1, ['reps', 'rep']);
  return reps && { value: { kind: 'reps', reps: token.value }, next: reps.next };
};

/** In `2x10kg` and `2 x 10kg` the weight is that of each piece. */
function pastCount(tokens: readonly MoveToken[], at: number): number {
  const x = tokens[at]?.text === '2' ? phrase(tokens, at + 1, 'x') : undefined;
  const isWeight = x !== undefined && phraseOf(tokens, x.next + 1, massUnits) !== undefined;
  return x !== undefined && isWeight ? x.next : at;
}

const time: MarkMatcher = (tokens, at) => {
  const length = duration(tokens, at, 'seconds', 'metres');
  if (length === undefined || length.value.bare) return undefined;
  return { value: { kind: 'time', seconds: length.value.seconds }, next: length.next };
};

const number: MarkMatcher = (tokens, at) => {
  const token = tokens[at];
  return token?.kind === 'number'
    ? { value: { kind: 'number', value: token.value }, next: at + 1 }
    : undefined;
};

/** In the order tried: a longer form stands before the one it contains. */
const matchers: readonly MarkMatcher[] = [
  note,
  option,
  tempo,
  sides,
  feel,
  rpe,
  atSign,
  sets,
  timesReps,
  measure,
  time,
  number,
];

export function moveMarkAt(tokens: readonly MoveToken[], at: number): Match<MoveMark> {
  for (const matcher of matchers) {
    const found = matcher(tokens, at);
    if (found !== undefined) return found;
  }
  return undefined;
}
