import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk } from '../handling.ts';
import { correctWeekReport } from './correct-week-report.ts';
import { tellMoved } from './keep-countdown.ts';
import { keepOffer } from './keep-offer.ts';
import { isConfirmed, keepAreYouIn } from './tell-instructor.ts';

/** Saves a changed class and puts right what was said of it. */
export async function saveChanged(
  desk: Desk,
  before: ScheduledClass,
  changed: ScheduledClass,
): Promise<void> {
  const after = withWhatHolds(changed);
  await desk.stores.classes.save(desk.studioId, after);
  await tellMoved(desk, before, after);
  await keepAreYouIn(desk, before, after);
  await keepOffer(desk, before, after);
  await correctWeekReport(desk, before, after);
}

/** An *I'm in* for another start, or of another person, is let go. */
function withWhatHolds(scheduled: ScheduledClass): ScheduledClass {
  const { confirmed: _, ...rest } = scheduled;
  return isConfirmed(scheduled) ? scheduled : rest;
}
