import { classesOfWeek, occurrencesOfWeek } from '../../domain/calendar/classes-of-week.ts';
import { boundsOfWeek, type IsoWeek, isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { isCalendarDate, zonedMoment } from '../../domain/calendar/wall-time.ts';
import type { Desk } from '../handling.ts';

/** The classes of a week: as saved, with their exceptions, and the rest as the timetable gives it. */
export async function classesInWeek(desk: Desk, week: IsoWeek): Promise<readonly ScheduledClass[]> {
  const { stores, studioId, settings } = desk;
  const { from, to } = boundsOfWeek(week, settings.zone);
  const starting = await stores.classes.listBetween(studioId, from, to);
  const known = new Set(starting.map(({ id }) => id));
  const elsewhere: ScheduledClass[] = [];
  for (const { id } of occurrencesOfWeek(week, settings)) {
    const saved = known.has(id) ? undefined : await stores.classes.find(studioId, id);
    if (saved !== undefined) elsewhere.push(saved);
  }
  return classesOfWeek(week, settings, [...starting, ...elsewhere]);
}

/** A class by id: as saved, or as the timetable gives it where nothing about it was saved yet. */
export async function findClass(desk: Desk, classId: string): Promise<ScheduledClass | undefined> {
  const saved = await desk.stores.classes.find(desk.studioId, classId);
  if (saved !== undefined) return saved;
  const date = /:(\d{4}-\d{2}-\d{2})$/.exec(classId)?.[1];
  if (date === undefined || !isCalendarDate(date)) return undefined;
  const { instant } = zonedMoment({ date, time: '12:00' }, desk.settings.zone);
  const week = isoWeekOf(instant, desk.settings.zone);
  return occurrencesOfWeek(week, desk.settings).find(({ id }) => id === classId);
}
