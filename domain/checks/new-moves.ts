import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { Turn } from './turn.ts';
import { turnsOf } from './turns-of.ts';

/**
 * The first turn of each move that this studio has not taught before. Empty where that is not known, and
 * until the studio has taught enough different moves for *new* to mean anything.
 */
export function newMoveTurns(subject: CheckSubject, context: Context): readonly Turn[] {
  const taught = context.movesTaught;
  if (taught === undefined || taught.size < context.settings.checks.knownMovesLeast) {
    return [];
  }
  const seen = new Set<string>();
  return turnsOf(subject, context).filter(({ move }) => {
    const isFirst = move !== undefined && !taught.has(move.id) && !seen.has(move.id);
    if (isFirst) {
      seen.add(move.id);
    }
    return isFirst;
  });
}

/** Whether explaining stands between the block before and the block of this turn, or inside that rest. */
export function isExplained(turn: Turn, { plan }: CheckSubject): boolean {
  const before = plan.blocks.slice(0, turn.blockIndex);
  const last = before.findLastIndex((block) => 'letters' in block);
  return before
    .slice(last + 1)
    .some((block) => 'explain' in block && (block.explain || block.kind === 'explain'));
}
