import { factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { StoredNotice } from '../../domain/ports.ts';
import { renderOffer, renderTaken } from '../blocks/cover-messages.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import type { Words } from '../words/words.ts';
import { countdownPlanOf } from './countdown-plan.ts';
import { changeMessage, newestOf } from './keep-message.ts';

function offerKey({ id, startsAt, instructorId }: ScheduledClass): string {
  return `cover:${id}@${startsAt.instant}:${instructorId}`;
}

/** The offer made last of a class at this start by this instructor, as it stands, and the key of one made anew. */
async function offersOf(
  desk: Desk,
  scheduled: ScheduledClass,
): Promise<{ readonly last: StoredNotice | undefined; readonly next: string }> {
  const first = offerKey(scheduled);
  let last: StoredNotice | undefined;
  for (let offer = 1; ; offer += 1) {
    const key = offer === 1 ? first : `${first}~${offer}`;
    const newest = await newestOf(desk, key);
    if (newest === undefined) return { last, next: key };
    last = newest;
  }
}

/** What is said of an offer in the team channel follows the class; one made anew has a post of its own. */
export async function keepOffer(desk: Desk, before: ScheduledClass, after: ScheduledClass): Promise<void> {
  const { words, settings } = desk;
  const { last } = await offersOf(desk, before);
  const wasOffered = before.coverOpen === true && isOn(before);
  const isOffered = after.coverOpen === true && isOn(after);
  const isSame =
    before.startsAt.instant === after.startsAt.instant && before.instructorId === after.instructorId;
  const facts = factsOfClass(after, { ...desk, plan: await countdownPlanOf(desk, after) });
  if (last !== undefined && !(isOffered && isSame))
    await changeMessage(desk, last, renderTaken(becameOf(before, after, words)));
  if (!isOffered || settings.teamChannel === undefined) return;
  if (last !== undefined && wasOffered && isSame)
    return changeMessage(desk, last, renderOffer(after, facts, words));
  await desk.stores.notices.enqueue(desk.studioId, {
    key: (await offersOf(desk, after)).next,
    to: settings.teamChannel,
    action: { kind: 'post' },
    payload: renderOffer(after, facts, words),
    causedAt: desk.now,
  });
}

/** Once a class has begun nobody can take it. */
export async function closeOffer(desk: Desk, scheduled: ScheduledClass): Promise<void> {
  if (scheduled.coverOpen !== true) return;
  const { last } = await offersOf(desk, scheduled);
  if (last !== undefined)
    await changeMessage(desk, last, renderTaken(desk.words.classes.coverOver(scheduled, inertText)));
}

function becameOf(before: ScheduledClass, after: ScheduledClass, { classes }: Words): string {
  if (after.instructorId !== before.instructorId)
    return classes.coverTaken(after, after.instructorId, before.instructorId, inertText);
  if (after.state === 'cancelled') return classes.cancelled(after, inertText);
  if (after.startsAt.instant !== before.startsAt.instant) return classes.coverMoved(before, after, inertText);
  return classes.coachTakenBack(after, after.instructorId, inertText);
}
