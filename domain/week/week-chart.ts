import type { Muscle } from '../catalogue/muscles.ts';
import type { DoseSettings } from '../settings.ts';
import type { WeekReport } from './week-report.ts';

/** Neutral data of the week's chart: sets of each first-priority muscle, fewest first, and the least wanted; in halves, as they are said. */
export type WeekChart = {
  readonly bars: readonly { readonly muscle: Muscle; readonly sets: number }[];
  readonly leastSets: number;
};

export function weekChart({ muscles }: WeekReport, { low }: DoseSettings): WeekChart {
  const bars = muscles
    .filter(({ priority }) => priority === 'first')
    .map(({ muscle, sets }) => ({ muscle, sets: Math.round(sets * 2) / 2 }))
    .toSorted((a, b) => a.sets - b.sets);
  return { bars, leastSets: low };
}
