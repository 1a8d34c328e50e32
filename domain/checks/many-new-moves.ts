import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { newMoveTurns } from './new-moves.ts';
import { linesOfTurns } from './turns-of.ts';

export type ManyNewMoves = FindingBase & {
  readonly code: 'many-new-moves';
  readonly count: number;
  readonly most: number;
};

/** More moves are new here than one class can show well. */
export function manyNewMoves(subject: CheckSubject, context: Context): readonly ManyNewMoves[] {
  const lines = linesOfTurns(newMoveTurns(subject, context));
  const most = context.settings.checks.newMoves;
  return lines.length <= most
    ? []
    : [
        {
          code: 'many-new-moves',
          severity: 'look at',
          lines,
          source: 'common practice',
          count: lines.length,
          most,
        },
      ];
}
