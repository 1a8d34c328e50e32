import { endOf, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { isHeadCoach, mayRunClass } from '../../domain/who-may.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { clashesWith } from './clashes-with.ts';
import { classesAround } from './classes-around.ts';
import { keepPlanMessages } from './keep-plan-messages.ts';
import { saveChanged } from './save-changed.ts';
import { whoHears } from './told-of-change.ts';

/** How far ahead classes can be named: the running week and the four after it. */
export const weeksAhead = [0, 1, 2, 3, 4] as const;

export async function cancelClass(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (!isOn(scheduled)) return { text: classes.cancelled(scheduled, inertText) };
  const { coverOpen: _, ...rest } = scheduled;
  await change(desk, scheduled, { ...rest, state: 'cancelled' });
  await tellOthers(desk, scheduled, by, classes.changedBy(scheduled, by, 'cancelled', inertText));
  return { text: classes.cancelled(scheduled, inertText) };
}

/** Takes a cancellation back. */
export async function putOnAgain(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (scheduled.state !== 'cancelled') return { text: classes.onAgain(scheduled, inertText) };
  await change(desk, scheduled, { ...scheduled, state: 'planned' });
  await tellOthers(desk, scheduled, by, classes.changedBy(scheduled, by, 'on again', inertText));
  return withClashes(desk, scheduled, by, classes.onAgain(scheduled, inertText));
}

/** `room`: where it is held from then on, if elsewhere. */
export async function moveClass(
  desk: Desk,
  scheduled: ScheduledClass,
  to: ZonedMoment,
  by: string,
  room?: string,
): Promise<Message> {
  const { classes } = desk.words;
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (!isOn(scheduled)) return { text: classes.notThisClass };
  const isElsewhere = room !== undefined && room !== scheduled.room;
  if (isElsewhere && !desk.settings.rooms.some(({ name }) => name === room))
    return { text: desk.words.forms.roomGone };
  if (to.instant === scheduled.startsAt.instant && !isElsewhere) return { text: classes.sameMoment };
  if (to.instant <= desk.now) return { text: classes.inThePast };
  const after = movedClass(scheduled, to, room);
  await change(desk, scheduled, after);
  await tellOthers(desk, after, by, classes.movedBy(scheduled, after, by, inertText));
  return withClashes(desk, after, by, classes.moved(scheduled, after, inertText));
}

/** A class at another start or in another room. */
export function movedClass(scheduled: ScheduledClass, to: ZonedMoment, room?: string): ScheduledClass {
  // What a clock set forward assumed of a class does not go with it into the time to come.
  const { outcome, ...rest } = scheduled;
  const said = outcome?.saidBy === undefined ? rest : scheduled;
  const isMoved = to.instant !== scheduled.startsAt.instant;
  return {
    ...said,
    startsAt: to,
    ...(room === undefined ? {} : { room }),
    state: isMoved ? 'moved' : scheduled.state,
  };
}

/** Cancels every class of some days, both ends included; each stays an exception of its own. */
export async function closeDays(desk: Desk, from: string, to: string, by: string): Promise<Message> {
  const { classes } = desk.words;
  if (!isHeadCoach(desk.settings, by)) return { text: classes.onlyCoach };
  const cancelled: ScheduledClass[] = [];
  for (const scheduled of await classesAround(
    desk,
    Array.from({ length: 54 }, (_, week) => week),
  )) {
    const { date, instant } = scheduled.startsAt;
    if (date < from || date > to || instant <= desk.now || !isOn(scheduled)) continue;
    const { coverOpen: _, ...rest } = scheduled;
    await change(desk, scheduled, { ...rest, state: 'cancelled' });
    cancelled.push(scheduled);
  }
  const listed = (those: readonly ScheduledClass[]) =>
    classes.holiday(
      from,
      to,
      those.map((each) => `• ${classes.named(each, inertText)}`),
    );
  const key = `holiday:${desk.newId()}`;
  for (const person of new Set(cancelled.map(({ instructorId }) => instructorId)))
    if (person !== by)
      await tell(
        desk,
        `${key}:${person}`,
        person,
        listed(cancelled.filter((each) => each.instructorId === person)),
      );
  return { text: listed(cancelled) };
}

async function change(desk: Desk, before: ScheduledClass, after: ScheduledClass): Promise<void> {
  await saveChanged(desk, before, after);
  await keepPlanMessages(desk, after);
}

/** Why this person can't change this class now; undefined where they can. */
export function refusal(desk: Desk, scheduled: ScheduledClass, by: string): Message | undefined {
  const { classes } = desk.words;
  if (!mayRunClass(desk.settings, scheduled, by)) return { text: classes.onlyInstructor };
  return endOf(scheduled) <= desk.now ? { text: classes.notThisClass } : undefined;
}

async function withClashes(
  desk: Desk,
  scheduled: ScheduledClass,
  by: string,
  text: string,
): Promise<Message> {
  return { text: [text, ...(await clashesWith(desk, scheduled, by))].join('\n') };
}

async function tellOthers(desk: Desk, scheduled: ScheduledClass, by: string, text: string): Promise<void> {
  for (const each of whoHears(desk, scheduled, by))
    await tell(desk, `changed:${scheduled.id}:${desk.newId()}:${each}`, each, text);
}

async function tell(desk: Desk, key: string, to: string, text: string): Promise<void> {
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to,
    action: { kind: 'post' },
    payload: { text },
    causedAt: desk.now,
  });
}
