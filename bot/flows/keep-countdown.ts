import { type TeamMoment, teamMomentAt } from '../../domain/calendar/countdown-for.ts';
import { type ClassToCome, endOf, factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import { nextInRoom } from '../../domain/calendar/next-in-room.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { renderCancelled, renderCountdown, renderMoved, renderOver } from '../blocks/countdown-message.ts';
import type { Desk, Message } from '../handling.ts';
import { countdownPlanOf } from './countdown-plan.ts';
import { changeMessage, keepTrue, newestOf } from './keep-message.ts';

/** The notice that posts the one message of a class at one start. */
export function countdownKey({ id, startsAt }: ScheduledClass): string {
  return `countdown:${id}@${startsAt.instant}`;
}

/**
 * The one message of a class: posted at its first moment, or at the next one that is still useful, changed
 * at each further moment, and changed at once when what it says has become untrue.
 */
export async function keepCountdown(
  desk: Desk,
  one: ClassToCome,
  classes: readonly ClassToCome[],
): Promise<void> {
  const { settings, now, words } = desk;
  if (settings.teamChannel === undefined) return;
  const { scheduled, plan } = one;
  const next = nextInRoom(one, classes);
  const facts = factsOfClass(scheduled, { ...desk, plan, ...(next === undefined ? {} : { next }) });
  const moment = teamMomentAt(scheduled, settings, now);
  const newest = await newestOf(desk, countdownKey(scheduled));
  if (newest === undefined) {
    if (moment === undefined || moment.kind === 'over' || !isOn(scheduled)) return;
    await desk.stores.notices.enqueue(desk.studioId, {
      key: countdownKey(scheduled),
      to: settings.teamChannel,
      action: { kind: 'post' },
      payload: renderCountdown(facts, moment, now, words),
      causedAt: now,
    });
    return;
  }
  if (scheduled.state === 'cancelled') return changeMessage(desk, newest, renderCancelled(facts, words));
  if (moment?.kind === 'over' || scheduled.state === 'not taught')
    return changeMessage(desk, newest, renderOver(facts, scheduled, words));
  const said = teamMomentAt(scheduled, settings, newest.causedAt);
  const isDue = rank(moment) > rank(said);
  const shown = isDue ? moment : (said ?? moment);
  if (shown === undefined) return;
  const says = (at: string) =>
    renderCountdown(facts, at === newest.causedAt ? (said ?? shown) : shown, at, words);
  await keepTrue(desk, newest, says, isDue);
  if (isDue && settings.countdownPosts) await postAnew(desk, scheduled, shown, says(now));
}

/** A post of its own, which notifies; only where a studio asks for it. */
async function postAnew(
  desk: Desk,
  scheduled: ScheduledClass,
  moment: TeamMoment,
  payload: Message,
): Promise<void> {
  const { teamChannel } = desk.settings;
  if (teamChannel === undefined) return;
  const name = moment.kind === 'countdown' ? `${moment.minutesBefore} min` : moment.kind;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${countdownKey(scheduled)}:${name}`,
    to: teamChannel,
    action: { kind: 'post' },
    payload,
    causedAt: desk.now,
  });
}

/** How far a countdown is. */
function rank(moment: TeamMoment | undefined): number {
  if (moment === undefined) return Number.NEGATIVE_INFINITY;
  if (moment.kind === 'over') return 2;
  return moment.kind === 'on now' ? 1 : -moment.minutesBefore;
}

/** Whether something of it may be said now: from its first moment on, and once more after its end. */
export function mayHaveCountdown(
  scheduled: ScheduledClass,
  since: string,
  { now, settings }: Pick<Desk, 'now' | 'settings'>,
): boolean {
  return teamMomentAt(scheduled, settings, now) !== undefined && since < endOf(scheduled);
}

/** The posted message of a class that is now at another time says where it went. */
export async function tellMoved(desk: Desk, before: ScheduledClass, after: ScheduledClass): Promise<void> {
  if (before.startsAt.instant === after.startsAt.instant) return;
  const newest = await newestOf(desk, countdownKey(before));
  if (newest === undefined) return;
  const facts = factsOfClass(before, { ...desk, plan: await countdownPlanOf(desk, before) });
  await changeMessage(desk, newest, renderMoved(facts, after.startsAt, desk.words));
}
