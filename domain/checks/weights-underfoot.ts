import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { linesOfTurns, neighboursIn, turnsOf } from './turns-of.ts';

export type WeightsUnderfoot = FindingBase & { readonly code: 'weights-underfoot' };

/** Weights are put down straight before people jump or travel: say where to park them. */
export function weightsUnderfoot(subject: CheckSubject, context: Context): readonly WeightsUnderfoot[] {
  const couples = neighboursIn(turnsOf(subject, context), context.settings.floors.leastRestSeconds).filter(
    ({ before, after }) =>
      before.kit.some(({ item }) => item === 'dumbbell' || item === 'kettlebell' || item === 'plate') &&
      (after.move?.traits.includes('impact') || after.move?.pattern === 'locomotion') &&
      after.kit.every(({ item }) => item === 'mat'),
  );
  return couples.length === 0
    ? []
    : [
        {
          code: 'weights-underfoot',
          severity: 'good to know',
          lines: linesOfTurns(couples.flatMap(({ before, after }) => [before, after])),
          source: 'common practice',
        },
      ];
}
