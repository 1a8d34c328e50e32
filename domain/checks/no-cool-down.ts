import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { CheckSubject } from './check-subject.ts';
import { endingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, minutes, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type NoCoolDown = FindingBase & {
  readonly code: 'no-cool-down';

  readonly leastSeconds: number;
};

/** The class ends in work, with no cool-down, mobility or song behind it. */
export function noCoolDown(subject: CheckSubject, context: Context): readonly NoCoolDown[] {
  const leastSeconds = context.settings.floors.leastCoolDownSeconds;
  if (!subject.plan.blocks.some(hasLetters) || endingOf(subject).blocks.length > 0) {
    return [];
  }
  const fits = secondsToGrow(subject, context) >= leastSeconds;
  return [
    {
      code: 'no-cool-down',
      severity: 'look at',
      lines: [],
      source: publishedRules.warmUpAndCoolDown,
      leastSeconds,
      ...mendWith(fits ? `cool-down ${minutes(leastSeconds)}` : undefined),
    },
  ];
}
