import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { clockText } from '../plan/clock-text.ts';
import type { Plan } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import { endingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type NoCoolDown = FindingBase & {
  readonly code: 'no-cool-down';

  readonly leastSeconds: number;
};

/** Rest of Tabata I et al., Med Sci Sports Exerc 1996;28:1327–30. */
const tabataRestSeconds = 10;

/** The class ends in work, with no cool-down, mobility or song behind it. */
export function noCoolDown(subject: CheckSubject, context: Context): readonly NoCoolDown[] {
  const leastSeconds = context.settings.floors.leastCoolDownSeconds;
  if (!subject.plan.blocks.some(hasLetters) || endingOf(subject).blocks.length > 0) {
    return [];
  }
  const fits = secondsToGrow(subject, context) >= leastSeconds + restBrought(subject.plan);
  return [
    {
      code: 'no-cool-down',
      severity: 'look at',
      lines: [],
      source: publishedRules.warmUpAndCoolDown,
      leastSeconds,
      ...mendWith(fits ? `cool-down ${clockText(leastSeconds)}` : undefined),
    },
  ];
}

/** The longest rest behind a last bout, which stands once a block follows. */
function restBrought({ blocks }: Plan): number {
  const last = blocks.findLast(hasLetters);
  const own = last?.letters.at(-1)?.restSeconds ?? 0;
  const isTimed =
    last?.kind === 'circuit' ||
    last?.kind === 'straight' ||
    last?.kind === 'stations' ||
    last?.kind === 'finisher';
  return Math.max(
    own,
    ...(isTimed ? last.intervals.map(({ restSeconds }) => restSeconds) : [tabataRestSeconds]),
  );
}
