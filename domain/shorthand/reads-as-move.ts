import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { readPlan } from './read-plan.ts';

/** Whether a class that names the move by these words is read as that move and nothing else. */
export function readsAsMove(words: string, move: Move, context: Context): boolean {
  const { plan, problems } = readPlan(`Try, 30 min\ncircuit x2, 40/20\n${words}`, context);
  const [block] = plan?.blocks ?? [];
  const [letter, ...others] = block !== undefined && hasLetters(block) ? block.letters : [];
  const [planned, ...more] = letter?.moves ?? [];
  return (
    problems.length === 0 &&
    others.length === 0 &&
    more.length === 0 &&
    planned?.choice.kind === 'move' &&
    planned.choice.moveId === move.id
  );
}
