import type { Context } from '../context.ts';
import { clockText } from '../plan/clock-text.ts';

import type { CheckSubject } from './check-subject.ts';
import { endingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type ShortCoolDown = FindingBase & {
  readonly code: 'short-cool-down';
  readonly seconds: number;
  readonly leastSeconds: number;
};

/** The cool-down, with any mobility and songs around it, is below the studio's least. */
export function shortCoolDown(subject: CheckSubject, context: Context): readonly ShortCoolDown[] {
  const leastSeconds = context.settings.floors.leastCoolDownSeconds;
  const { blocks, seconds } = endingOf(subject);
  const own = blocks.find(({ kind }) => kind === 'cool-down');
  if (blocks.length === 0 || seconds >= leastSeconds) {
    return [];
  }
  const missingSeconds = leastSeconds - seconds;
  const fits = own?.length.kind === 'fixed' && secondsToGrow(subject, context) >= missingSeconds;
  return [
    {
      code: 'short-cool-down',
      severity: 'look at',
      lines: own === undefined ? [] : [own.id],
      source: publishedRules.warmUpAndCoolDown,
      seconds,
      leastSeconds,
      ...mendWith(fits ? `cool-down ${clockText(own.length.seconds + missingSeconds)}` : undefined),
    },
  ];
}
