import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import { secondsToTheEnd } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';

export type TimeUnused = FindingBase & {
  readonly code: 'time-unused';
  readonly unusedSeconds: number;
  readonly teachingSeconds: number;
};

/** More of the teaching time is left over, or put on an overlong cool-down, than a class's small slack. */
export function timeUnused(subject: CheckSubject, context: Context): readonly TimeUnused[] {
  const { fit } = subject;
  const { unusedShareOfTeachingTime, longCoolDownSeconds } = context.settings.checks;
  const unusedSeconds = fit.spareSeconds + Math.max(0, secondsToTheEnd(subject) - longCoolDownSeconds);
  if (unusedSeconds <= fit.teachingSeconds * unusedShareOfTeachingTime) {
    return [];
  }
  return [
    {
      code: 'time-unused',
      severity: 'look at',
      lines: [],
      source: 'common practice',
      unusedSeconds,
      teachingSeconds: fit.teachingSeconds,
      ...mendWith(fit.spareSeconds > 0 ? fit.proposals[0]?.edit : undefined),
    },
  ];
}
