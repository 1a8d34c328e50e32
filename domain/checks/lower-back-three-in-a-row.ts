import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';
import { partInARow } from './part-in-a-row.ts';

export type LowerBackThreeInARow = FindingBase & { readonly code: 'lower-back-three-in-a-row' };

/** At level 1 or for beginners: three moves in a row load the lower back. */
export function lowerBackThreeInARow(
  subject: CheckSubject,
  context: Context,
): readonly LowerBackThreeInARow[] {
  const row = isForBeginners(subject.plan) ? partInARow(['lower back'], subject, context) : undefined;
  if (row === undefined) {
    return [];
  }
  return [
    {
      code: 'lower-back-three-in-a-row',
      severity: 'must fix',
      lines: row.lines,
      source: 'common practice',
      ...mendWith(row.mend),
    },
  ];
}
