import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../domain/calendar/wall-time.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';
import type { OpenPlan } from './open-plan.ts';

/** Brings the calendar in line with the facts on the title line: day, time, room, people, length. */
export async function scheduleFromFacts(desk: Desk, open: Omit<OpenPlan, 'scheduled'>): Promise<void> {
  const facts = open.report.plan?.facts;
  if (facts === undefined) return;
  const planned = await plannedClassOf(desk, open.record.id);
  const startsAt =
    facts.startsAt === undefined ? planned?.startsAt : zonedMoment(facts.startsAt, desk.settings.zone);
  if (startsAt === undefined) return;
  const { instant } = startsAt;
  // A plan taught again keeps its old moment on the title line; the past is not planned anew.
  if (planned === undefined && instant <= desk.now) return;
  const base =
    planned ??
    (await freeClassAt(desk, open.record.authorId, instant)) ??
    newClass(desk, open.record.authorId);
  await desk.stores.classes.save(desk.studioId, {
    ...base,
    ...(facts.title === undefined ? {} : { title: facts.title }),
    ...(facts.room === undefined ? {} : { room: facts.room }),
    ...(facts.people === undefined ? {} : { people: facts.people }),
    startsAt,
    slotSeconds: facts.slotSeconds,
    planId: open.record.id,
    state:
      planned !== undefined && planned.startsAt.instant !== instant && planned.slotId !== undefined
        ? 'moved'
        : base.state,
  });
}

/** The class still to come that this plan is for. */
async function plannedClassOf(desk: Desk, planId: string): Promise<ScheduledClass | undefined> {
  const classes = await desk.stores.classes.findByPlan(desk.studioId, planId);
  return classes.find(({ state }) => state === 'planned' || state === 'moved');
}

/** The instructor's own timetabled class at that instant that has no plan yet. */
export async function freeClassAt(
  desk: Desk,
  instructorId: string,
  instant: string,
): Promise<ScheduledClass | undefined> {
  const classes = await classesInWeek(desk, isoWeekOf(instant, desk.settings.zone));
  return classes.find(
    (each) =>
      each.startsAt.instant === instant &&
      each.instructorId === instructorId &&
      each.planId === undefined &&
      each.state === 'planned',
  );
}

function newClass(desk: Desk, instructorId: string): Omit<ScheduledClass, 'startsAt' | 'slotSeconds'> {
  return { id: desk.newId(), instructorId, state: 'planned' };
}
