import { endOf, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { clashesWith } from './clashes-with.ts';
import { classesAround } from './classes-around.ts';
import { saveChanged } from './save-changed.ts';
import { tellCoaches } from './tell-instructor.ts';

/** How far ahead classes can be named: the running week and the four after it. */
export const weeksAhead = [0, 1, 2, 3, 4] as const;

function mayChange({ settings }: Desk, scheduled: ScheduledClass, by: string): boolean {
  return by === scheduled.instructorId || settings.headCoaches.includes(by);
}

export async function cancelClass(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (!isOn(scheduled)) return { text: classes.cancelled(scheduled, inertText) };
  const { coverOpen: _, ...rest } = scheduled;
  await saveChanged(desk, scheduled, { ...rest, state: 'cancelled' });
  await tellOtherCoaches(desk, scheduled, by, classes.coach(scheduled, by, 'cancelled', inertText));
  return { text: classes.cancelled(scheduled, inertText) };
}

/** Takes a cancellation back. */
export async function putOnAgain(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (scheduled.state !== 'cancelled') return { text: classes.onAgain(scheduled, inertText) };
  await saveChanged(desk, scheduled, { ...scheduled, state: 'planned' });
  await tellOtherCoaches(desk, scheduled, by, classes.coach(scheduled, by, 'on again', inertText));
  return withClashes(desk, scheduled, classes.onAgain(scheduled, inertText));
}

export async function moveClass(
  desk: Desk,
  scheduled: ScheduledClass,
  to: ZonedMoment,
  by: string,
): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (!isOn(scheduled)) return { text: classes.notThisClass };
  if (to.instant === scheduled.startsAt.instant) return { text: classes.sameMoment };
  if (to.instant <= desk.now) return { text: classes.inThePast };
  // What a clock set forward assumed of a class does not go with it into the time to come.
  const { outcome, ...rest } = scheduled;
  const said = outcome?.saidBy === undefined ? rest : scheduled;
  const after: ScheduledClass = { ...said, startsAt: to, state: 'moved' };
  await saveChanged(desk, scheduled, after);
  await tellOtherCoaches(desk, after, by, classes.coachMoved(scheduled, to, by, inertText));
  return withClashes(desk, after, classes.moved(scheduled, to, inertText));
}

/** Cancels every class of some days, both ends included; each stays an exception of its own. */
export async function closeDays(desk: Desk, from: string, to: string, by: string): Promise<Message> {
  const { classes } = desk.words;
  if (!desk.settings.headCoaches.includes(by)) return { text: classes.onlyCoach };
  const lines: string[] = [];
  for (const scheduled of await classesAround(
    desk,
    Array.from({ length: 54 }, (_, week) => week),
  )) {
    const { date, instant } = scheduled.startsAt;
    if (date < from || date > to || instant <= desk.now || !isOn(scheduled)) continue;
    const { coverOpen: _, ...rest } = scheduled;
    await saveChanged(desk, scheduled, { ...rest, state: 'cancelled' });
    lines.push(`• ${classes.named(scheduled, inertText)}`);
  }
  return { text: classes.holiday(from, to, lines) };
}

/** Why this person can't change this class now; undefined where they can. */
export function refusal(desk: Desk, scheduled: ScheduledClass, by: string): Message | undefined {
  const { classes } = desk.words;
  if (!mayChange(desk, scheduled, by)) return { text: classes.onlyInstructor };
  return endOf(scheduled) <= desk.now ? { text: classes.notThisClass } : undefined;
}

async function withClashes(desk: Desk, scheduled: ScheduledClass, text: string): Promise<Message> {
  return { text: [text, ...(await clashesWith(desk, scheduled))].join('\n') };
}

async function tellOtherCoaches(desk: Desk, scheduled: ScheduledClass, by: string, text: string) {
  if (desk.settings.headCoaches.includes(by)) return;
  await tellCoaches(desk, `changed:${scheduled.id}:${desk.newId()}`, { text });
}
