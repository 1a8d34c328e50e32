import { DateTime } from 'luxon';
import { daysToNextWeek, type MonthDay, monthNames, nextMonthDay } from '../../calendar/days-meant.ts';
import { inZone, isCalendarDate } from '../../calendar/wall-time.ts';
import type { WallTime } from '../../plan/plan.ts';
import { anyPhrase, type Match, past, phrase, phraseOf, sign, wholeNumber } from '../matches.ts';
import type { Token } from '../tokens-of.ts';

/** A day and a time as typed; without a day the time stands alone. */
export type TypedMoment = { readonly day?: Day; readonly minutes: number };

type Day =
  | { readonly kind: 'weekday'; readonly weekday: number; readonly isNext?: true }
  | { readonly kind: 'in days'; readonly days: number }
  | DatedDay;

/** The next such day of the month, or a date; `weekday`: the one said with it. */
type DatedDay = { readonly weekday?: number } & (
  | { readonly kind: 'month day'; readonly monthDay: MonthDay }
  | { readonly kind: 'date'; readonly date: string }
);

const dayNames = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const days: ReadonlyMap<string, Day> = new Map<string, Day>([
  ...dayNames.flatMap((name, index) =>
    dayShorts(name).map((words) => [words, { kind: 'weekday', weekday: index + 1 }] as const),
  ),
  ['today', { kind: 'in days', days: 0 }],
  ['tonight', { kind: 'in days', days: 0 }],
  ['tomorrow', { kind: 'in days', days: 1 }],
]);

const months: ReadonlyMap<string, number> = new Map(
  monthNames.flatMap((names, place) => names.map((name) => [name, place + 1] as const)),
);

function dayShorts(name: string): readonly string[] {
  const shorts = [name, name.slice(0, 3)];
  return name === 'tuesday'
    ? [...shorts, 'tues']
    : name === 'thursday'
      ? [...shorts, 'thur', 'thurs']
      : shorts;
}

/** `Thu 18:30`, `Wed 21 Oct, 12:30`, `21.10. 6.30pm`, `tomorrow 6pm`, `18:30 Thu`, `2026-11-26 18:30`, or a time alone. */
export function momentAt(tokens: readonly Token[], at: number): Match<TypedMoment> {
  const day = dayAt(tokens, at);
  if (day !== undefined) {
    const from = past(tokens, sign(tokens, day.next, ',')?.next ?? day.next, 'at');
    const time = timeAt(tokens, from, true);
    return time && { value: { day: day.value, minutes: time.value }, next: time.next };
  }
  const time = timeAt(tokens, past(tokens, at, 'at'), false);
  if (time === undefined) return undefined;
  const behind = dayAt(tokens, past(tokens, time.next, 'on'));
  return behind === undefined
    ? { value: { minutes: time.value }, next: time.next }
    : { value: { day: behind.value, minutes: time.value }, next: behind.next };
}

function dayAt(tokens: readonly Token[], at: number): Match<Day> {
  const date = isoDateAt(tokens, at) ?? monthDayAt(tokens, at);
  if (date !== undefined) return date;
  const next = phrase(tokens, at, 'next');
  const found = phraseOf(tokens, next?.next ?? past(tokens, at, 'this'), days);
  if (found === undefined) return undefined;
  const behind = sign(tokens, found.next, '.')?.next ?? found.next;
  const { value } = found;
  if (value.kind !== 'weekday') return next === undefined ? { value, next: behind } : undefined;
  if (next !== undefined) return { value: { ...value, isNext: true }, next: behind };
  return dateBehindWeekday(tokens, behind, value.weekday) ?? { value, next: behind };
}

/** `21 Oct` or `2026-10-21` behind its weekday, with or without a comma. */
function dateBehindWeekday(tokens: readonly Token[], at: number, weekday: number): Match<Day> {
  const from = sign(tokens, at, ',')?.next ?? at;
  const date = isoDateAt(tokens, from) ?? monthDayAt(tokens, from);
  return date && { value: { ...date.value, weekday }, next: date.next };
}

function isoDateAt(tokens: readonly Token[], at: number): Match<DatedDay> {
  const parts = [0, 2, 4].map((place) => tokens[at + place]);
  const [year, month, day] = parts.map((token) => (token?.kind === 'number' ? token.text : undefined));
  if (year?.length !== 4 || month === undefined || day === undefined) return undefined;
  if (tokens[at + 1]?.text !== '-' || tokens[at + 3]?.text !== '-') return undefined;
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isCalendarDate(date) ? { value: { kind: 'date', date }, next: at + 5 } : undefined;
}

const ordinals = ['st', 'nd', 'rd', 'th'] as const;

/** `21 Oct`, `21. October`, `Oct 21`, `21.10.`; a year behind it makes it a date. */
function monthDayAt(tokens: readonly Token[], at: number): Match<DatedDay> {
  const numbered = /^(\d{1,2})\.(\d{1,2})$/.exec(tokens[at]?.text ?? '');
  if (numbered !== null) {
    const stop = sign(tokens, at + 1, '.');
    return stop && dayOfYear(Number(numbered[2]), Number(numbered[1]), tokens, stop.next);
  }
  const day = wholeNumber(tokens, at);
  const behind = day && anyPhrase(tokens, day.next, [...ordinals, '.']);
  const month = phraseOf(tokens, day === undefined ? at : (behind?.next ?? day.next), months);
  if (month === undefined) return undefined;
  const next = sign(tokens, month.next, '.')?.next ?? month.next;
  if (day !== undefined) return dayOfYear(month.value, day.value, tokens, next);
  const last = wholeNumber(tokens, next);
  return last && dayOfYear(month.value, last.value, tokens, past(tokens, last.next, ...ordinals));
}

/** A leap year has every day there is. */
const leapYear = 2024;

function dayOfYear(month: number, day: number, tokens: readonly Token[], next: number): Match<DatedDay> {
  const year = wholeNumber(tokens, next);
  const isYear = year !== undefined && /^\d{4}$/.test(tokens[next]?.text ?? '');
  const date = [isYear ? year.value : leapYear, month, day]
    .map((part) => String(part).padStart(2, '0'))
    .join('-');
  if (!isCalendarDate(date)) return undefined;
  return isYear
    ? { value: { kind: 'date', date }, next: year.next }
    : { value: { kind: 'month day', monthDay: { month, day } }, next };
}

/** Minutes from midnight. Behind a day `18.30` is a time too; a bare number needs am or pm. */
function timeAt(tokens: readonly Token[], at: number, behindDay: boolean): Match<number> {
  const token = tokens[at];
  if (token === undefined || (token.kind !== 'clock' && token.kind !== 'number')) return undefined;
  const [hourText = '', minuteText = '0'] = token.text.split(/[:.]/);
  const half = anyPhrase(tokens, at + 1, ['am', 'pm', 'a.m.', 'p.m.', 'a.m', 'p.m'] as const);
  const hours = Number(hourText);
  const minutes = Number(minuteText);
  if (anyPhrase(tokens, at + 1, ['h', 'hr', 'hrs', 'hour', 'hours']) !== undefined) return undefined;
  if (minutes > 59 || (minuteText.length !== 2 && minuteText !== '0')) return undefined;
  if (half !== undefined) {
    if (hours < 1 || hours > 12) return undefined;
    const afternoon = half.value.startsWith('p') ? 12 : 0;
    return { value: ((hours % 12) + afternoon) * 60 + minutes, next: half.next };
  }
  const clocked = token.kind === 'clock' || (behindDay && token.text.includes('.'));
  return clocked && hours <= 23 ? { value: hours * 60 + minutes, next: at + 1 } : undefined;
}

/** The next such moment after `now` in the zone; undefined where a day already named has passed. */
export function wallTimeOf(moment: TypedMoment, now: string, zone: string): WallTime | undefined {
  const here = inZone(now, zone);
  const { day, minutes } = moment;
  const onDay = (offset: number) =>
    here
      .startOf('day')
      .plus({ days: offset })
      .set({ hour: Math.floor(minutes / 60), minute: minutes % 60 });
  const wall = (date: string): WallTime => ({ date, time: clockOf(minutes) });
  const dateAfter = (offset: number) => here.startOf('day').plus({ days: offset }).toFormat('yyyy-MM-dd');
  if (day === undefined) return wall(dateAfter(onDay(0) > here ? 0 : 1));
  switch (day.kind) {
    case 'date':
    case 'month day': {
      const date = dateOf(day, here);
      return date === undefined ? undefined : wall(date);
    }
    case 'in days':
      return onDay(day.days) > here ? wall(dateAfter(day.days)) : undefined;
    case 'weekday': {
      if (day.isNext) return wall(dateAfter(daysToNextWeek(day.weekday - 1, here)));
      const ahead = (day.weekday - here.weekday + 7) % 7;
      return wall(dateAfter(onDay(ahead) > here ? ahead : ahead + 7));
    }
  }
}

/** The date that was said with another weekday than its own; undefined where they agree. */
export function dateOnOtherWeekday({ day }: TypedMoment, now: string, zone: string): string | undefined {
  if (day?.kind !== 'date' && day?.kind !== 'month day') return undefined;
  const date = dateOf(day, inZone(now, zone));
  if (date === undefined || day.weekday === undefined) return undefined;
  return DateTime.fromISO(date, { zone: 'utc' }).weekday === day.weekday ? undefined : date;
}

function dateOf(day: DatedDay, here: DateTime<true>): string | undefined {
  return day.kind === 'date' ? day.date : nextMonthDay(day.monthDay, here);
}

function clockOf(minutes: number): string {
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
