import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapForOneLike } from './mends.ts';

export type TwoTechnicalStations = FindingBase & { readonly code: 'two-technical-stations' };

/** Two technical moves run at once, and one coach can watch one of them. */
export function twoTechnicalStations(
  subject: CheckSubject,
  context: Context,
): readonly TwoTechnicalStations[] {
  const technical = plannedLines(subject.plan).flatMap(({ block, blockIndex, letter, planned }) => {
    const move = block.kind === 'stations' ? knownMove(planned, context) : undefined;
    return move?.traits.includes('technical') ? [{ blockIndex, letter, planned, move }] : [];
  });
  const together = technical.filter((one) =>
    technical.some((other) => other.blockIndex === one.blockIndex && other.letter.id !== one.letter.id),
  );
  const last = together.at(-1);
  if (last === undefined) {
    return [];
  }
  return [
    {
      code: 'two-technical-stations',
      severity: 'look at',
      lines: together.map(({ planned }) => planned.id),
      source: 'common practice',
      ...mendWith(
        together.length === 2
          ? swapForOneLike(
              last.move,
              last.planned.id,
              subject,
              context,
              ({ traits }) => !traits.includes('technical'),
            )
          : undefined,
      ),
    },
  ];
}
