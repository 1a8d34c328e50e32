import { type Muscle, muscles } from '../catalogue/muscles.ts';
import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { publishedRules } from './published-rules.ts';

export type MuscleTrainedLately = FindingBase & {
  readonly code: 'muscle-trained-lately';
  readonly muscles: readonly Muscle[];
  /** The other class of a shared slot habit. */
  readonly title: string;
  readonly instant: string;
};

/** A class that shares a slot habit trains the same muscles hard within 48 hours. */
export function muscleTrainedLately(
  { load }: CheckSubject,
  context: Context,
): readonly MuscleTrainedLately[] {
  const { recoverySets } = context.settings.checks;
  const found = (context.neighbours ?? []).map((neighbour) => ({
    neighbour,
    shared: muscles.filter(
      (muscle) =>
        (load.setsByMuscle[muscle] ?? 0) >= recoverySets &&
        (neighbour.setsByMuscle[muscle] ?? 0) >= recoverySets,
    ),
  }));
  const most = found.toSorted((one, other) => other.shared.length - one.shared.length)[0];
  return most === undefined || most.shared.length === 0
    ? []
    : [
        {
          code: 'muscle-trained-lately',
          severity: 'good to know',
          lines: [],
          source: publishedRules.daysBetween,
          muscles: most.shared,
          title: most.neighbour.title,
          instant: most.neighbour.instant,
        },
      ];
}
