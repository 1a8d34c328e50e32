import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import { explainBefore } from './explain-before.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';
import { isExplained, newMoveTurns } from './new-moves.ts';
import { linesOfTurns } from './turns-of.ts';

export type NewMoveNotExplained = FindingBase & {
  readonly code: 'new-move-not-explained';
  readonly explainSeconds: number;
};

/** A move is taught here for the first time, and no explaining stands before its block. */
export function newMoveNotExplained(subject: CheckSubject, context: Context): readonly NewMoveNotExplained[] {
  const turns = newMoveTurns(subject, context).filter((turn) => !isExplained(turn, subject));
  const lines = linesOfTurns(turns);
  return lines.length === 0
    ? []
    : [
        {
          code: 'new-move-not-explained',
          severity: 'look at',
          lines,
          source: 'common practice',
          explainSeconds: context.settings.checks.explainNewMoveSeconds,
          ...mendWith(explainBefore(turns, subject, context)),
        },
      ];
}
