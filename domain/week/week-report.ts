import type { IsoWeek } from '../calendar/iso-week.ts';
import type { ClassId, PlanId, ZonedMoment } from '../calendar/scheduled-class.ts';
import type { Muscle, MuscleGroup } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';

/** Ranges of weekly sets, in the literature's words. */
export type DoseRange = 'none' | 'low' | 'moderate' | 'high' | 'very high';

/**
 * How far to trust a week. Counts of classes: `classes` were held, by what was said or assumed; those in
 * none of `withPlan` and `patternsOnly` are unknown, not zero.
 */
export type Trust = {
  readonly classes: number;
  readonly withPlan: number;
  readonly assumed: number;
  readonly patternsOnly: number;
  readonly cancelled: number;
  readonly notTaught: number;
};

/** Classes of a week that are still to come, and how many of them have a plan. */
export type ToCome = { readonly classes: number; readonly withPlan: number };

/** One muscle in one week. `days` counts days with at least one set; `setsByDay` is Monday first. */
export type MuscleWeek = {
  readonly muscle: Muscle;
  readonly sets: number;
  readonly tensionSeconds: number;
  readonly days: number;
  readonly setsByDay: readonly number[];
  readonly range: DoseRange;
  readonly priority: 'first' | 'second';
};

export type UnderTrained =
  | {
      readonly kind: 'muscle';
      readonly muscle: Muscle;
      readonly sets: number;
      readonly missingSets: number;
      readonly range: 'none' | 'low';
      /** The slots that gave the sets there were, most first. */
      readonly from: readonly SlotSets[];
    }
  | { readonly kind: 'group'; readonly group: MuscleGroup; readonly days: number };

export type SlotSets = { readonly slotName: string; readonly sets: number };

/** One thing to do about it: lines of the edit language for a named class to come. */
export type WeekMend = {
  readonly classId: ClassId;
  readonly slotName: string;
  readonly startsAt: ZonedMoment;
  readonly edit: string;
  /** The name of the move that the edit takes out. */
  readonly replaces: string;
  readonly muscle: Muscle;
  readonly planId: PlanId;
  /** The version the edit is made on. */
  readonly version: number;
  /** Sets of the muscle that the class has more with the edit. */
  readonly gainedSets: number;
};

/** What to plan into a class that has no plan yet. */
export type PlanWish = {
  readonly slotName: string;
  readonly startsAt: ZonedMoment;
  /** Names of moves of the catalogue. */
  readonly moves: readonly string[];
};

/** Names of slots, in order of the week, each once. */
export type WeekExceptions = {
  readonly ranOver: readonly string[];
  readonly cutShort: readonly string[];
  readonly cancelled: readonly string[];
  readonly notTaught: readonly string[];
  /** Taught by another than the timetable names. */
  readonly covered: readonly string[];
};

/** From which slot the week's work came; `sets` over all muscles. */
export type SlotWeek = { readonly slotName: string; readonly classes: number; readonly sets: number };

/** What a member who comes to these slots was left short of. */
export type HabitWeek = {
  readonly name: string;
  readonly slotIds: readonly string[];
  /** First-priority muscles with none or low, most missing first. */
  readonly short: readonly { readonly muscle: Muscle; readonly sets: number; readonly missingSets: number }[];
  readonly missingSets: number;
  readonly groupsUnderTwoDays: readonly MuscleGroup[];
  /** Muscles above the upper range: said of habits alone, since it is the dose of one person. */
  readonly veryHigh: readonly Muscle[];
};

/** Of all habits whose classes are known: the one left shortest, the middle one, the one left least short. */
export type HabitRange = {
  readonly counted: number;
  readonly worst: HabitWeek;
  readonly median: HabitWeek;
  readonly best: HabitWeek;
};

export type WeekReport = {
  /** ISO week, `2026-W47`. */
  readonly week: IsoWeek;
  readonly trust: Trust;
  readonly muscles: readonly MuscleWeek[];
  /** Classes that had a pattern, those known by their patterns alone included. */
  readonly classesByPattern: Readonly<Partial<Record<Pattern, number>>>;
  /** Muscles, most missing first, then groups. Empty where no class's load is known. */
  readonly underTrained: readonly UnderTrained[];
  readonly slots: readonly SlotWeek[];
  readonly exceptions: WeekExceptions;
  readonly mend?: WeekMend;
  /** Only where there is no edit to propose. */
  readonly wish?: PlanWish;
  readonly habits?: HabitRange;
};
