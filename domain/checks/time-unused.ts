import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';

export type TimeUnused = FindingBase & {
  readonly code: 'time-unused';
  readonly unusedSeconds: number;
  readonly teachingSeconds: number;
};

/** More of the teaching time is left over than a class's small slack. */
export function timeUnused({ fit }: CheckSubject, context: Context): readonly TimeUnused[] {
  if (fit.spareSeconds <= fit.teachingSeconds * context.settings.checks.unusedShareOfTeachingTime) {
    return [];
  }
  return [
    {
      code: 'time-unused',
      severity: 'look at',
      lines: [],
      source: 'common practice',
      unusedSeconds: fit.spareSeconds,
      teachingSeconds: fit.teachingSeconds,
      ...mendWith(fit.proposals[0]?.edit),
    },
  ];
}
