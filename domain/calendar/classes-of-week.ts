import type { Settings, WeeklySlot } from '../settings.ts';
import { boundsOfWeek, datesOfWeek, type IsoWeek, weekdays } from './iso-week.ts';
import type { ClassId, ScheduledClass } from './scheduled-class.ts';
import { zonedMoment } from './wall-time.ts';

/** The id of a weekly slot's class on a date, the date the timetable gives it; it stays when the class moves. */
export function occurrenceId(slotId: string, date: string): ClassId {
  return `${slotId}:${date}`;
}

/**
 * The classes the timetable gives for a week, in order of start. A slot without an instructor has no class
 * yet.
 */
export function occurrencesOfWeek(week: IsoWeek, settings: Settings): readonly ScheduledClass[] {
  const dates = datesOfWeek(week);
  return inOrder(
    settings.slots.flatMap((slot) => {
      const date = dates[weekdays.indexOf(slot.weekday)];
      return date === undefined || slot.instructorId === undefined
        ? []
        : [occurrence(slot, slot.instructorId, date, settings.zone)];
    }),
  );
}

/**
 * The classes of a week: what was saved stands, with its exceptions (moved, cancelled, another instructor);
 * the rest is as the timetable gives it. `saved` holds what starts in the week and what has the id of one of
 * its occurrences.
 */
export function classesOfWeek(
  week: IsoWeek,
  settings: Settings,
  saved: readonly ScheduledClass[],
): readonly ScheduledClass[] {
  const known = new Set(saved.map(({ id }) => id));
  const { from, to } = boundsOfWeek(week, settings.zone);
  const untouched = occurrencesOfWeek(week, settings).filter(({ id }) => !known.has(id));
  return inOrder([...saved, ...untouched]).filter(
    ({ startsAt: { instant } }) => from <= instant && instant < to,
  );
}

function occurrence(slot: WeeklySlot, instructorId: string, date: string, zone: string): ScheduledClass {
  return {
    id: occurrenceId(slot.id, date),
    slotId: slot.id,
    title: slot.name,
    startsAt: zonedMoment({ date, time: slot.time }, zone),
    slotSeconds: slot.seconds,
    ...(slot.room === undefined ? {} : { room: slot.room }),
    instructorId,
    ...(slot.people === undefined ? {} : { people: slot.people }),
    state: 'planned',
  };
}

function inOrder(classes: readonly ScheduledClass[]): readonly ScheduledClass[] {
  return classes.toSorted(
    (a, b) => Date.parse(a.startsAt.instant) - Date.parse(b.startsAt.instant) || a.id.localeCompare(b.id),
  );
}
