import { factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { renderOffer, renderTaken } from '../blocks/cover-messages.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
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
  if (newest !== undefined && !(isOffered && isSame)) {
    const text =
      after.instructorId === before.instructorId
        ? words.classes.coverClosed(before, inertText)
        : words.classes.coverTaken(after, after.instructorId, inertText);
    await changeMessage(desk, newest, renderTaken(text));
  }
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
