import { endOf, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk, Message } from '../handling.ts';
import { saveChanged } from './save-changed.ts';

/** Notes that the instructor is in for this start; what is said where that can't be. */
export async function confirmIn(
  desk: Desk,
  scheduled: ScheduledClass,
  by: string,
): Promise<Message | undefined> {
  const isOver = !isOn(scheduled) || endOf(scheduled) <= desk.now;
  if (by !== scheduled.instructorId || isOver || scheduled.coverOpen === true)
    return { text: desk.words.classes.notThisClass };
  const confirmed: ScheduledClass = {
    ...scheduled,
    confirmed: { by, startsAt: scheduled.startsAt.instant },
  };
  await saveChanged(desk, scheduled, confirmed);
  return undefined;
}
