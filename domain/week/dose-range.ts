import { groupOfMuscle, type Muscle, type MuscleGroup, muscleGroups, muscles } from '../catalogue/muscles.ts';
import type { DoseSettings } from '../settings.ts';
import type { DoseRange } from './week-report.ts';

/** The range of a muscle's weekly sets; the cut-offs and their sources stand in `defaultSettings.dose`. */
export function doseRange(sets: number, { low, high, veryHigh }: DoseSettings): DoseRange {
  if (sets === 0) return 'none';
  if (sets < low) return 'low';
  if (sets < high) return 'moderate';
  return sets <= veryHigh ? 'high' : 'very high';
}

/**
 * Days a week that a guideline group wants: WHO 2020, Bull FC et al. Br J Sports Med 2020;54:1451–62, strength
 * work for all major muscle groups on 2 or more days.
 */
const leastDays = 2;

/** Groups trained on fewer days; a day counts where one of its muscles has at least one set. */
export function groupsUnderTwoDays(
  setsByDayOf: (muscle: Muscle) => readonly number[],
): readonly { readonly group: MuscleGroup; readonly days: number }[] {
  return muscleGroups
    .map((group) => {
      const days = muscles
        .filter((muscle) => groupOfMuscle[muscle] === group)
        .flatMap((muscle) => trainedDays(setsByDayOf(muscle)));
      return { group, days: new Set(days).size };
    })
    .filter(({ days }) => days < leastDays);
}

/** The days with at least one set, from 0 for Monday. */
export function trainedDays(setsByDay: readonly number[]): readonly number[] {
  return setsByDay.flatMap((sets, day) => (sets >= 1 ? [day] : []));
}
