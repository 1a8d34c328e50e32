import { digestKey } from '../../domain/calendar/digest.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import type { Desk } from '../handling.ts';
import type { ToldOfChange } from '../words/en/class-change-words.ts';
import { countdownKey } from './keep-countdown.ts';
import { newestOf } from './keep-message.ts';

/** Who gets a message when this person changes a class: its instructor, and the coaches unless one did it. */
export function whoHears(
  { settings }: Desk,
  { instructorId }: ScheduledClass,
  by: string,
): readonly string[] {
  const coaches = isHeadCoach(settings, by) ? [] : settings.headCoaches;
  return [...new Set([...coaches, instructorId])].filter((each) => each !== by);
}

/** What a change of this class, to `startsAt` where it moves, will make the app say. */
export async function toldOfChange(
  desk: Desk,
  scheduled: ScheduledClass,
  by: string,
  startsAt: ZonedMoment = scheduled.startsAt,
): Promise<ToldOfChange> {
  const { teamChannel, zone } = desk.settings;
  const days = new Set(
    [scheduled.startsAt, startsAt].map(({ instant }) => wallTimeOf(instant, zone).date).toSorted(),
  );
  const stands = async (key: string) => (await newestOf(desk, key)) !== undefined;
  const lists: string[] = [];
  const today = wallTimeOf(desk.now, zone).date;
  for (const day of days) if (day >= today && (await stands(digestKey(day)))) lists.push(day);
  return {
    ...(teamChannel === undefined ? {} : { teamChannel }),
    countdown: await stands(countdownKey(scheduled)),
    offer: scheduled.coverOpen === true,
    lists,
    people: whoHears(desk, scheduled, by),
  };
}
