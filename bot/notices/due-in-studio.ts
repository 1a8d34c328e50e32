import type { ClassMoment } from '../../domain/calendar/countdown-for.ts';
import { type DueMoment, dueNotices, nextDue } from '../../domain/calendar/due-notices.ts';
import { type ClassToCome, endOf } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { instantAfter, startOfDay } from '../../domain/calendar/wall-time.ts';
import { renderAfterClass } from '../blocks/after-class-message.ts';
import { classesAround } from '../flows/classes-around.ts';
import { findClass } from '../flows/classes-in-week.ts';
import { countdownPlanOf } from '../flows/countdown-plan.ts';
import { hears } from '../flows/data-of-person.ts';
import { keepCountdown, mayHaveCountdown } from '../flows/keep-countdown.ts';
import { keepDigests, postDigest } from '../flows/keep-digest.ts';
import { closeOffer } from '../flows/keep-offer.ts';
import { afterClassKey, keepOutcome } from '../flows/mark-class.ts';
import { postWeekReport } from '../flows/post-week-report.ts';
import {
  askAreYouIn,
  closeAreYouIn,
  sendFirstLines,
  tellNotIn,
  tellPlanWaits,
} from '../flows/tell-instructor.ts';
import { tellMissed } from '../flows/tell-missed.ts';
import type { Desk } from '../handling.ts';

/** How far back a stop is made good: classes nobody spoke of are still counted as assumed. */
const lookBackSeconds = 14 * 86_400;

/** How far ahead anything said now depends on a plan: the next day's list, made the evening before. */
const lookAheadSeconds = 2 * 86_400;

/** Enqueues every notice that is due at `desk.now` and not enqueued yet. Safe to repeat. */
export async function enqueueDue(desk: Desk): Promise<void> {
  const { now, stores, studioId } = desk;
  const studio = await stores.studios.find(studioId);
  const earliest = instantAfter(now, -lookBackSeconds);
  const from = studio !== undefined && studio.createdAt > earliest ? studio.createdAt : earliest;
  const lookedAt = await stores.timetable.findLookedAt(studioId);
  const since = lookedAt !== undefined && from < lookedAt && lookedAt <= now ? lookedAt : from;
  const classes = await withPlansAt(desk, await classesAround(desk, [-2, -1, 0, 1]), since);
  const { due } = dueNotices(classes, { from, to: now }, desk);
  for (const moment of due) await enqueue(desk, moment, classes, since);
  for (const one of classes)
    if (mayHaveCountdown(one.scheduled, since, desk)) await keepCountdown(desk, one, classes);
  await keepDigests(desk, classes);
  await lookBack(desk, since, lookedAt, classes);
}

/** Tells what came too late since the last look, and notes that all was looked at up to now. */
async function lookBack(
  desk: Desk,
  since: string,
  lookedAt: string | undefined,
  classes: readonly ClassToCome[],
): Promise<void> {
  const { due, missed } = dueNotices(classes, { from: since, to: desk.now }, desk);
  if (lookedAt !== undefined) await tellMissed(desk, since, missed, due, classes);
  const isBack = lookedAt === undefined || desk.now < lookedAt;
  if (isBack || due.length > 0 || missed.length > 0)
    await desk.stores.timetable.keepLookedAt(desk.studioId, desk.now);
}

/** The next instant after `desk.now` at which something falls due. */
export async function nextDueAt(desk: Desk): Promise<string | undefined> {
  const classes = await classesAround(desk, [-1, 0, 1]);
  const bare = classes.map((scheduled): ClassToCome => ({ scheduled, plan: { standing: 'none' } }));
  return nextDue(bare, desk.now, desk);
}

/** Plans are read where something may be said of them now; else a class stands without. */
async function withPlansAt(
  desk: Desk,
  classes: readonly ScheduledClass[],
  since: string,
): Promise<readonly ClassToCome[]> {
  const until = instantAfter(desk.now, lookAheadSeconds);
  // The day's list tells of its classes until the day is over.
  const ended = [since, startOfDay(desk.now, desk.settings.zone)].toSorted()[0] ?? since;
  const planned: ClassToCome[] = [];
  for (const scheduled of classes) {
    const isNear = ended <= endOf(scheduled) && scheduled.startsAt.instant <= until;
    planned.push({
      scheduled,
      plan: isNear ? await countdownPlanOf(desk, scheduled) : { standing: 'none' },
    });
  }
  return planned;
}

async function enqueue(
  desk: Desk,
  moment: DueMoment,
  classes: readonly ClassToCome[],
  since: string,
): Promise<void> {
  switch (moment.kind) {
    case 'week report':
      return postWeekReport(desk, moment);
    case 'digest':
      return Date.parse(moment.at) > Date.parse(since) ? postDigest(desk, moment.date, classes) : undefined;
    default:
      return enqueueForClass(desk, moment, classes, since);
  }
}

async function enqueueForClass(
  desk: Desk,
  moment: ClassMoment,
  classes: readonly ClassToCome[],
  since: string,
): Promise<void> {
  const one = classes.find(({ scheduled }) => scheduled.id === moment.facts.classId);
  if (one === undefined) return;
  switch (moment.kind) {
    // What the message says is kept by `keepCountdown`.
    case 'countdown':
      return;
    case 'on now':
      return closeOffer(desk, one.scheduled);
    case 'over':
      await closeOffer(desk, one.scheduled);
      return closeAreYouIn(desk, one.scheduled);
    case 'plan waits':
      // A plan begun within the last hours before its class is no news to whoever writes it.
      return Date.parse(moment.at) > Date.parse(since) ? tellPlanWaits(desk, one, moment) : undefined;
    case 'are you in':
      return askAreYouIn(desk, one);
    case 'not in':
      return tellNotIn(desk, one, moment);
    case 'first lines':
      return (await hears(desk, one.scheduled.instructorId, 'before a class'))
        ? sendFirstLines(desk, one, moment)
        : undefined;
    case 'how was it':
      return askHowItWas(desk, moment);
    case 'assumed taught':
      return assumeTaught(desk, moment);
  }
}

async function askHowItWas(desk: Desk, { facts }: ClassMoment): Promise<void> {
  const scheduled = await findClass(desk, facts.classId);
  if (scheduled === undefined) return;
  const asked = await whoKnows(desk, scheduled);
  if (asked === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: afterClassKey(scheduled.id),
    to: asked,
    action: { kind: 'post' },
    payload: renderAfterClass(scheduled, desk.words),
    causedAt: desk.now,
  });
}

/** Who is asked how a class went: its instructor; a coach, where its instructor could not teach it. */
async function whoKnows(
  desk: Desk,
  { instructorId, coverOpen }: ScheduledClass,
): Promise<string | undefined> {
  for (const each of coverOpen === true ? desk.settings.headCoaches : [instructorId])
    if (await hears(desk, each, 'how it went')) return each;
  return undefined;
}

async function assumeTaught(desk: Desk, { facts }: ClassMoment): Promise<void> {
  const scheduled = await findClass(desk, facts.classId);
  // Nobody took it: whether it was held is known once someone says so.
  if (scheduled === undefined || scheduled.outcome !== undefined || scheduled.coverOpen === true) return;
  const outcome = { how: 'as planned, assumed', saidAt: desk.now } as const;
  await keepOutcome(desk, scheduled, outcome);
  if ((await desk.stores.notices.find(desk.studioId, afterClassKey(scheduled.id))) === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${afterClassKey(scheduled.id)}:assumed`,
    to: scheduled.instructorId,
    action: { kind: 'update', of: afterClassKey(scheduled.id) },
    payload: renderAfterClass({ ...scheduled, outcome }, desk.words),
    causedAt: desk.now,
  });
}
