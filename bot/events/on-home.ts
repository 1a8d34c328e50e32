import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { instantAfter } from '../../domain/calendar/wall-time.ts';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import { type HomeFacts, type HomeLine, renderHome } from '../blocks/home-view.ts';
import { classesInWeek } from '../flows/classes-in-week.ts';
import type { Desk, Handler, HomeRequest } from '../handling.ts';

const weekSeconds = 7 * 86_400;

/** A person's home: their classes of the next seven days, their drafts, and for a coach what waits. */
export const onHome: Handler<HomeRequest> = async ({ personId }, desk) => ({
  answers: [
    { kind: 'publish home', personId, view: renderHome(await homeFacts(desk, personId), desk.words) },
  ],
});

async function homeFacts(desk: Desk, personId: string): Promise<HomeFacts> {
  const { stores, studioId, settings, now } = desk;
  const week = isoWeekOf(now, settings.zone);
  const classes = [
    ...(await classesInWeek(desk, week)),
    ...(await classesInWeek(desk, weekAfter(week))),
  ].filter(({ startsAt: { instant } }) => now <= instant && instant < instantAfter(now, weekSeconds));
  const mine = classes.filter(
    ({ instructorId, state }) => instructorId === personId && state !== 'cancelled',
  );
  const drafts = (await stores.plans.listByAuthor(studioId, personId, 10)).filter(
    ({ state }) => state !== 'approved',
  );
  const coach = settings.headCoaches.includes(personId);
  const waiting = coach ? await stores.plans.listByState(studioId, 'in review') : [];
  return {
    classes: await Promise.all(mine.map((each) => classLine(desk, each))),
    drafts: await Promise.all(drafts.map((each) => planLine(desk, each))),
    ...(coach ? { waiting: await Promise.all(waiting.map((each) => planLine(desk, each))) } : {}),
    missing: [
      ...(settings.teamChannel === undefined ? ['teamChannel'] : []),
      ...(settings.reviewChannel === undefined ? ['reviewChannel'] : []),
      ...(settings.headCoaches.length === 0 ? ['headCoaches'] : []),
      ...(settings.rooms.length === 0 ? ['rooms'] : []),
      ...(settings.slots.length === 0 ? ['slots'] : []),
    ],
  };
}

async function classLine(desk: Desk, scheduled: ScheduledClass): Promise<HomeLine> {
  const record =
    scheduled.planId === undefined
      ? undefined
      : await desk.stores.plans.find(desk.studioId, scheduled.planId);
  return {
    ...(scheduled.title === undefined ? {} : { title: scheduled.title }),
    startsAt: scheduled.startsAt,
    ...(record === undefined ? {} : { record }),
  };
}

async function planLine(desk: Desk, record: PlanRecord): Promise<HomeLine> {
  const version = await desk.stores.plans.findVersion(desk.studioId, record.id, record.currentVersion);
  const title = version?.plan?.facts.title;
  return { ...(title === undefined ? {} : { title }), record };
}
