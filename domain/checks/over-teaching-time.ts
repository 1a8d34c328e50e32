import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';

export type OverTeachingTime = FindingBase & {
  readonly code: 'over-teaching-time';
  readonly overSeconds: number;
  readonly teachingSeconds: number;
};

/** The class is longer than the time there is to teach it. The first exact fit mends it. */
export function overTeachingTime({ fit }: CheckSubject): readonly OverTeachingTime[] {
  if (fit.spareSeconds >= 0) {
    return [];
  }
  return [
    {
      code: 'over-teaching-time',
      severity: 'must fix',
      lines: [],
      source: 'common practice',
      overSeconds: -fit.spareSeconds,
      teachingSeconds: fit.teachingSeconds,
      ...mendWith(fit.proposals[0]?.edit),
    },
  ];
}
