import type { ClassMoment } from '../../domain/calendar/countdown-for.ts';
import { type ClassToCome, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { printPlan } from '../../domain/shorthand/print-plan.ts';
import { fitToSlot } from '../../domain/timing/fit-to-slot.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { inertText } from '../blocks/escape.ts';
import { renderAnswered, renderAreYouIn, renderFirstLines } from '../blocks/instructor-messages.ts';
import type { Desk, Message } from '../handling.ts';
import { hears } from './data-of-person.ts';
import { changeMessage, newestOf } from './keep-message.ts';

const mostFirstLines = 3;

function areYouInKey({ id, startsAt, instructorId }: ScheduledClass): string {
  return `in:${id}@${startsAt.instant}:${instructorId}`;
}

export function isConfirmed({ confirmed, startsAt, instructorId }: ScheduledClass): boolean {
  return confirmed?.by === instructorId && confirmed.startsAt === startsAt.instant;
}

/** Asks the instructor, unless they said so already or cover is sought. */
export async function askAreYouIn(desk: Desk, { scheduled }: ClassToCome): Promise<void> {
  if (isConfirmed(scheduled) || scheduled.coverOpen === true) return;
  const minutes = minutesLeft(scheduled, desk.now);
  await enqueue(
    desk,
    areYouInKey(scheduled),
    scheduled.instructorId,
    renderAreYouIn(scheduled, minutes, desk.words),
  );
}

/** A question that stands open is closed once it was answered, or while it is not this person's. */
export async function keepAreYouIn(desk: Desk, before: ScheduledClass, after: ScheduledClass): Promise<void> {
  const newest = await newestOf(desk, areYouInKey(before));
  if (newest === undefined) return;
  const { classes } = desk.words;
  const isSame =
    isOn(after) &&
    after.coverOpen !== true &&
    after.startsAt.instant === before.startsAt.instant &&
    after.instructorId === before.instructorId;
  if (!isSame) return changeMessage(desk, newest, renderAnswered(classes.askOver(before, inertText)));
  if (isConfirmed(after)) return changeMessage(desk, newest, renderAnswered(classes.isIn(after, inertText)));
  const wasClosed = before.coverOpen === true || !isOn(before);
  if (wasClosed && after.startsAt.instant > desk.now)
    await changeMessage(desk, newest, renderAreYouIn(after, minutesLeft(after, desk.now), desk.words));
}

/** Once a class is over there is nothing to confirm. */
export async function closeAreYouIn(desk: Desk, scheduled: ScheduledClass): Promise<void> {
  if (isConfirmed(scheduled) || scheduled.coverOpen === true) return;
  const newest = await newestOf(desk, areYouInKey(scheduled));
  if (newest !== undefined)
    await changeMessage(desk, newest, renderAnswered(desk.words.classes.askEnded(scheduled, inertText)));
}

/** Tells each coach that nobody confirmed, or that cover is still open. */
export async function tellNotIn(desk: Desk, { scheduled }: ClassToCome, { key }: ClassMoment): Promise<void> {
  if (isConfirmed(scheduled)) return;
  const { classes } = desk.words;
  const minutes = minutesLeft(scheduled, desk.now);
  const text =
    scheduled.coverOpen === true
      ? classes.coverStillOpen(scheduled, classes.left(minutes * 60), inertText)
      : classes.notIn(scheduled, scheduled.instructorId, minutes, inertText);
  await tellCoaches(desk, key, { text });
}

/** The first lines of the plan as it stands for teaching, and the cuts for a late start. */
export async function sendFirstLines(
  desk: Desk,
  { scheduled, plan }: ClassToCome,
  { key }: ClassMoment,
): Promise<void> {
  if (plan.approved === undefined || scheduled.coverOpen === true) return;
  const [, ...lines] = printPlan(plan.approved, desk.catalogue).split('\n');
  const message = renderFirstLines(
    scheduled,
    minutesLeft(scheduled, desk.now),
    lines.slice(0, mostFirstLines),
    fitToSlot(plan.approved, desk).lateStartCuts,
    desk.words,
  );
  await enqueue(desk, `${key}:${scheduled.instructorId}`, scheduled.instructorId, message);
}

/** Tells coach and instructor of a plan that is not approved, and the coach of cover that is open. */
export async function tellPlanWaits(
  desk: Desk,
  { scheduled, plan }: ClassToCome,
  { key }: ClassMoment,
): Promise<void> {
  const { classes } = desk.words;
  const left = classes.left((Date.parse(scheduled.startsAt.instant) - Date.parse(desk.now)) / 1000);
  if (scheduled.coverOpen === true)
    await tellCoaches(desk, `${key}:cover`, { text: classes.coverStillOpen(scheduled, left, inertText) });
  if (plan.standing === 'none' || plan.standing === 'approved') return;
  const message = { text: classes.planWaits(scheduled, left, plan.standing, inertText) };
  await tellCoaches(desk, key, message);
  const isCoach = isHeadCoach(desk.settings, scheduled.instructorId);
  if (!isCoach && (await hears(desk, scheduled.instructorId, 'plans that wait')))
    await enqueue(desk, `${key}:${scheduled.instructorId}`, scheduled.instructorId, message);
}

/** The same to every head coach, each once. */
export async function tellCoaches(desk: Desk, key: string, message: Message): Promise<void> {
  for (const coach of desk.settings.headCoaches) await enqueue(desk, `${key}:${coach}`, coach, message);
}

async function enqueue(desk: Desk, key: string, to: string, payload: Message): Promise<void> {
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to,
    action: { kind: 'post' },
    payload,
    causedAt: desk.now,
  });
}

function minutesLeft({ startsAt }: ScheduledClass, now: string): number {
  return Math.max(0, Math.ceil((Date.parse(startsAt.instant) - Date.parse(now)) / 60_000));
}
