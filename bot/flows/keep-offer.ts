import { factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { renderOffer, renderTaken } from '../blocks/cover-messages.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { countdownPlanOf } from './countdown-plan.ts';
import { changeMessage, newestOf } from './keep-message.ts';

function offerKey({ id, startsAt, instructorId }: ScheduledClass): string {
  return `cover:${id}@${startsAt.instant}:${instructorId}`;
}

/** What is said of an offer in the team channel follows the class. */
export async function keepOffer(desk: Desk, before: ScheduledClass, after: ScheduledClass): Promise<void> {
  const { words, settings } = desk;
  const newest = await newestOf(desk, offerKey(before));
  const isOffered = after.coverOpen === true && isOn(after);
  const isSame =
    before.startsAt.instant === after.startsAt.instant && before.instructorId === after.instructorId;
  const facts = factsOfClass(after, { ...desk, plan: await countdownPlanOf(desk, after) });
  if (newest !== undefined && !(isOffered && isSame))
    await changeMessage(desk, newest, renderTaken(becameOf(before, after, words)));
  if (!isOffered || settings.teamChannel === undefined) return;
  if (newest !== undefined && isSame) return changeMessage(desk, newest, renderOffer(after, facts, words));
  await desk.stores.notices.enqueue(desk.studioId, {
    key: offerKey(after),
    to: settings.teamChannel,
    action: { kind: 'post' },
    payload: renderOffer(after, facts, words),
    causedAt: desk.now,
  });
}

/** Once a class has begun nobody can take it. */
export async function closeOffer(desk: Desk, scheduled: ScheduledClass): Promise<void> {
  if (scheduled.coverOpen !== true) return;
  const newest = await newestOf(desk, offerKey(scheduled));
  if (newest !== undefined)
    await changeMessage(desk, newest, renderTaken(desk.words.classes.coverOver(scheduled, inertText)));
}

function becameOf(before: ScheduledClass, after: ScheduledClass, { classes }: Words): string {
  if (after.instructorId !== before.instructorId)
    return classes.coverTaken(after, after.instructorId, before.instructorId, inertText);
  if (after.state === 'cancelled') return classes.cancelled(after, inertText);
  if (after.startsAt.instant !== before.startsAt.instant) return classes.coverMoved(before, after, inertText);
  return classes.coachTakenBack(after, after.instructorId, inertText);
}
