import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import { endOf } from '../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../domain/calendar/scheduled-class.ts';

/** A class as a calendar shows it. */
export type CalendarClass = {
  readonly scheduled: ScheduledClass;
  /** Counts the changes of what a calendar shows; never less than before. */
  readonly sequence: number;
  readonly summary: string;
  readonly description: string;
};

export type CalendarFacts = {
  readonly studioId: string;
  readonly name: string;
  readonly now: string;
  readonly classes: readonly CalendarClass[];
};

/**
 * The timetable as a calendar (RFC 5545). A class keeps its UID through moves, cover and cancellation. Times
 * are in UTC, so that no reader's zone rules matter.
 */
export function printCalendar({ studioId, name, now, classes }: CalendarFacts): string {
  const calendar = ical({
    name,
    prodId: { company: 'Evenset', product: 'Evenset timetable', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
    ttl: 900,
  });
  for (const { scheduled, sequence, summary, description } of classes) {
    const cancelled = scheduled.state === 'cancelled' || scheduled.state === 'not taught';
    calendar.createEvent({
      id: `${scheduled.id}@${studioId}.evenset`,
      sequence,
      stamp: new Date(now),
      start: new Date(scheduled.startsAt.instant),
      end: new Date(endOf(scheduled)),
      summary,
      description,
      ...(scheduled.room === undefined ? {} : { location: scheduled.room }),
      status: cancelled
        ? ICalEventStatus.CANCELLED
        : scheduled.coverOpen === true
          ? ICalEventStatus.TENTATIVE
          : ICalEventStatus.CONFIRMED,
    });
  }
  return calendar.toString();
}
