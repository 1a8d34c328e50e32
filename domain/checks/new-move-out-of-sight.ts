import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import { explainBefore } from './explain-before.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';
import { isLyingDown } from './move-facts.ts';
import { isExplained, newMoveTurns } from './new-moves.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type NewMoveOutOfSight = FindingBase & { readonly code: 'new-move-out-of-sight' };

/** A move new here starts straight out of one that people do lying down: nobody sees it shown. */
export function newMoveOutOfSight(subject: CheckSubject, context: Context): readonly NewMoveOutOfSight[] {
  const turns = turnsOf(subject, context);
  const fresh = newMoveTurns(subject, context).map(({ startSeconds }) => startSeconds);
  const unseen = turns.filter((turn, index) => {
    const before = turns[index - 1]?.move;
    return (
      fresh.includes(turn.startSeconds) &&
      before !== undefined &&
      isLyingDown(before) &&
      turn.gapSeconds < context.settings.checks.explainNewMoveSeconds &&
      !isExplained(turn, subject)
    );
  });
  return unseen.length === 0
    ? []
    : [
        {
          code: 'new-move-out-of-sight',
          severity: 'look at',
          lines: linesOfTurns(unseen),
          source: 'common practice',
          ...mendWith(explainBefore(unseen, subject, context)),
        },
      ];
}
