import { type BlockReading, clauseOf, tell } from './block-reading.ts';
import type { PlacedClause } from './clauses.ts';

/** `in pairs, swap` or `in pairs, one rests`; without either it is asked. */
export function readPairs(
  reading: BlockReading,
  clauses: readonly PlacedClause[],
): { readonly pairs?: 'swap' | 'one rests' } {
  const clause = clauseOf(clauses, 'in pairs');
  if (clause === undefined) return {};
  if (clause.how === undefined) {
    tell(reading, clause.span, { code: 'pairs-asked' });
    return {};
  }
  return { pairs: clause.how };
}
