import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import { clockText } from '../plan/clock-text.ts';
import type { Plan } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith } from './mends.ts';
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
  const tooLong = timeline.blocks
    .filter(({ block }) => ['amrap', 'for time', 'ladder', 'tabata'].includes(plan.blocks[block]?.kind ?? ''))
    .map(({ block, startSeconds, endSeconds }) => ({ block, seconds: endSeconds - startSeconds }))
    .filter(({ seconds }) => seconds > mostSeconds);
  return tooLong.slice(0, 1).map(({ block, seconds }) => ({
    code: 'all-out-too-long',
    severity: 'look at',
    lines: linesOfTurns(turnsOf(subject, context).filter(({ blockIndex }) => blockIndex === block)),
    source: publishedRules.rhabdomyolysis,
    seconds,
    mostSeconds,
    ...mendWith(tooLong.length === 1 ? shorter(plan, block, mostSeconds / seconds, mostSeconds) : undefined),
  }));
}

/** The block at its most: by its length, or by as many of its eights as fit. */
function shorter(plan: Plan, place: number, share: number, mostSeconds: number): string | undefined {
  const block = plan.blocks[place];
  if (block === undefined || !hasLetters(block) || block.letters[0] === undefined) return undefined;
  const label = labelOf(plan, block.letters[0].id);
  if (block.kind !== 'tabata') return `block ${label} ${clockText(mostSeconds)}`;
  const times = Math.floor(block.times * share);
  return times === 0 ? undefined : `rounds ${label} x${times}`;
}
