import type { ClassMoment } from '../../domain/calendar/countdown-for.ts';
import { type ClassToCome, type DueMoment, dueNotices, nextDue } from '../../domain/calendar/due-notices.ts';
import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import { instantAfter } from '../../domain/calendar/wall-time.ts';
import { renderAfterClass } from '../blocks/after-class-message.ts';
import { renderCountdown } from '../blocks/countdown-message.ts';
import { classesInWeek, findClass } from '../flows/classes-in-week.ts';
import { countdownPlanOf } from '../flows/countdown-plan.ts';
import { afterClassKey, keepOutcome } from '../flows/mark-class.ts';
import { postWeekReport } from '../flows/post-week-report.ts';
import type { Desk } from '../handling.ts';

/** How far back a stop is made good: classes nobody spoke of are still counted as assumed. */
const lookBackSeconds = 14 * 86_400;

/** Enqueues every notice that is due at `desk.now` and not enqueued yet. Safe to repeat. */
export async function enqueueDue(desk: Desk): Promise<void> {
  const { now } = desk;
  const studio = await desk.stores.studios.find(desk.studioId);
  const earliest = instantAfter(now, -lookBackSeconds);
  const from = studio !== undefined && studio.createdAt > earliest ? studio.createdAt : earliest;
  const { due } = dueNotices(await classesAround(desk, [-2, -1, 0, 1]), { from, to: now }, desk);
  for (const moment of due) await enqueue(desk, moment);
}

/** The next instant after `desk.now` at which something falls due. */
export async function nextDueAt(desk: Desk): Promise<string | undefined> {
  return nextDue(await classesAround(desk, [-1, 0, 1]), desk.now, desk);
}

async function classesAround(desk: Desk, weeks: readonly number[]): Promise<readonly ClassToCome[]> {
  const week = isoWeekOf(desk.now, desk.settings.zone);
  const found: ClassToCome[] = [];
  for (const offset of weeks) {
    for (const scheduled of await classesInWeek(desk, weekAfter(week, offset))) {
      found.push({ scheduled, plan: await countdownPlanOf(desk, scheduled) });
    }
  }
  return found;
}

async function enqueue(desk: Desk, moment: DueMoment): Promise<void> {
  switch (moment.kind) {
    case 'countdown':
    case 'on now':
      return enqueueCountdown(desk, moment);
    case 'how was it':
      return askHowItWas(desk, moment);
    case 'assumed taught':
      return assumeTaught(desk, moment);
    case 'week report':
      return postWeekReport(desk, moment);
  }
}

/** One message a class: posted at the first moment that is still useful, updated at the others. */
async function enqueueCountdown(desk: Desk, moment: ClassMoment): Promise<void> {
  const { settings, stores, studioId, now } = desk;
  if (settings.teamChannel === undefined) return;
  const { classId, startsAt } = moment.facts;
  const message = {
    to: settings.teamChannel,
    payload: renderCountdown(moment, now, desk.words),
    causedAt: now,
  };
  const post = `countdown:${classId}@${startsAt.instant}`;
  const posted = await stores.notices.find(studioId, post);
  if (posted === undefined)
    await stores.notices.enqueue(studioId, { ...message, key: post, action: { kind: 'post' } });
  else if (posted.causedAt < moment.at)
    await stores.notices.enqueue(studioId, {
      ...message,
      key: moment.key,
      action: { kind: 'update', of: post },
    });
}

async function askHowItWas(desk: Desk, { facts }: ClassMoment): Promise<void> {
  const scheduled = await findClass(desk, facts.classId);
  if (scheduled === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: afterClassKey(scheduled.id),
    to: scheduled.instructorId,
    action: { kind: 'post' },
    payload: renderAfterClass(scheduled, desk.words),
    causedAt: desk.now,
  });
}

async function assumeTaught(desk: Desk, { facts }: ClassMoment): Promise<void> {
  const scheduled = await findClass(desk, facts.classId);
  if (scheduled === undefined || scheduled.outcome !== undefined) return;
  const outcome = { how: 'as planned, assumed', saidAt: desk.now } as const;
  await keepOutcome(desk, scheduled, outcome);
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${afterClassKey(scheduled.id)}:assumed`,
    to: scheduled.instructorId,
    action: { kind: 'update', of: afterClassKey(scheduled.id) },
    payload: renderAfterClass({ ...scheduled, outcome }, desk.words),
    causedAt: desk.now,
  });
}
