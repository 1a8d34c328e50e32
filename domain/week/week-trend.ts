import type { IsoWeek } from '../calendar/iso-week.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { WeekReport } from './week-report.ts';

/** Sets by muscle over some weeks, the oldest first; undefined for a week of which no load is known. */
export type WeekTrend = {
  readonly weeks: readonly IsoWeek[];
  readonly setsByMuscle: ReadonlyMap<Muscle, readonly (number | undefined)[]>;
};

export function weekTrend(reports: readonly WeekReport[]): WeekTrend {
  const muscles = reports.at(-1)?.muscles.map(({ muscle }) => muscle) ?? [];
  return {
    weeks: reports.map(({ week }) => week),
    setsByMuscle: new Map(
      muscles.map((muscle) => [
        muscle,
        reports.map(({ trust, muscles: rows }) =>
          trust.withPlan === 0 ? undefined : (rows.find((row) => row.muscle === muscle)?.sets ?? 0),
        ),
      ]),
    ),
  };
}
