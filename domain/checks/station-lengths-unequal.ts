import type { Context } from '../context.ts';
import type { Letter, LineId } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith, secondsToGrow } from './mends.ts';

export type StationLengthsUnequal = FindingBase & {
  readonly code: 'station-lengths-unequal';
  readonly shortestSeconds: number;
  readonly longestSeconds: number;
};

type Station = { readonly letter: Letter; readonly seconds: number };

/** Groups rotate together, so a longer or shorter station leaves people waiting. */
export function stationLengthsUnequal(
  subject: CheckSubject,
  context: Context,
): readonly StationLengthsUnequal[] {
  return subject.plan.blocks.flatMap((block) => {
    if (block.kind !== 'stations') {
      return [];
    }
    const stations = block.letters.map((letter) => ({ letter, seconds: lengthOf(letter, subject) }));
    const usual = commonest(stations.map(({ seconds }) => seconds));
    const odd = stations.filter(({ seconds }) => seconds !== usual);
    if (odd.length === 0) {
      return [];
    }
    const growth = odd.reduce((sum, { seconds }) => sum + usual - seconds, 0) * block.rounds;
    return [
      {
        code: 'station-lengths-unequal',
        severity: 'look at',
        lines: odd.map(({ letter }): LineId => letter.id),
        source: 'common practice',
        shortestSeconds: Math.min(...stations.map(({ seconds }) => seconds)),
        longestSeconds: Math.max(...stations.map(({ seconds }) => seconds)),
        ...mendWith(growth <= secondsToGrow(subject, context) ? evenOut(odd, usual, subject) : undefined),
      },
    ];
  });
}

/** Work in the first round: a station's length but for its rest. */
function lengthOf(letter: Letter, { timeline }: CheckSubject): number {
  return timeline.segments
    .filter((segment) => segment.letter === letter.id && segment.round === 1)
    .filter(({ kind }) => kind === 'work' || kind === 'change')
    .reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0);
}

function commonest(values: readonly number[]): number {
  const count = (value: number): number => values.filter((other) => other === value).length;
  return values.reduce((best, value) => (count(value) > count(best) ? value : best), values[0] ?? 0);
}

/** `work C 20`: each of a station's moves takes its share of the usual length. */
function evenOut(odd: readonly Station[], usual: number, { plan }: CheckSubject): string | undefined {
  return odd.every(({ letter }) => letter.order === 'in turn' && usual % letter.moves.length === 0)
    ? odd.map(({ letter }) => `work ${labelOf(plan, letter.id)} ${usual / letter.moves.length}`).join('\n')
    : undefined;
}
