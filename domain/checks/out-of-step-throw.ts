import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { LetteredBlock, LineId } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapForOneLike } from './mends.ts';
import { isLyingDown } from './move-facts.ts';

export type OutOfStepThrow = FindingBase & {
  readonly code: 'out-of-step-throw';
  readonly throwing: LineId;
};

/**
 * In work at one's own pace people get out of step, so one may lie down while the next swings or throws.
 * Space between people answers it; so does a move done standing.
 */
export function outOfStepThrow(subject: CheckSubject, context: Context): readonly OutOfStepThrow[] {
  return subject.plan.blocks
    .filter(hasLetters)
    .filter(({ kind }) => kind === 'amrap' || kind === 'for time' || kind === 'ladder')
    .flatMap((block) => findingIn(block, subject, context))
    .slice(0, 1);
}

function findingIn(block: LetteredBlock, subject: CheckSubject, context: Context): readonly OutOfStepThrow[] {
  const lines = block.letters
    .flatMap(({ moves }) => moves)
    .flatMap((planned) => {
      const move = knownMove(planned, context);
      return move === undefined ? [] : [{ id: planned.id, move }];
    });
  const throwing = lines.find(({ move }) => move.traits.includes('throw'));
  const lying = lines.filter(({ move }) => isLyingDown(move));
  const first = lying[0];
  if (throwing === undefined || first === undefined) {
    return [];
  }
  return [
    {
      code: 'out-of-step-throw',
      severity: 'look at',
      lines: [throwing.id, ...lying.map(({ id }) => id)],
      source: 'common practice',
      throwing: throwing.id,
      ...mendWith(
        lying.length === 1
          ? swapForOneLike(first.move, first.id, subject, context, (move) => !isLyingDown(move))
          : undefined,
      ),
    },
  ];
}
