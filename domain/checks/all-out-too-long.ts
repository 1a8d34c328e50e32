import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { publishedRules } from './published-rules.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type AllOutTooLong = FindingBase & {
  readonly code: 'all-out-too-long';
  readonly seconds: number;
  readonly mostSeconds: number;
};

/** At level 1 or for beginners: an AMRAP, for-time, ladder or tabata block that lasts too long. */
export function allOutTooLong(subject: CheckSubject, context: Context): readonly AllOutTooLong[] {
  const { plan, timeline } = subject;
  const mostSeconds = context.settings.checks.allOutBeginnersSeconds;
  if (!isForBeginners(plan)) {
    return [];
  }
  return timeline.blocks
    .filter(({ block }) => ['amrap', 'for time', 'ladder', 'tabata'].includes(plan.blocks[block]?.kind ?? ''))
    .map(({ block, startSeconds, endSeconds }) => ({ block, seconds: endSeconds - startSeconds }))
    .filter(({ seconds }) => seconds > mostSeconds)
    .slice(0, 1)
    .map(({ block, seconds }) => ({
      code: 'all-out-too-long',
      severity: 'look at',
      lines: linesOfTurns(turnsOf(subject, context).filter(({ blockIndex }) => blockIndex === block)),
      source: publishedRules.rhabdomyolysis,
      seconds,
      mostSeconds,
    }));
}
