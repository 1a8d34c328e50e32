import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';

export type OpenLineLeft = FindingBase & { readonly code: 'open-line-left'; readonly count: number };

/** A plan sent for review still has lines that name no move. */
export function openLineLeft({ plan }: CheckSubject, context: Context): readonly OpenLineLeft[] {
  const open = plannedLines(plan).filter(({ planned }) => planned.choice.kind === 'open');
  if (context.sendingForReview !== true || open.length === 0) {
    return [];
  }
  return [
    {
      code: 'open-line-left',
      severity: 'must fix',
      lines: open.map(({ planned }) => planned.id),
      source: 'common practice',
      count: open.length,
    },
  ];
}
