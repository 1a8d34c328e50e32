import { classesOfDay, digestKey, endOfDay } from '../../domain/calendar/digest.ts';
import { type ClassToCome, factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { renderDigest } from '../blocks/digest-message.ts';
import type { Desk, Message } from '../handling.ts';
import { clashesAmong } from './clashes-with.ts';
import { keepTrue, newestOf } from './keep-message.ts';

/** The evening before: the next day's classes, in one message for the team. */
export async function postDigest(desk: Desk, date: string, classes: readonly ClassToCome[]): Promise<void> {
  const { settings, stores, studioId, now } = desk;
  if (settings.teamChannel === undefined) return;
  await stores.notices.enqueue(studioId, {
    key: digestKey(date),
    to: settings.teamChannel,
    action: { kind: 'post' },
    payload: digestOf(desk, date, classes),
    causedAt: now,
  });
}

/** Posted lists of today and the next day follow every change until their day is over. */
export async function keepDigests(desk: Desk, classes: readonly ClassToCome[]): Promise<void> {
  const { zone } = desk.settings;
  const today = wallTimeOf(desk.now, zone).date;
  const tomorrow = wallTimeOf(endOfDay(today, zone), zone).date;
  for (const date of [today, tomorrow]) {
    const newest = await newestOf(desk, digestKey(date));
    if (newest !== undefined) await keepTrue(desk, newest, () => digestOf(desk, date, classes));
  }
}

function digestOf(desk: Desk, date: string, classes: readonly ClassToCome[]): Message {
  const ofDay = classesOfDay(classes, date, desk.settings.zone).filter(
    ({ scheduled }) => isOn(scheduled) || scheduled.state === 'cancelled',
  );
  return renderDigest(
    date,
    ofDay.map((one) => ({
      facts: factsOfClass(one.scheduled, { ...desk, plan: one.plan }),
      cancelled: one.scheduled.state === 'cancelled',
      clashes: clashesAmong(desk, one, ofDay),
    })),
    desk.words,
  );
}
