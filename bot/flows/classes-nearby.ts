import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Context } from '../../domain/context.ts';
import { hasLetters } from '../../domain/plan/blocks-of.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import { slotHabitsOf } from '../../domain/week/slot-habits.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';
import { standingVersion } from './standing-version.ts';

/** 48 hours between two sessions of a muscle group: Garber CE et al. Med Sci Sports Exerc 2011;43:1334–59. */
const recoveryMilliseconds = 48 * 3_600_000;

/** What the classes around one class tell its checks: shared muscles within 48 hours, and the slot's last moves. */
export async function classesNearby(
  desk: Desk,
  scheduled: ScheduledClass | undefined,
): Promise<Pick<Context, 'neighbours' | 'lastTime'>> {
  if (scheduled?.slotId === undefined) return {};
  const week = isoWeekOf(scheduled.startsAt.instant, desk.settings.zone);
  const around: ScheduledClass[] = [];
  for (const offset of [-1, 0, 1]) around.push(...(await classesInWeek(desk, weekAfter(week, offset))));
  const others = around.filter(
    ({ id, state }) => id !== scheduled.id && state !== 'cancelled' && state !== 'not taught',
  );
  const lastTime = others.findLast(
    ({ slotId, startsAt }) => slotId === scheduled.slotId && startsAt.instant < scheduled.startsAt.instant,
  );
  const lastPlan = lastTime === undefined ? undefined : (await standingVersion(desk, lastTime))?.plan;
  return {
    neighbours: await neighboursOf(desk, scheduled, others),
    ...(lastPlan === undefined ? {} : { lastTime: { moveIds: new Set(movesOf(lastPlan)) } }),
  };
}

async function neighboursOf(
  desk: Desk,
  scheduled: ScheduledClass,
  others: readonly ScheduledClass[],
): Promise<NonNullable<Context['neighbours']>> {
  const habits = slotHabitsOf(desk.settings).filter(({ slotIds }) =>
    slotIds.includes(scheduled.slotId ?? ''),
  );
  const shared = new Set(habits.flatMap(({ slotIds }) => slotIds));
  const start = Date.parse(scheduled.startsAt.instant);
  const near = others.filter(
    ({ slotId, startsAt }) =>
      slotId !== undefined &&
      shared.has(slotId) &&
      Math.abs(Date.parse(startsAt.instant) - start) < recoveryMilliseconds,
  );
  const told: NonNullable<Context['neighbours']>[number][] = [];
  for (const other of near) {
    const version = await standingVersion(desk, other);
    if (version === undefined) continue;
    told.push({
      title: other.title ?? desk.words.card.untitled,
      instant: other.startsAt.instant,
      setsByMuscle: Object.fromEntries(version.load.map(({ muscle, sets }) => [muscle, sets])),
    });
  }
  return told;
}

function movesOf(plan: Plan): readonly string[] {
  return plan.blocks
    .filter(hasLetters)
    .flatMap(({ letters }) => letters.flatMap(({ moves }) => moves))
    .flatMap(({ choice }) => (choice.kind === 'move' ? [choice.moveId] : []));
}
