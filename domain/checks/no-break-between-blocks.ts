import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { LetteredBlock } from '../plan/plan.ts';
import type { Segment } from '../timing/timeline.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith, secondsToGrow } from './mends.ts';

export type NoBreakBetweenBlocks = FindingBase & { readonly code: 'no-break-between-blocks' };

/** A block ends in work and the next begins with work in the same second. */
export function noBreakBetweenBlocks(
  subject: CheckSubject,
  context: Context,
): readonly NoBreakBetweenBlocks[] {
  const { segments } = subject.timeline;
  const behind = segments.flatMap((segment, index) => blockThatRunsOn(segment, segments[index + 1], subject));
  if (behind.length === 0) {
    return [];
  }
  const seconds = context.settings.checks.breakBetweenBlocksSeconds;
  const fits = secondsToGrow(subject, context) >= seconds * behind.length;
  const lastLetters = behind.flatMap(({ letters }) => letters.at(-1)?.id ?? []);
  return [
    {
      code: 'no-break-between-blocks',
      severity: 'look at',
      lines: lastLetters,
      source: 'common practice',
      ...mendWith(
        fits
          ? lastLetters.map((id) => `rest after ${labelOf(subject.plan, id)} ${seconds}`).join('\n')
          : undefined,
      ),
    },
  ];
}

function blockThatRunsOn(
  segment: Segment,
  next: Segment | undefined,
  { plan }: CheckSubject,
): readonly LetteredBlock[] {
  const block = plan.blocks[segment.block];
  return next !== undefined &&
    segment.kind === 'work' &&
    next.kind === 'work' &&
    next.block !== segment.block &&
    block !== undefined &&
    hasLetters(block)
    ? [block]
    : [];
}
