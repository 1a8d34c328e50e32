import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { readTaughtLine } from '../../domain/week/taught-patterns.ts';
import { slotNameOf } from '../../domain/week/week-class.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { classesInWeek, findClass } from './classes-in-week.ts';
import { whyNotKept } from './keep-private.ts';
import { afterClassKey, markClass } from './mark-class.ts';

/** Where a message stands in a thread. */
type InThread = { readonly place: string; readonly thread: string };

/**
 * `taught: squat, hinge, push, core` counts the patterns of a class without a plan: the class asked about in
 * this thread, else the person's last one. Undefined where the text is no such line.
 */
export async function sayTaught(
  desk: Desk,
  text: string,
  by: string,
  at?: InThread,
): Promise<Message | undefined> {
  const line = readTaughtLine(text);
  if (line === undefined) return undefined;
  const isPrivate = whyNotKept(desk, text);
  if (isPrivate !== undefined) return isPrivate;
  const { week, when } = desk.words;
  const scheduled = (at && (await classAskedAbout(desk, at))) ?? (await lastClassOf(desk, by));
  if (scheduled === undefined) return { text: week.taughtNoClass };
  const name = inertText(slotNameOf(scheduled, desk.settings));
  if (scheduled.planId !== undefined) return { text: week.taughtHasPlan(name) };
  if (line.patterns.length === 0) return { text: week.taughtUnclear(line.unknown.map(inertText)) };
  const changes = `taught: ${line.patterns.join(', ')}`;
  const marked = await markClass(desk, scheduled.id, by, { how: 'with changes', changes });
  return marked.kind === 'kept'
    ? marked.message
    : {
        text: week.taughtCounted(
          `${name}, ${when(scheduled.startsAt)}`,
          line.patterns,
          line.unknown.map(inertText),
        ),
      };
}

async function classAskedAbout(desk: Desk, { place, thread }: InThread): Promise<ScheduledClass | undefined> {
  const notice = await desk.stores.notices.findBySentTo(desk.studioId, place, thread);
  const start = afterClassKey('');
  return notice?.key.startsWith(start) === true ? findClass(desk, notice.key.slice(start.length)) : undefined;
}

/** Of this week and the one before. */
async function lastClassOf(desk: Desk, instructorId: string): Promise<ScheduledClass | undefined> {
  const week = isoWeekOf(desk.now, desk.settings.zone);
  const classes = [...(await classesInWeek(desk, weekAfter(week, -1))), ...(await classesInWeek(desk, week))];
  return classes.findLast(
    (each) =>
      each.instructorId === instructorId &&
      each.startsAt.instant <= desk.now &&
      each.state !== 'cancelled' &&
      each.state !== 'not taught',
  );
}
