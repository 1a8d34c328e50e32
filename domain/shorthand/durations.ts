import { anyPhrase, type Match, type Readable, sign } from './matches.ts';

/** A length as typed: `bare` where no unit stood beside the number. */
export type Duration = { readonly seconds: number; readonly bare: boolean; readonly number: number };

const secondWords = ['s', 'sec', 'secs', 'second', 'seconds'];
const minuteWords = ['min', 'mins', 'minute', 'minutes'];

/**
 * `1:30`, `:40`, `90s`, `5 min`, `5'`, `30"`, `1 min 30`, or a bare number in `bareUnit`. `m` is a minute unless
 * `metres` are meant by it.
 */
export function duration(
  tokens: readonly Readable[],
  at: number,
  bareUnit: 'seconds' | 'minutes',
  m: 'minutes' | 'metres' = 'minutes',
): Match<Duration> {
  const minutes = m === 'minutes' ? [...minuteWords, 'm'] : minuteWords;
  const token = tokens[at];
  if (token?.kind === 'clock') {
    const unit = anyPhrase(tokens, at + 1, minutes);
    return { value: { seconds: token.value, bare: false, number: token.value }, next: unit?.next ?? at + 1 };
  }
  if (token?.text === ':' && tokens[at + 1]?.kind === 'number' && tokens[at + 1]?.glued) {
    const value = tokens[at + 1]?.value ?? 0;
    return { value: { seconds: value, bare: false, number: value }, next: at + 2 };
  }
  if (token?.kind !== 'number') return undefined;
  const prime = primeAt(tokens, at + 1);
  if (prime !== undefined) return whole(token.value * prime.value, token.value, false, prime.next);
  const seconds = anyPhrase(tokens, at + 1, secondWords);
  if (seconds !== undefined) return whole(token.value, token.value, false, seconds.next);
  const minute = anyPhrase(tokens, at + 1, minutes);
  if (minute !== undefined) {
    const rest = secondsBehindMinutes(tokens, minute.next);
    return whole(token.value * 60 + (rest?.value ?? 0), token.value, false, rest?.next ?? minute.next);
  }
  return whole(token.value * (bareUnit === 'minutes' ? 60 : 1), token.value, true, at + 1);
}

/** `'` or `"` right behind a number, with the seconds of its unit; in `2's` it is neither. */
export function primeAt(tokens: readonly Readable[], at: number): Match<60 | 1> {
  const mark = tokens[at];
  const goesOn = tokens[at + 1]?.glued === true && tokens[at + 1]?.kind === 'word';
  if (mark === undefined || !mark.glued || goesOn) return undefined;
  if (mark.text === "'") return { value: 60, next: at + 1 };
  return mark.text === '"' ? { value: 1, next: at + 1 } : undefined;
}

function secondsBehindMinutes(tokens: readonly Readable[], at: number): Match<number> {
  const token = tokens[at];
  if (token?.kind !== 'number' || token.value >= 60) return undefined;
  const unit = anyPhrase(tokens, at + 1, secondWords);
  if (unit !== undefined) return { value: token.value, next: unit.next };
  return token.glued ? { value: token.value, next: at + 1 } : undefined;
}

function whole(seconds: number, number: number, bare: boolean, next: number): Match<Duration> {
  const rounded = Math.round(seconds);
  return Math.abs(rounded - seconds) < 1e-6 ? { value: { seconds: rounded, bare, number }, next } : undefined;
}

/** Several lengths behind one another, with or without commas: `20 30 40`. */
export function durations(tokens: readonly Readable[], at: number): Match<readonly number[]> {
  const first = duration(tokens, at, 'seconds');
  if (first === undefined) return undefined;
  const values = [first.value.seconds];
  let next = first.next;
  for (;;) {
    const from = sign(tokens, next, ',')?.next ?? next;
    const more = duration(tokens, from, 'seconds');
    if (more === undefined || startsSomethingElse(tokens, more.next)) break;
    values.push(more.value.seconds);
    next = more.next;
  }
  return { value: values, next };
}

/** A number before `/`, `x` or a word that owns it is no further value of a list; one before the next list is. */
function startsSomethingElse(tokens: readonly Readable[], next: number): boolean {
  const text = tokens[next]?.text;
  if ((text === 'work' || text === 'rest') && duration(tokens, next + 1, 'seconds') !== undefined)
    return false;
  return text === '/' || text === 'x' || (tokens[next]?.kind === 'word' && listEnds.has(text ?? ''));
}

const listEnds = new Set([
  'rounds',
  'round',
  'sets',
  'set',
  'each',
  'a',
  'people',
  'per',
  'on',
  'off',
  'work',
  'rest',
  'of',
  'between',
]);
