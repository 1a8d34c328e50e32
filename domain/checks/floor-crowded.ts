import type { Context } from '../context.ts';
import { plannedLines, roomOf } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { linesWithMoves, mendWith, swapsForOnesLike } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type FloorCrowded = FindingBase & {
  readonly code: 'floor-crowded';
  readonly people: number;
  readonly areaSquareMetres: number;
  readonly squareMetresAPerson: number;
};

/** Less floor a person than the work needs; swings, carries and travelling moves need more. */
export function floorCrowded(subject: CheckSubject, context: Context): readonly FloorCrowded[] {
  const { plan } = subject;
  const { squareMetresAPerson: still, squareMetresAPersonMoving: moving } = context.settings.checks;
  const area = roomOf(plan, context)?.areaSquareMetres;
  const { people } = plan.facts;
  const wide = plannedLines(plan).filter(({ planned }) =>
    knownMove(planned, context)?.traits.includes('needs space'),
  );
  const squareMetresAPerson = wide.length > 0 ? moving : still;
  if (area === undefined || people === undefined || people * squareMetresAPerson <= area) {
    return [];
  }
  return [
    {
      code: 'floor-crowded',
      severity: 'look at',
      lines: wide.map(({ planned }) => planned.id),
      source: wide.length > 0 ? 'common practice' : publishedRules.floorSpace,
      people,
      areaSquareMetres: area,
      squareMetresAPerson,
      ...mendWith(
        wide.length > 0 && people * still <= area
          ? swapsForOnesLike(
              linesWithMoves(
                wide.map(({ planned }) => planned.id),
                plan,
                context,
              ),
              subject,
              context,
              ({ traits }) => !traits.includes('needs space'),
            )
          : undefined,
      ),
    },
  ];
}
