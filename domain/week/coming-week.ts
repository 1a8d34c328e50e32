import type { IsoWeek } from '../calendar/iso-week.ts';
import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { MuscleLoad } from '../ports.ts';
import type { Settings } from '../settings.ts';
import { slotNameOf } from './week-class.ts';

/** A class of the coming week with the load of its approved version, where there is one. */
export type ComingClass = {
  readonly scheduled: ScheduledClass;
  readonly standing: 'approved' | 'waits' | 'draft' | 'no plan';
  readonly approvedLoad?: readonly MuscleLoad[];
};

/** The coming week as approved so far. `short`: first-priority muscles that approved plans leave short. */
export type ComingWeek = {
  readonly week: IsoWeek;
  readonly classes: number;
  readonly approved: number;
  /** Slots whose class has no approved plan. */
  readonly open: readonly { readonly slotName: string; readonly standing: ComingClass['standing'] }[];
  readonly short: readonly { readonly muscle: Muscle; readonly sets: number }[];
};

export function comingWeek(week: IsoWeek, classes: readonly ComingClass[], settings: Settings): ComingWeek {
  const { dose, firstPriority } = settings;
  const live = classes.filter(({ scheduled: { state } }) => state !== 'cancelled');
  const rows = live.flatMap(({ approvedLoad = [] }) => approvedLoad);
  const approved = live.filter(({ approvedLoad }) => approvedLoad !== undefined).length;
  const doses = firstPriority.map((muscle) => ({
    muscle,
    sets: rows.filter((row) => row.muscle === muscle).reduce((sum, { sets }) => sum + sets, 0),
  }));
  return {
    week,
    classes: live.length,
    approved,
    open: live
      .filter(({ approvedLoad }) => approvedLoad === undefined)
      .map(({ scheduled, standing }) => ({ slotName: slotNameOf(scheduled, settings), standing })),
    short:
      approved === 0 ? [] : doses.filter(({ sets }) => sets < dose.low).toSorted((a, b) => a.sets - b.sets),
  };
}
