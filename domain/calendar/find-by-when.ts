import type { Settings } from '../settings.ts';
import { datesMeant } from './days-meant.ts';
import { weekdays } from './iso-week.ts';
import type { ClassWhen } from './read-when.ts';
import type { ScheduledClass, ZonedMoment } from './scheduled-class.ts';
import { inZone, wallTimeOf, zonedMoment } from './wall-time.ts';

/**
 * The classes meant, in order of start: those of the first day that has any, of two days where the words fit
 * both: `next Thu`, or `Thu` without a time said on a Thursday.
 */
export function findByWhen(
  classes: readonly ScheduledClass[],
  when: ClassWhen,
  now: string,
  zone: string,
): readonly ScheduledClass[] {
  const dates = datesMeant(when, now, zone);
  const dayOf = ({ startsAt }: ScheduledClass) => wallTimeOf(startsAt.instant, zone).date;
  const fitting = classes
    .filter(({ startsAt }) => startsAt.instant > now && fits(startsAt, when, dates, zone))
    .toSorted((a, b) => Date.parse(a.startsAt.instant) - Date.parse(b.startsAt.instant));
  if (dates !== undefined) return fitting;
  const [first, second] = [...new Set(fitting.map(dayOf))];
  const isUnclear =
    first === wallTimeOf(now, zone).date && when.weekday !== undefined && when.time === undefined;
  return fitting.filter((one) => dayOf(one) === first || (isUnclear && dayOf(one) === second));
}

/**
 * The moments a class may move to: what is not said stays, a weekday is the next such day after `now`. Two where
 * the day is not clear, none where there is no such day.
 */
export function movedTo(
  from: ZonedMoment,
  to: ClassWhen,
  now: string,
  { zone }: Pick<Settings, 'zone'>,
): readonly ZonedMoment[] {
  const time = to.time ?? from.time;
  const on = (date: string) => zonedMoment({ date, time }, zone);
  const dates = datesMeant(to, now, zone);
  if (dates !== undefined) return dates.map(on);
  if (to.weekday === undefined) return [on(from.date)];
  const today = inZone(now, zone);
  const ahead = (weekdays.indexOf(to.weekday) + 1 - today.weekday + 7) % 7;
  const first = on(today.plus({ days: ahead }).toFormat('yyyy-MM-dd'));
  return [first.instant <= now ? on(today.plus({ days: ahead + 7 }).toFormat('yyyy-MM-dd')) : first];
}

/**
 * The days of a holiday, `YYYY-MM-DD`, both included; the last is looked for from the first on. Undefined where
 * one of them is none, or may be two.
 */
export function holidayDays(
  { from, to }: { readonly from: ClassWhen; readonly to?: ClassWhen },
  now: string,
  zone: string,
): { readonly from: string; readonly to: string } | undefined {
  const first = onlyDay(from, now, zone);
  if (first === undefined) return undefined;
  if (to === undefined) return { from: first, to: first };
  const since = to.inDays === undefined ? zonedMoment({ date: first, time: '00:00' }, zone).instant : now;
  const last = onlyDay(to, since, zone);
  return last === undefined || last < first ? undefined : { from: first, to: last };
}

function onlyDay(said: ClassWhen, now: string, zone: string): string | undefined {
  const [only, other] = datesMeant({ which: 'this', ...said }, now, zone) ?? [];
  return other === undefined ? only : undefined;
}

function fits(
  { instant }: ZonedMoment,
  when: ClassWhen,
  dates: readonly string[] | undefined,
  zone: string,
): boolean {
  const { date, time } = wallTimeOf(instant, zone);
  if (when.time !== undefined && when.time !== time) return false;
  if (dates !== undefined) return dates.includes(date);
  return when.weekday === undefined || when.weekday === weekdays[inZone(instant, zone).weekday - 1];
}
