import { createHash } from 'node:crypto';
import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../domain/calendar/wall-time.ts';
import type { PlanFacts } from '../../domain/plan/plan.ts';
import type { Desk } from '../handling.ts';
import { clashesWith } from './clashes-with.ts';
import { classesInWeek } from './classes-in-week.ts';
import type { OpenPlan } from './open-plan.ts';
import { askForPlace, classWithOtherPlan } from './place-taken.ts';
import { postInThread } from './post-draft.ts';
import { saveChanged } from './save-changed.ts';

/**
 * Brings the calendar in line with the facts on the title line: day, time, room, people, length. Once the plan
 * has a class, only what this version changed: what was moved or counted there stays, and a class that was
 * cancelled or taught is not planned anew by a change of something else.
 */
export async function scheduleFromFacts(desk: Desk, open: Omit<OpenPlan, 'scheduled'>): Promise<void> {
  const facts = open.report.plan?.facts;
  if (facts === undefined) return;
  const classes = await desk.stores.classes.findByPlan(desk.studioId, open.record.id);
  const planned = classes.find(({ state }) => state === 'planned' || state === 'moved');
  const wanted = classes.length === 0 ? facts : changedFacts(facts, await factsBefore(desk, open));
  const startsAt = await freePlace(desk, open.record, wanted.startsAt, planned);
  if (startsAt === undefined) return;
  const { instant } = startsAt;
  // A plan taught again keeps its old moment on the title line; the past is not planned anew.
  if (planned === undefined && instant <= desk.now) return;
  const base =
    planned ??
    (await freeClassAt(desk, open.record.authorId, instant)) ??
    newClass(desk, open.record.authorId);
  const after: ScheduledClass = {
    ...base,
    ...(wanted.title === undefined ? {} : { title: wanted.title }),
    ...(wanted.room === undefined ? {} : { room: wanted.room }),
    ...(wanted.people === undefined ? {} : { people: wanted.people }),
    startsAt,
    slotSeconds: wanted.slotSeconds ?? planned?.slotSeconds ?? facts.slotSeconds,
    planId: open.record.id,
    state:
      planned !== undefined && planned.startsAt.instant !== instant && planned.slotId !== undefined
        ? 'moved'
        : base.state,
  };
  await saveChanged(desk, planned ?? after, after);
}

/** Where the class is to be: the moment said, unless another plan's class of the same instructor is there. */
async function freePlace(
  desk: Desk,
  record: OpenPlan['record'],
  wanted: PlanFacts['startsAt'],
  planned: ScheduledClass | undefined,
): Promise<ZonedMoment | undefined> {
  const moment = wanted === undefined ? undefined : zonedMoment(wanted, desk.settings.zone);
  const isTaken =
    moment !== undefined &&
    moment.instant !== planned?.startsAt.instant &&
    (await classWithOtherPlan(desk, record, moment.instant)) !== undefined;
  return isTaken ? planned?.startsAt : (moment ?? planned?.startsAt);
}

/**
 * What the class of a plan clashes with, said in the plan's thread; the same clashes are said once. Where the
 * plan's class has another plan, which of them it is to be is asked.
 */
export async function tellClashes(desk: Desk, open: OpenPlan): Promise<void> {
  await askForPlace(desk, open);
  const { scheduled, record } = open;
  if (scheduled === undefined || scheduled.startsAt.instant <= desk.now) return;
  const lines = await clashesWith(desk, scheduled, record.authorId);
  if (lines.length === 0) return;
  const text = lines.join('\n');
  const said = createHash('sha256').update(text).digest('hex').slice(0, 12);
  await postInThread(desk, open, `clash:${record.id}:${said}`, { text });
}

type WantedFacts = Partial<Pick<PlanFacts, 'title' | 'startsAt' | 'room' | 'people' | 'slotSeconds'>>;

function changedFacts(facts: PlanFacts, before: PlanFacts | undefined): WantedFacts {
  if (before === undefined) return facts;
  const { title, startsAt, room, people, slotSeconds } = facts;
  const isMoved = startsAt?.date !== before.startsAt?.date || startsAt?.time !== before.startsAt?.time;
  return {
    ...(title === undefined || title === before.title ? {} : { title }),
    ...(startsAt === undefined || !isMoved ? {} : { startsAt }),
    ...(room === undefined || room === before.room ? {} : { room }),
    ...(people === undefined || people === before.people ? {} : { people }),
    ...(slotSeconds === before.slotSeconds ? {} : { slotSeconds }),
  };
}

async function factsBefore(desk: Desk, open: Omit<OpenPlan, 'scheduled'>): Promise<PlanFacts | undefined> {
  const number = open.version.version - 1;
  const before =
    number < 1 ? undefined : await desk.stores.plans.findVersion(desk.studioId, open.record.id, number);
  return before?.plan?.facts;
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
      (each.state === 'planned' || each.state === 'moved'),
  );
}

function newClass(desk: Desk, instructorId: string): Omit<ScheduledClass, 'startsAt' | 'slotSeconds'> {
  return { id: desk.newId(), instructorId, state: 'planned' };
}
