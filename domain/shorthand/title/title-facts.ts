import type { ClassLevel } from '../../plan/plan.ts';
import { primeAt } from '../durations.ts';
import { anyPhrase, type Match, phrase, wholeNumber } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import { momentAt, type TypedMoment } from './class-moment.ts';

/** One fact of the first line. `start` and `end` are places in the draft. */
export type TitleFact =
  | { readonly kind: 'slot'; readonly seconds: number }
  | { readonly kind: 'level'; readonly level: number }
  | { readonly kind: 'mixed' }
  | { readonly kind: 'people'; readonly people: number }
  | { readonly kind: 'focus' | 'aim'; readonly start: number; readonly end: number }
  | { readonly kind: 'beginners' | 'older adults' | 'hot room' }
  | { readonly kind: 'moment'; readonly moment: TypedMoment }
  | { readonly kind: 'room'; readonly room: string };

type FactMatcher = (tokens: readonly Token[], at: number) => Match<TitleFact>;

const hourWords = ['h', 'hr', 'hrs', 'hour', 'hours'];
const minuteWords = ['min', 'mins', 'minute', 'minutes', 'm'];

/** `45 min`, `45m`, `1h`, `1h 15`, `1:15 h`, `slot 45`. */
export const slotAt: FactMatcher = (tokens, at) => {
  const word = phrase(tokens, at, 'slot');
  const from = word?.next ?? at;
  const token = tokens[from];
  if (token?.kind === 'clock') {
    const hours = anyPhrase(tokens, from + 1, hourWords);
    return hours && slot(token.value, hours.next);
  }
  if (token?.kind !== 'number') return undefined;
  const prime = primeAt(tokens, from + 1);
  if (prime?.value === 60) return slot(token.value, prime.next);
  const minutes = anyPhrase(tokens, from + 1, minuteWords);
  if (minutes !== undefined) return slot(token.value, minutes.next);
  const hours = anyPhrase(tokens, from + 1, hourWords);
  if (hours === undefined) return word && slot(token.value, from + 1);
  const more = wholeNumber(tokens, hours.next);
  const unit = more && anyPhrase(tokens, more.next, minuteWords);
  const hasMore = more !== undefined && more.value < 60 && (unit !== undefined || tokens[hours.next]?.glued);
  return slot(
    token.value * 60 + (hasMore ? more.value : 0),
    hasMore ? (unit?.next ?? more.next) : hours.next,
  );
};

function slot(minutes: number, next: number): Match<TitleFact> {
  return { value: { kind: 'slot', seconds: Math.round(minutes * 60) }, next };
}

export const levelAt: FactMatcher = (tokens, at) => {
  const mixed = anyPhrase(tokens, at, ['mixed level', 'mixed levels', 'level mixed', 'mixed']);
  if (mixed !== undefined) return { value: { kind: 'mixed' }, next: mixed.next };
  const word = anyPhrase(tokens, at, ['level', 'lvl', 'l']);
  const number = word && wholeNumber(tokens, word.next);
  if (word === undefined || number === undefined) return undefined;
  if (word.value === 'l' && tokens[word.next]?.glued !== true) return undefined;
  return { value: { kind: 'level', level: number.value }, next: number.next };
};

const peopleAt: FactMatcher = (tokens, at) => {
  const number = wholeNumber(tokens, at);
  const word = number && anyPhrase(tokens, number.next, ['people', 'ppl', 'person', 'persons']);
  return number && word && { value: { kind: 'people', people: number.value }, next: word.next };
};

const toComma: FactMatcher = (tokens, at) => {
  const word = anyPhrase(tokens, at, ['focus', 'aim'] as const);
  const from = word && tokens[word.next]?.text === ':' ? word.next + 1 : word?.next;
  if (word === undefined || from === undefined) return undefined;
  const comma = tokens.findIndex((token, index) => index >= from && token.text === ',');
  const until = comma === -1 ? tokens.length : comma;
  const [first, last] = [tokens[from], tokens[until - 1]];
  if (first === undefined || last === undefined || until <= from) return undefined;
  return { value: { kind: word.value, start: first.start, end: last.end }, next: until };
};

const crowd: FactMatcher = (tokens, at) => {
  const found = anyPhrase(tokens, at, [
    'beginners',
    'beginner',
    'older adults',
    'older adult',
    'hot room',
  ] as const);
  if (found === undefined) return undefined;
  const kind = found.value.startsWith('b')
    ? 'beginners'
    : found.value.startsWith('o')
      ? 'older adults'
      : 'hot room';
  return { value: { kind }, next: found.next };
};

const moment: FactMatcher = (tokens, at) => {
  const found = momentAt(tokens, at);
  return found && { value: { kind: 'moment', moment: found.value }, next: found.next };
};

function roomIn(rooms: readonly string[]): FactMatcher {
  return (tokens, at) => {
    const from = anyPhrase(tokens, at, ['in', 'room'])?.next ?? at;
    for (const start of [at, from]) {
      const found = anyPhrase(
        tokens,
        start,
        rooms.map((room) => room.toLowerCase()),
      );
      const room = found && rooms.find((name) => name.toLowerCase() === found.value);
      if (found !== undefined && room !== undefined)
        return { value: { kind: 'room', room }, next: found.next };
    }
    return undefined;
  };
}

/** The first fact that stands here, of a studio with these rooms. */
export function titleFactAt(rooms: readonly string[]): FactMatcher {
  const matchers: readonly FactMatcher[] = [roomIn(rooms), slotAt, levelAt, peopleAt, toComma, crowd, moment];
  return (tokens, at) => {
    for (const matcher of matchers) {
      const found = matcher(tokens, at);
      if (found !== undefined) return found;
    }
    return undefined;
  };
}

export function levelOf(level: number): ClassLevel | undefined {
  return level === 1 || level === 2 || level === 3 ? level : undefined;
}
