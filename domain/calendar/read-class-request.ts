import type { Weekday } from '../settings.ts';
import { weekdays } from './iso-week.ts';
import type { PersonId } from './scheduled-class.ts';
import { isCalendarDate } from './wall-time.ts';

/** Which class is meant: a day, a time, or both; nothing where neither was said. */
export type ClassWhen = {
  readonly weekday?: Weekday;
  /** `YYYY-MM-DD`. */
  readonly date?: string;
  /** Days from today. */
  readonly inDays?: number;
  /** `HH:MM`. */
  readonly time?: string;
};

/** What someone says about the timetable. Dates `YYYY-MM-DD`, both ends included. */
export type ClassRequest =
  | { readonly kind: 'cannot teach'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'cancel'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'on again'; readonly when: ClassWhen; readonly said: string }
  | { readonly kind: 'move'; readonly when: ClassWhen; readonly said: string; readonly to?: ClassWhen }
  | { readonly kind: 'give'; readonly when: ClassWhen; readonly said: string; readonly to: PersonId }
  | { readonly kind: 'holiday'; readonly from: string; readonly to: string }
  | { readonly kind: 'people now'; readonly people: number }
  | { readonly kind: 'calendar'; readonly renew: boolean };

const dayPattern =
  '(?:(?:on|this|next)\\s+)?(?:today|tonight|tomorrow|mon(?:day)?|tue(?:sday|s)?|wed(?:nesday)?|thu(?:rsday|rs|r)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?|\\d{4}-\\d{2}-\\d{2})';
const timePattern = '(?:at\\s+)?\\d{1,2}(?:[:.]\\d{2})?\\s*(?:am|pm)?';
const whenPattern = `(?:${dayPattern})?[\\s,]*(?:${timePattern})?`;

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
const holiday = /^holiday\s+(\d{4}-\d{2}-\d{2})(?:\s*(?:to|-|–)\s*(\d{4}-\d{2}-\d{2}))?$/i;
const peopleNow = /^(\d{1,3})(?:\s+people)?\s+now$/i;

/** Undefined where the words are no request about the timetable. */
export function readClassRequest(text: string): ClassRequest | undefined {
  const said = text.trim().replace(/[.!]+$/, '');
  const now = peopleNow.exec(said);
  if (now !== null) {
    const people = Number(now[1]);
    return people > 0 ? { kind: 'people now', people } : undefined;
  }
  const feed = /^calendar(?:\s+(new))?$/i.exec(said);
  if (feed !== null) return { kind: 'calendar', renew: feed[1] !== undefined };
  const closed = holiday.exec(said);
  if (closed !== null) {
    const [, from = '', to = from] = closed;
    return isCalendarDate(from) && isCalendarDate(to) && from <= to
      ? { kind: 'holiday', from, to }
      : undefined;
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

/** `Thu 18:30`, `Thursday`, `tomorrow 6pm`, `2026-10-15`, `18:30`; nothing at all reads as no wish. */
export function readWhen(text: string): ClassWhen | undefined {
  const words = text.trim().toLowerCase();
  const day = new RegExp(`^${dayPattern}`, 'i').exec(words)?.[0];
  const rest = words.slice(day?.length ?? 0).replace(/^[\s,]+/, '');
  const time = rest === '' ? undefined : readTime(rest.replace(/^at\s+/, ''));
  if (rest !== '' && time === undefined) return undefined;
  const bare = day?.replace(/^(?:on|this|next)\s+/, '');
  const named = bare === undefined ? {} : readDay(bare);
  if (named === undefined) return undefined;
  return { ...named, ...(time === undefined ? {} : { time }) };
}

function readDay(day: string): ClassWhen | undefined {
  if (day === 'today' || day === 'tonight') return { inDays: 0 };
  if (day === 'tomorrow') return { inDays: 1 };
  if (/^\d/.test(day)) return isCalendarDate(day) ? { date: day } : undefined;
  const weekday = weekdays.find((each) => day.startsWith(each.toLowerCase()));
  return weekday === undefined ? undefined : { weekday };
}

function readTime(text: string): string | undefined {
  const [, hourText = '', minuteText = '00', half] =
    /^(\d{1,2})(?:[:.](\d{2}))?\s*(am|pm)?$/.exec(text) ?? [];
  const hours = Number(hourText);
  if (hourText === '' || Number(minuteText) > 59) return undefined;
  if (half === undefined) {
    const isClock = /[:.]/.test(text) && hours < 24;
    return isClock ? `${String(hours).padStart(2, '0')}:${minuteText}` : undefined;
  }
  if (hours < 1 || hours > 12) return undefined;
  const whole = (hours % 12) + (half === 'pm' ? 12 : 0);
  return `${String(whole).padStart(2, '0')}:${minuteText}`;
}
