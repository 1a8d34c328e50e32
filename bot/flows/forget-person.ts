import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import { slotLabel } from './settings-as-text.ts';

/**
 * Deletes a person. The head coaches are told which weekly slots nobody teaches then, and not who it was: a slot
 * without an instructor has no classes.
 */
export async function forgetPerson(desk: Desk, personId: string, places: readonly string[]): Promise<void> {
  const { stores, studioId, settings, words, now } = desk;
  await stores.care.forgetPerson(studioId, personId, places, now);
  const left = settings.slots.filter(({ instructorId }) => instructorId === personId);
  if (left.length === 0) return;
  const text = words.data.slotsLeft(left.map((slot) => inertText(slotLabel(slot, settings.slots))));
  const key = `slots-left:${desk.newId()}`;
  for (const coach of settings.headCoaches)
    if (coach !== personId)
      await stores.notices.enqueue(studioId, {
        key: `${key}:${coach}`,
        to: coach,
        action: { kind: 'post' },
        payload: { text },
        causedAt: now,
      });
}
