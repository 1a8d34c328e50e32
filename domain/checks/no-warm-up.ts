import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { clockText } from '../plan/clock-text.ts';
import type { CheckSubject } from './check-subject.ts';
import { openingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type NoWarmUp = FindingBase & {
  readonly code: 'no-warm-up';

  readonly leastSeconds: number;
};

/** The work starts with no warm-up, mobility or song before it. */
export function noWarmUp(subject: CheckSubject, context: Context): readonly NoWarmUp[] {
  const leastSeconds = context.settings.floors.leastWarmUpSeconds;
  if (!subject.plan.blocks.some(hasLetters) || openingOf(subject).blocks.length > 0) {
    return [];
  }
  const fits = secondsToGrow(subject, context) >= leastSeconds;
  return [
    {
      code: 'no-warm-up',
      severity: 'look at',
      lines: [],
      source: publishedRules.warmUpAndCoolDown,
      leastSeconds,
      ...mendWith(fits ? `warm-up ${clockText(leastSeconds)}` : undefined),
    },
  ];
}
