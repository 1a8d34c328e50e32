import { type BlockReading, clauseOf, tell } from './block-reading.ts';
import type { PlacedClause } from './clauses.ts';

/**
 * `in pairs, swap` or `in pairs, one rests`; without either it is asked. An EMOM and a tabata fix their rests,
 * so that one of a pair can't rest for as long as the other works.
 */
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
  if (clause.how === 'one rests' && (reading.kind === 'emom' || reading.kind === 'tabata')) {
    tell(reading, clause.span, { code: 'not-here', what: 'in pairs', block: reading.kind });
    return {};
  }
  return { pairs: clause.how };
}
