import { assumedAfterSeconds } from '../calendar/countdown-for.ts';
import { type IsoWeek, weekdays } from '../calendar/iso-week.ts';
import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import { instantAfter, inZone } from '../calendar/wall-time.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { MuscleLoad } from '../ports.ts';
import type { Settings } from '../settings.ts';

/**
 * A class of the week with the load counted for it. Without `load` and patterns it is unknown, not zero;
 * with patterns alone (`taught: squat, hinge`) it counts for those.
 */
export type WeekClass = {
  readonly scheduled: ScheduledClass;
  readonly load?: readonly MuscleLoad[];
  readonly setsByPattern?: Readonly<Record<string, number>>;
  /** The load of the plan that stood for it, whatever became of the class. */
  readonly planned?: readonly MuscleLoad[];
};

/** What of a week was held, and how that is known. */
export type Held = 'said' | 'assumed' | 'cancelled' | 'not taught' | 'to come' | 'not known';

/** A class nobody spoke of counts as taught as planned three hours after its end, unless nobody took it. */
function heldAs({ state, outcome, startsAt, slotSeconds, coverOpen }: ScheduledClass, now: string): Held {
  if (state === 'cancelled') return 'cancelled';
  if (state === 'not taught' || outcome?.how === 'not taught') return 'not taught';
  if (outcome !== undefined) return outcome.how === 'as planned, assumed' ? 'assumed' : 'said';
  if (state === 'taught') return 'said';
  const counts = instantAfter(startsAt.instant, slotSeconds + assumedAfterSeconds);
  if (Date.parse(counts) > Date.parse(now)) return 'to come';
  return coverOpen === true ? 'not known' : 'assumed';
}

/** A class with what is asked of it again and again: how it was held, on which day, its sets by muscle. */
export type JudgedClass = WeekClass & {
  readonly held: Held;
  /** In the studio's zone, from 0 for Monday. */
  readonly day: number;
  readonly setsByMuscle: ReadonlyMap<Muscle, number>;
};

export function judge(one: WeekClass, { now, settings }: WeekContext): JudgedClass {
  return {
    ...one,
    held: heldAs(one.scheduled, now),
    day: inZone(one.scheduled.startsAt.instant, settings.zone).weekday - 1,
    setsByMuscle: new Map((one.load ?? []).map(({ muscle, sets }) => [muscle, sets])),
  };
}

/** Whether a class counts as taught. */
export function wasHeld({ held }: JudgedClass): boolean {
  return held === 'said' || held === 'assumed';
}

export function hasLoad({ load }: WeekClass): boolean {
  return load !== undefined && load.length > 0;
}

export function setsIn(classes: readonly JudgedClass[], muscle: Muscle): number {
  return classes.reduce((sum, { setsByMuscle }) => sum + (setsByMuscle.get(muscle) ?? 0), 0);
}

/** Sets of one muscle a day, Monday first. */
export function setsByDay(classes: readonly JudgedClass[], muscle: Muscle): readonly number[] {
  return weekdays.map((_, day) =>
    setsIn(
      classes.filter((one) => one.day === day),
      muscle,
    ),
  );
}

/** The timetable's name for the slot, else the class's own; `single class` for one without either. */
export function slotNameOf({ slotId, title }: ScheduledClass, settings: Settings): string {
  return settings.slots.find(({ id }) => id === slotId)?.name ?? title ?? 'single class';
}

/** What the balance of a week needs: the week, the time, and the studio. */
export type WeekContext = { readonly week: IsoWeek; readonly now: string; readonly settings: Settings };
