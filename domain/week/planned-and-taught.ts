import type { MuscleLoad } from '../ports.ts';
import type { Settings } from '../settings.ts';
import { type JudgedClass, slotNameOf, wasHeld } from './week-class.ts';

/** What was planned for a week against what was taught. Sets are of all muscles, of classes with a plan. */
export type PlannedAndTaught = {
  readonly planned: number;
  readonly taught: number;
  readonly plannedSets: number;
  readonly taughtSets: number;
  /** Slots whose class was taught with changes; its sets are those of its plan. */
  readonly withChanges: readonly string[];
};

export function plannedAndTaught(classes: readonly JudgedClass[], settings: Settings): PlannedAndTaught {
  const planned = classes.filter((one) => one.planned !== undefined);
  const taught = planned.filter(wasHeld);
  return {
    planned: planned.length,
    taught: taught.length,
    plannedSets: sumOf(planned.flatMap((one) => one.planned ?? [])),
    taughtSets: sumOf(taught.flatMap(({ load = [] }) => load)),
    withChanges: taught
      .filter(({ scheduled: { outcome } }) => outcome?.how === 'with changes')
      .map(({ scheduled }) => slotNameOf(scheduled, settings)),
  };
}

function sumOf(rows: readonly MuscleLoad[]): number {
  return rows.reduce((sum, { sets }) => sum + sets, 0);
}
