import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';

/** The classes of the running week and those around it, in order of week. */
export async function classesAround(
  desk: Desk,
  weeks: readonly number[],
): Promise<readonly ScheduledClass[]> {
  const week = isoWeekOf(desk.now, desk.settings.zone);
  const found: ScheduledClass[] = [];
  for (const offset of weeks) found.push(...(await classesInWeek(desk, weekAfter(week, offset))));
  return found;
}
