import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';
import { partInARow, type TiredPart } from './part-in-a-row.ts';

export type SamePartThreeInARow = FindingBase & {
  readonly code: 'same-part-three-in-a-row';
  readonly part: TiredPart;
};

/** Three moves in a row tire the lower back, the grip, the wrists or the shoulders. */
export function samePartThreeInARow(subject: CheckSubject, context: Context): readonly SamePartThreeInARow[] {
  const parts: readonly TiredPart[] = isForBeginners(subject.plan)
    ? ['grip', 'wrists', 'shoulders']
    : ['lower back', 'grip', 'wrists', 'shoulders'];
  const row = partInARow(parts, subject, context);
  return row === undefined
    ? []
    : [
        {
          code: 'same-part-three-in-a-row',
          severity: 'look at',
          lines: row.lines,
          source: 'common practice',
          part: row.part,
          ...mendWith(row.mend),
        },
      ];
}
