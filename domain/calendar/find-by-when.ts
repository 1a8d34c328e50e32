import type { Settings } from '../settings.ts';
import { weekdays } from './iso-week.ts';
import type { ClassWhen } from './read-class-request.ts';
import type { ScheduledClass, ZonedMoment } from './scheduled-class.ts';
import { instantAfter, inZone, wallTimeOf, zonedMoment } from './wall-time.ts';

/**
 * The classes meant, in order of start: those of the first day that has any.
 */
export function findByWhen(
  classes: readonly ScheduledClass[],
  when: ClassWhen,
  now: string,
  zone: string,
): readonly ScheduledClass[] {
  const fitting = classes
    .filter(({ startsAt }) => startsAt.instant > now && fits(startsAt, when, now, zone))
    .toSorted((a, b) => Date.parse(a.startsAt.instant) - Date.parse(b.startsAt.instant));
  const [first] = fitting;
  if (first === undefined) return [];
  const dayOf = (one: ScheduledClass) => wallTimeOf(one.startsAt.instant, zone).date;
  return fitting.filter((one) => dayOf(one) === dayOf(first));
}

/** The moment a class moves to: what is not said stays, a weekday is the next such day after `now`. */
export function movedTo(
  from: ZonedMoment,
  to: ClassWhen,
  now: string,
  { zone }: Pick<Settings, 'zone'>,
): ZonedMoment {
  const time = to.time ?? from.time;
  if (to.date !== undefined) return zonedMoment({ date: to.date, time }, zone);
  if (to.weekday === undefined && to.inDays === undefined)
    return zonedMoment({ date: from.date, time }, zone);
  const today = inZone(now, zone);
  const ahead = to.inDays ?? (weekdays.indexOf(to.weekday ?? 'Mon') + 1 - today.weekday + 7) % 7;
  const on = (days: number) => zonedMoment({ date: today.plus({ days }).toFormat('yyyy-MM-dd'), time }, zone);
  const first = on(ahead);
  return to.inDays === undefined && first.instant <= now ? on(ahead + 7) : first;
}

function fits({ instant }: ZonedMoment, when: ClassWhen, now: string, zone: string): boolean {
  const { date, time } = wallTimeOf(instant, zone);
  const weekday = weekdays[inZone(instant, zone).weekday - 1];
  const inDays =
    when.inDays === undefined ? undefined : wallTimeOf(instantAfter(now, when.inDays * 86_400), zone).date;
  return (
    (when.time === undefined || when.time === time) &&
    (when.date === undefined || when.date === date) &&
    (when.weekday === undefined || when.weekday === weekday) &&
    (inDays === undefined || inDays === date)
  );
}
