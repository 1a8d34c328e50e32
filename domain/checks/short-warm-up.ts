import type { Context } from '../context.ts';
import { clockText } from '../plan/clock-text.ts';

import type { CheckSubject } from './check-subject.ts';
import { openingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type ShortWarmUp = FindingBase & {
  readonly code: 'short-warm-up';
  readonly seconds: number;
  readonly leastSeconds: number;
};

/** The warm-up, with any mobility and songs around it, is below the studio's least. */
export function shortWarmUp(subject: CheckSubject, context: Context): readonly ShortWarmUp[] {
  const leastSeconds = context.settings.floors.leastWarmUpSeconds;
  const { blocks, seconds } = openingOf(subject);
  const own = blocks.find(({ kind }) => kind === 'warm-up');
  if (blocks.length === 0 || seconds >= leastSeconds) {
    return [];
  }
  const missingSeconds = leastSeconds - seconds;
  const fits = own?.length.kind === 'fixed' && secondsToGrow(subject, context) >= missingSeconds;
  return [
    {
      code: 'short-warm-up',
      severity: 'look at',
      lines: own === undefined ? [] : [own.id],
      source: publishedRules.warmUpAndCoolDown,
      seconds,
      leastSeconds,
      ...mendWith(fits ? `warm-up ${clockText(own.length.seconds + missingSeconds)}` : undefined),
    },
  ];
}
