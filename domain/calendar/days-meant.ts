import type { DateTime } from 'luxon';
import type { Weekday } from '../settings.ts';
import { weekdays } from './iso-week.ts';
import { inZone, isCalendarDate } from './wall-time.ts';

/** A day of the month without its year. */
export type MonthDay = { readonly month: number; readonly day: number };

/** A day as people say it; nothing where none was said. */
export type DaySaid = {
  readonly weekday?: Weekday;
  /** `next Thu` may mean two days; `this Thu` one. */
  readonly which?: 'this' | 'next';
  readonly monthDay?: MonthDay;
  /** `YYYY-MM-DD`. */
  readonly date?: string;
  /** Days from today. */
  readonly inDays?: number;
};

/** Names of months and their shorts, lower case; the place in the list is the month less one. */
export const monthNames = [
  ['january', 'jan'],
  ['february', 'feb'],
  ['march', 'mar'],
  ['april', 'apr'],
  ['may'],
  ['june', 'jun'],
  ['july', 'jul'],
  ['august', 'aug'],
  ['september', 'sept', 'sep'],
  ['october', 'oct'],
  ['november', 'nov'],
  ['december', 'dec'],
] as const;

/**
 * The dates a day may mean, `YYYY-MM-DD`, first to come first: none where there is no such day, two where it is
 * not clear. A weekday that was said alone is not among them: it means the first such day that has what is
 * looked for, and is `undefined` here, as is no day at all.
 */
export function datesMeant(said: DaySaid, now: string, zone: string): readonly string[] | undefined {
  const today = inZone(now, zone);
  const { weekday, which, inDays } = said;
  if (inDays !== undefined) return [dateOf(today.plus({ days: inDays }))];
  const date = said.date ?? (said.monthDay === undefined ? undefined : nextMonthDay(said.monthDay, today));
  if (said.date !== undefined || said.monthDay !== undefined)
    return date !== undefined && (weekday === undefined || weekdayOf(date) === weekday) ? [date] : [];
  if (weekday === undefined || which === undefined) return undefined;
  const place = weekdays.indexOf(weekday);
  const ahead = (place + 1 - today.weekday + 7) % 7;
  if (which === 'this') return [dateOf(today.plus({ days: ahead }))];
  return [...new Set([ahead === 0 ? 7 : ahead, daysToNextWeek(place, today)])].map((days) =>
    dateOf(today.plus({ days })),
  );
}

/** The first such day from `today` on; undefined for one that no year has. */
export function nextMonthDay({ month, day }: MonthDay, today: DateTime<true>): string | undefined {
  // A leap day comes at the latest after eight years: 2096, 2104.
  const years = Array.from({ length: 9 }, (_, later) => today.year + later);
  return years
    .map((year) => `${year}-${twoDigits(month)}-${twoDigits(day)}`)
    .find((date) => isCalendarDate(date) && date >= dateOf(today));
}

/** Days to a weekday of the week after this one, Monday 0. */
export function daysToNextWeek(place: number, today: DateTime<true>): number {
  return 8 - today.weekday + place;
}

/** `Wed 21 Oct 2026`: read back as that day at any time. */
export function printDay(date: string): string {
  const { year, month, day } = inZone(`${date}T12:00:00.000Z`, 'utc');
  const name = monthNames[month - 1]?.[0] ?? '';
  return `${weekdayOf(date)} ${day} ${name.slice(0, 1).toUpperCase()}${name.slice(1, 3)} ${year}`;
}

function weekdayOf(date: string): Weekday | undefined {
  return weekdays[inZone(`${date}T12:00:00.000Z`, 'utc').weekday - 1];
}

function dateOf(day: DateTime<true>): string {
  return day.toFormat('yyyy-MM-dd');
}

function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}
