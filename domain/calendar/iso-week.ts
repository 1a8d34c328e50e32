import { DateTime } from 'luxon';
import type { Weekday } from '../settings.ts';
import { instantOf, inZone } from './wall-time.ts';

/** An ISO 8601 week, Monday to Sunday: `2026-W47`. */
export type IsoWeek = string;

export const weekdays = [
  'Mon',
  'Tue',
  'Wed',
  'Thu',
  'Fri',
  'Sat',
  'Sun',
] as const satisfies readonly Weekday[];

/** The week in which an instant falls in a zone. */
export function isoWeekOf(instant: string, zone: string): IsoWeek {
  return inZone(instant, zone).toFormat("kkkk-'W'WW");
}

/** Whether a year has this week: `2025-W53` is none. */
export function isKnownWeek(week: string): boolean {
  return /^\d{4}-W\d{2}$/.test(week) && DateTime.fromISO(`${week}-1`, { zone: 'utc' }).isValid;
}

/** The seven dates of a week, `YYYY-MM-DD`, Monday first. Throws a RangeError where there is no such week. */
export function datesOfWeek(week: IsoWeek): readonly string[] {
  const monday = DateTime.fromISO(`${week}-1`, { zone: 'utc' });
  if (!monday.isValid) throw new RangeError(`no such week: "${week}"`);
  return weekdays.map((_, days) => monday.plus({ days }).toFormat('yyyy-MM-dd'));
}

/** The week `weeks` later; negative for earlier. */
export function weekAfter(week: IsoWeek, weeks = 1): IsoWeek {
  return DateTime.fromISO(`${week}-1`, { zone: 'utc' }).plus({ weeks }).toFormat("kkkk-'W'WW");
}

/** The instants at which a week starts and ends in a zone: [from, to). */
export function boundsOfWeek(week: IsoWeek, zone: string): { readonly from: string; readonly to: string } {
  return { from: startOf(week, zone), to: startOf(weekAfter(week), zone) };
}

function startOf(week: IsoWeek, zone: string): string {
  const [monday = ''] = datesOfWeek(week);
  return instantOf({ date: monday, time: '00:00', zone });
}
