import { isOn } from '../../domain/calendar/facts-of-class.ts';
import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../domain/calendar/wall-time.ts';
import { type PlaceTaken, renderPlaceTaken } from '../blocks/place-message.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';
import { postInThread } from './post-draft.ts';

/** A class of this instructor at this instant that has another plan: a class has one. */
export async function classWithOtherPlan(
  desk: Desk,
  { id: planId, authorId }: OpenPlan['record'],
  instant: string,
): Promise<ScheduledClass | undefined> {
  const classes = await classesInWeek(desk, isoWeekOf(instant, desk.settings.zone));
  return classes.find(
    (each) =>
      each.startsAt.instant === instant &&
      each.instructorId === authorId &&
      each.planId !== undefined &&
      each.planId !== planId &&
      isOn(each),
  );
}

/** What stands where this plan's title line wants to be, and keeps it off the calendar there. */
export async function placeTaken(desk: Desk, open: OpenPlan): Promise<PlaceTaken | undefined> {
  const wanted = open.version.plan?.facts.startsAt;
  if (wanted === undefined) return undefined;
  const { instant } = zonedMoment(wanted, desk.settings.zone);
  if (instant <= desk.now || open.scheduled?.startsAt.instant === instant) return undefined;
  const scheduled = await classWithOtherPlan(desk, open.record, instant);
  const other = scheduled?.planId === undefined ? undefined : await openPlan(desk, scheduled.planId);
  return scheduled === undefined || other === undefined ? undefined : { scheduled, other };
}

export function placeKey({ record }: OpenPlan, { scheduled, other }: PlaceTaken): string {
  return `place:${record.id}:${scheduled.id}@${scheduled.startsAt.instant}:${other.record.id}`;
}

/** Asks in the plan's thread, once for each class and plan that stands there. */
export async function askForPlace(desk: Desk, open: OpenPlan): Promise<void> {
  const taken = await placeTaken(desk, open);
  if (taken !== undefined)
    await postInThread(desk, open, placeKey(open, taken), renderPlaceTaken(open, taken, desk.words));
}
