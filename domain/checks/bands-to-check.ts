import type { Context } from '../context.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';

export type BandsToCheck = FindingBase & { readonly code: 'bands-to-check' };

/** Long bands and straps: wear and anchors are looked at before people come. */
export function bandsToCheck({ plan }: CheckSubject, context: Context): readonly BandsToCheck[] {
  const lines = [...movesByLine(plan, context).values()].flatMap(({ planned, kit }) =>
    kit.some(({ item }) => item === 'long band' || item === 'suspension strap') ? [planned.id] : [],
  );
  return lines.length === 0
    ? []
    : [{ code: 'bands-to-check', severity: 'good to know', lines, source: 'common practice' }];
}
