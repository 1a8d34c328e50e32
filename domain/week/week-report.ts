import type { Muscle, MuscleGroup } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';

/** Ranges of weekly sets, in the literature's words. */
export type DoseRange = 'none' | 'low' | 'moderate' | 'high' | 'very high';

/** How far to trust a week. Counts of classes. */
export type Trust = {
  readonly classes: number;
  readonly withPlan: number;
  readonly assumed: number;
  readonly patternsOnly: number;
  readonly cancelled: number;
  readonly notTaught: number;
};

/** One muscle in one week. `days` counts days with at least one set. */
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
    }
  | { readonly kind: 'group'; readonly group: MuscleGroup; readonly days: number };

/** One thing to do about it: lines of the edit language for a named class to come. */
export type WeekMend = {
  readonly classId: string;
  readonly slotName: string;
  readonly edit: string;
  readonly muscle: Muscle;
};

export type WeekReport = {
  /** ISO week, `2026-W47`. */
  readonly week: string;
  readonly trust: Trust;
  readonly muscles: readonly MuscleWeek[];
  readonly setsByPattern: Readonly<Partial<Record<Pattern, number>>>;
  readonly underTrained: readonly UnderTrained[];
  /** From which slots the week's work came. */
  readonly slots: readonly { readonly slotName: string; readonly classes: number; readonly sets: number }[];
  readonly mend?: WeekMend;
};
