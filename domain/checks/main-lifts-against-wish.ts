import type { MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { isWeighted, moveById } from './move-facts.ts';

export type MainLiftsAgainstWish = FindingBase & {
  readonly code: 'main-lifts-against-wish';
  readonly wish: 'keep' | 'vary';
  /** Wish *keep*: last time's main lifts that are gone; wish *vary*: those that come again. */
  readonly moveIds: readonly MoveId[];
};

/** Main lifts change where the studio keeps them, or come again where it varies them: all of them at once. */
export function mainLiftsAgainstWish(
  { plan }: CheckSubject,
  context: Context,
): readonly MainLiftsAgainstWish[] {
  const { mainLifts: wish } = context.settings;
  const isMainLift = (id: MoveId): boolean => {
    const move = moveById(id, context);
    return move?.traits.includes('compound') === true && isWeighted(move.kit);
  };
  const before = [...(context.lastTime?.moveIds ?? [])].filter(isMainLift);
  const lines = plannedLines(plan).flatMap(({ planned }) => {
    const move = knownMove(planned, context);
    return move === undefined ? [] : [{ id: planned.id, moveId: move.id }];
  });
  const again = before.filter((id) => lines.some(({ moveId }) => moveId === id));
  const isAgainst = wish === 'keep' ? again.length === 0 : again.length === before.length;
  return before.length < 2 || !isAgainst
    ? []
    : [
        {
          code: 'main-lifts-against-wish',
          severity: 'good to know',
          lines: lines.filter(({ moveId }) => again.includes(moveId)).map(({ id }) => id),
          source: 'common practice',
          wish,
          moveIds: before,
        },
      ];
}
