import { isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk } from '../handling.ts';
import { weeksAhead } from './change-class.ts';
import { classesAround } from './classes-around.ts';

/** A person's next class that has no plan yet, in that room where one is wanted. */
export async function nextSlotWithoutPlan(
  desk: Desk,
  personId: string,
  room: string | undefined,
): Promise<ScheduledClass | undefined> {
  return (await classesAround(desk, weeksAhead))
    .filter(
      (each) =>
        each.instructorId === personId &&
        each.planId === undefined &&
        isOn(each) &&
        each.startsAt.instant > desk.now &&
        (room === undefined || each.room === room),
    )
    .toSorted((a, b) => a.startsAt.instant.localeCompare(b.startsAt.instant))[0];
}
