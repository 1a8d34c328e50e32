import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import { labelOf, secondsToGrow } from './mends.ts';
import type { Turn } from './turn.ts';

/**
 * The line of explaining behind the block before these turns, where all of them are of one block, a block with
 * letters stands before it, and the class has the time.
 */
export function explainBefore(
  turns: readonly Turn[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const places = new Set(turns.map(({ blockIndex }) => blockIndex));
  const [place] = places;
  const seconds = context.settings.checks.explainNewMoveSeconds;
  if (place === undefined || places.size > 1 || seconds > secondsToGrow(subject, context)) return undefined;
  const before = subject.plan.blocks
    .slice(0, place)
    .flatMap((block) => ('letters' in block ? block.letters : []));
  const last = before.at(-1);
  return last && `explain after ${labelOf(subject.plan, last.id)} ${seconds}`;
}
