import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { isWeighted } from './move-facts.ts';

export type NoTimeToWipe = FindingBase & {
  readonly code: 'no-time-to-wipe';
  readonly restSeconds: number;
  readonly wipeSeconds: number;
};

/** Kit passes from hand to hand at stations, and the rest is too short to wipe it. */
export function noTimeToWipe({ plan }: CheckSubject, context: Context): readonly NoTimeToWipe[] {
  const { wipeSeconds } = context.settings.checks;
  const handed = plannedLines(plan).flatMap(({ block, letter, planned }) => {
    const move = knownMove(planned, context);
    const restSeconds =
      block.kind === 'stations' ? (letter.restSeconds ?? block.intervals[0]?.restSeconds ?? 0) : wipeSeconds;
    return move !== undefined && isWeighted(move) && restSeconds < wipeSeconds
      ? [{ id: planned.id, restSeconds }]
      : [];
  });
  return handed.length === 0
    ? []
    : [
        {
          code: 'no-time-to-wipe',
          severity: 'good to know',
          lines: handed.map(({ id }) => id),
          source: 'common practice',
          restSeconds: Math.min(...handed.map(({ restSeconds }) => restSeconds)),
          wipeSeconds,
        },
      ];
}
