import { type Muscle, muscles } from '../catalogue/muscles.ts';
import type { MuscleLoad } from '../ports.ts';

/** Sets of one muscle, Monday first. */
export type MuscleDays = { readonly muscle: Muscle; readonly setsByDay: readonly number[] };

const daysInWeek = 7;

/**
 * Sets by muscle and day over the loads of a week's classes; `day` is 0 for Monday. Every first-priority
 * muscle has a row, others where they were trained.
 */
export function musclesByDay(
  loads: readonly { readonly day: number; readonly load: readonly MuscleLoad[] }[],
  firstPriority: readonly Muscle[],
): readonly MuscleDays[] {
  return muscles
    .map((muscle) => ({
      muscle,
      setsByDay: Array.from({ length: daysInWeek }, (_, day) =>
        loads
          .filter((each) => each.day === day)
          .flatMap(({ load }) => load)
          .reduce((sum, row) => (row.muscle === muscle ? sum + row.sets : sum), 0),
      ),
    }))
    .filter(({ muscle, setsByDay }) => firstPriority.includes(muscle) || setsByDay.some((sets) => sets > 0));
}
