import { weekdays } from '../calendar/iso-week.ts';
import { sessionLoad, type WeekStrain, weekStrain } from '../load/session-load.ts';
import { type JudgedClass, wasHeld } from './week-class.ts';

/**
 * The week's session load, for someone who came to every class: the estimates given for the group × minutes,
 * summed a day. `told` of `held` classes have an estimate; the others count for nothing.
 */
export type StrainOfWeek = WeekStrain & {
  readonly told: number;
  readonly held: number;
  /** Monday first. */
  readonly byDay: readonly number[];
};

/** Undefined where no class has an estimate. */
export function strainOfWeek(classes: readonly JudgedClass[]): StrainOfWeek | undefined {
  const held = classes.filter(wasHeld);
  const told = held.flatMap(({ day, scheduled: { outcome, slotSeconds } }) =>
    outcome?.effort === undefined ? [] : [{ day, load: sessionLoad(outcome.effort, slotSeconds) }],
  );
  if (told.length === 0) return undefined;
  const byDay = weekdays.map((_, day) =>
    told.filter((one) => one.day === day).reduce((sum, { load }) => sum + load, 0),
  );
  return { ...weekStrain(byDay), told: told.length, held: held.length, byDay };
}
