import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import { openingOf } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { moveById } from './move-facts.ts';

export type WarmUpMissesPatterns = FindingBase & { readonly code: 'warm-up-misses-patterns' };

/**
 * No move of the warm-up shares a pattern or a muscle with the first block. Judged only where every line of
 * the warm-up is a known move: words may mean anything.
 */
export function warmUpMissesPatterns(
  subject: CheckSubject,
  context: Context,
): readonly WarmUpMissesPatterns[] {
  const { blocks } = openingOf(subject);
  const items = blocks.flatMap((block) => block.items);
  const prepared = items.flatMap(({ what }) =>
    what.kind === 'move' ? (moveById(what.moveId, context) ?? []) : [],
  );
  const lines = plannedLines(subject.plan);
  const firstBlock = lines[0]?.blockIndex;
  const coming = lines
    .filter(({ blockIndex }) => blockIndex === firstBlock)
    .flatMap(({ planned }) => knownMove(planned, context) ?? []);
  const judged = items.length >= 2 && prepared.length === items.length && coming.length > 0;
  if (!judged || prepared.some((before) => coming.some((move) => prepares(before, move)))) {
    return [];
  }
  return [
    {
      code: 'warm-up-misses-patterns',
      severity: 'look at',
      lines: blocks.map(({ id }) => id),
      source: 'common practice',
    },
  ];
}

function prepares(before: Move, move: Move): boolean {
  const touched = [...before.primeMovers, ...before.assisting];
  return before.pattern === move.pattern || move.primeMovers.some((muscle) => touched.includes(muscle));
}
