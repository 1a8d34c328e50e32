import { endOf, isOn } from '../../domain/calendar/facts-of-class.ts';
import { kitRotations } from '../../domain/calendar/kit-shortages.ts';
import { layOut } from '../../domain/calendar/lay-out.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { instantAfter } from '../../domain/calendar/wall-time.ts';
import type { Desk, Message } from '../handling.ts';
import { refusal } from './change-class.ts';
import { clashesWith } from './clashes-with.ts';
import { classesAround } from './classes-around.ts';
import { findClass } from './classes-in-week.ts';
import { countdownPlanOf } from './countdown-plan.ts';
import { keepPlanMessages } from './keep-plan-messages.ts';
import { saveChanged } from './save-changed.ts';

/** How long before its start a class counts as the one at hand: our own rule. */
const atHandSeconds = 3 * 3600;

/**
 * `18 now`: so many have come to this class. Kept with it, counted again, and said where kit must go round; the
 * plan, which may be taught again, stays as written, and its card shows both.
 */
export async function recountKit(
  desk: Desk,
  scheduled: ScheduledClass,
  people: number,
  by: string,
): Promise<Message> {
  const { classes, countdown } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  const after: ScheduledClass = { ...scheduled, people };
  await saveChanged(desk, scheduled, after);
  await keepPlanMessages(desk, after);
  const { approved } = await countdownPlanOf(desk, scheduled);
  if (approved === undefined) return { text: classes.noPlanToCount };
  const room = desk.settings.rooms.find(({ name }) => name === scheduled.room);
  const rotations = kitRotations(approved, people, room?.name, desk);
  const outcome =
    room === undefined
      ? [classes.noRoomToCount]
      : rotations.length === 0
        ? [classes.enough]
        : rotations.map(classes.rotate);
  const lines = [
    classes.recount(people, approved.facts.people),
    countdown.layOut(layOut(approved, people, desk), people),
    ...outcome,
    ...(await clashesWith(desk, after)),
  ];
  return { text: lines.filter((line) => line !== '').join('\n') };
}

/** The class this person has at hand: running, or the next within three hours. */
export async function classAtHand(desk: Desk, personId: string): Promise<ScheduledClass | undefined> {
  const until = instantAfter(desk.now, atHandSeconds);
  return (await classesAround(desk, [-1, 0, 1])).find(
    (each) =>
      each.instructorId === personId &&
      isOn(each) &&
      desk.now < endOf(each) &&
      each.startsAt.instant <= until,
  );
}

/** The class a thread is about, by the notice that opens it. */
export async function classInThread(
  desk: Desk,
  place: string,
  thread: string,
): Promise<ScheduledClass | undefined> {
  const notice = await desk.stores.notices.findBySentTo(desk.studioId, place, thread);
  const classId = /^(?:countdown|in|cover|taken|class):(.+)@\d{4}-/.exec(notice?.key ?? '')?.[1];
  return classId === undefined ? undefined : findClass(desk, classId);
}
