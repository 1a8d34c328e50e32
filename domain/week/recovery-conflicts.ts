import { type Muscle, muscles } from '../catalogue/muscles.ts';
import type { Settings } from '../settings.ts';
import { slotHabitsOf } from './slot-habits.ts';
import { type JudgedClass, slotNameOf, wasHeld } from './week-class.ts';

/** Two classes of a shared slot habit that trained the same muscles hard with less than 48 hours between. */
export type RecoveryConflict = {
  readonly first: string;
  readonly second: string;
  /** Whole hours from start to start. */
  readonly hours: number;
  readonly muscles: readonly Muscle[];
};

/** 48 h between sessions of a muscle group: Garber CE et al. Med Sci Sports Exerc 2011;43:1334–59. */
const recoveryHours = 48;

/** `classes` in order of start. */
export function recoveryConflicts(
  classes: readonly JudgedClass[],
  settings: Settings,
): readonly RecoveryConflict[] {
  const held = classes.filter(wasHeld);
  const habits = slotHabitsOf(settings);
  return held.flatMap((first, place) =>
    held.slice(place + 1).flatMap((second): readonly RecoveryConflict[] => {
      const hours = hoursBetween(first, second);
      const shared = hours < recoveryHours && shareHabit(first, second, habits);
      const hard = shared ? trainedHard(first, second, settings.checks.recoverySets) : [];
      return hard.length === 0
        ? []
        : [
            {
              first: slotNameOf(first.scheduled, settings),
              second: slotNameOf(second.scheduled, settings),
              hours: Math.floor(hours),
              muscles: hard,
            },
          ];
    }),
  );
}

function hoursBetween({ scheduled: first }: JudgedClass, { scheduled: second }: JudgedClass): number {
  return (Date.parse(second.startsAt.instant) - Date.parse(first.startsAt.instant)) / 3_600_000;
}

function shareHabit(
  { scheduled: { slotId: first } }: JudgedClass,
  { scheduled: { slotId: second } }: JudgedClass,
  habits: Settings['slotHabits'],
): boolean {
  return (
    first !== undefined &&
    second !== undefined &&
    first !== second &&
    habits.some(({ slotIds }) => slotIds.includes(first) && slotIds.includes(second))
  );
}

function trainedHard(first: JudgedClass, second: JudgedClass, sets: number): readonly Muscle[] {
  return muscles.filter(
    (muscle) =>
      (first.setsByMuscle.get(muscle) ?? 0) >= sets && (second.setsByMuscle.get(muscle) ?? 0) >= sets,
  );
}
