import { type ClassWhen, dayPattern, readWhen, whenPattern } from './read-when.ts';
import type { PersonId } from './scheduled-class.ts';

/** What someone says about the timetable; the days of a holiday are both included. */
export type ClassRequest =
  | { readonly kind: 'cannot teach'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'cancel'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'on again'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'move'; readonly when: ClassWhen; readonly said: string; readonly to?: ClassWhen }
  | { readonly kind: 'give'; readonly when: ClassWhen; readonly said: string; readonly to: PersonId }
  | { readonly kind: 'holiday'; readonly from: ClassWhen; readonly to?: ClassWhen }
  | { readonly kind: 'people now'; readonly people: number }
  | { readonly kind: 'calendar'; readonly renew: boolean };

const cannot = new RegExp(
  `^(?:i\\s+)?(?:can['’]?t|cannot|can not|unable to)\\s+(?:teach|make|do|take)\\s*(?:it|my class|the class)?[\\s,]*(${whenPattern})$`,
  'i',
);
const cover = new RegExp(`^(?:cover|cover me)(?:\\s+(?:for|on))?[\\s,]*(${whenPattern})$`, 'i');
const cancel = new RegExp(`^cancel(?:\\s+class)?[\\s,]*(${whenPattern})$`, 'i');
const again = new RegExp(`^on again[\\s,]*(${whenPattern})$`, 'i');
const move = new RegExp(`^move(?:\\s+(${whenPattern}))?(?:\\s+to\\s+(${whenPattern}))?$`, 'i');
const give = new RegExp(
  `^(?:give|hand over)(?:\\s+(${whenPattern}))?\\s+to\\s+<@([UW][A-Z0-9]+)(?:\\|[^>]*)?>$`,
  'i',
);
const holiday = new RegExp(`^holiday\\s+(${dayPattern})(?:\\s*(?:to|until|-|–)\\s*(${dayPattern}))?$`, 'i');
const peopleNow = /^(\d{1,3})(?:\s+people)?\s+now$/i;

/** Undefined where the words are no request about the timetable. */
export function readClassRequest(text: string): ClassRequest | undefined {
  const said = text.trim();
  // The full stop of `21.10.` is part of the day, another one ends the sentence.
  return readRequest(said) ?? readRequest(said.replace(/[.!]+$/, ''));
}

function readRequest(said: string): ClassRequest | undefined {
  const now = peopleNow.exec(said);
  if (now !== null) {
    const people = Number(now[1]);
    return people > 0 ? { kind: 'people now', people } : undefined;
  }
  const feed = /^calendar(?:\s+(new))?$/i.exec(said);
  if (feed !== null) return { kind: 'calendar', renew: feed[1] !== undefined };
  const closed = holiday.exec(said);
  if (closed !== null) {
    const from = readWhen(closed[1] ?? '');
    const to = closed[2] === undefined ? undefined : readWhen(closed[2]);
    if (from === undefined || (closed[2] !== undefined && to === undefined)) return undefined;
    return { kind: 'holiday', from, ...(to === undefined ? {} : { to }) };
  }
  const given = give.exec(said);
  if (given !== null) {
    const [, when = '', to = ''] = given;
    const read = readWhen(when);
    return read && { kind: 'give', when: read, said, to: to.toUpperCase() };
  }
  const moved = move.exec(said);
  if (moved !== null) {
    const when = readWhen(moved[1] ?? '');
    const to = moved[2] === undefined ? undefined : readWhen(moved[2]);
    return when && { kind: 'move', when, said, ...(to === undefined ? {} : { to }) };
  }
  for (const [kind, pattern] of [
    ['cannot teach', cannot],
    ['cannot teach', cover],
    ['cancel', cancel],
    ['on again', again],
  ] as const) {
    const found = pattern.exec(said);
    const when = found === null ? undefined : readWhen(found[1] ?? '');
    if (when !== undefined) return { kind, when, said };
  }
  return undefined;
}
