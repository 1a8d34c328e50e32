import type { Interval, Letter, PlannedMove, RoundsBlock } from '../plan/plan.ts';
import { type Part, restPart, secondsOf } from './part.ts';
import type { TimingContext } from './timing-context.ts';
import { workOfLetter } from './work-of-letter.ts';
import { workSecondsOf } from './work-of-move.ts';

type Bout = { readonly letter: Letter; readonly round: number; readonly lastOfRun: boolean };

/** Straight sets do a letter all its rounds, the others all letters once a round. */
function order(block: RoundsBlock): readonly Bout[] {
  const { letters } = block;
  if (block.kind === 'straight') {
    return letters.flatMap((letter) => {
      const rounds = letter.rounds ?? block.rounds;
      return count(rounds).map((round) => ({ letter, round, lastOfRun: round === rounds }));
    });
  }
  return count(block.rounds).flatMap((round) =>
    letters.map((letter, index) => ({ letter, round, lastOfRun: index === letters.length - 1 })),
  );
}

function count(upTo: number): readonly number[] {
  return Array.from({ length: upTo }, (_, index) => index + 1);
}

/** Circuit, straight sets, stations, finisher: with the rest that ends the last bout. */
export function partsOfRounds(block: RoundsBlock, context: TimingContext): readonly Part[] {
  const bouts = order(block);
  const betweenRuns = block.kind === 'straight' ? block.betweenLettersSeconds : block.betweenRoundsSeconds;
  return bouts.flatMap(({ letter, round, lastOfRun }, index) => {
    const interval = block.intervals[round - 1] ?? block.intervals.at(-1);
    const secondsFor = (planned: PlannedMove) => workSecondsOf(planned, clockOf(interval), context);
    const place = { letter: letter.id, round };
    const work = withPartner(block, workOfLetter(block, letter, round, secondsFor, context), place);
    if (lastOfRun && betweenRuns !== undefined && index < bouts.length - 1) {
      return block.kind === 'straight'
        ? [...work, ...restPart(betweenRuns, place)]
        : [...work, { kind: 'between-rounds' as const, seconds: betweenRuns, round }];
    }
    const blockRest = block.pairs === 'one rests' ? 0 : (interval?.restSeconds ?? 0);
    return [...work, ...restPart(letter.restSeconds ?? blockRest, place)];
  });
}

/** Where one of a pair rests, the other's turn is as long and follows at once, at the end of a class too. */
function withPartner(
  { pairs }: RoundsBlock,
  work: readonly Part[],
  place: { readonly letter: string; readonly round: number },
): readonly Part[] {
  if (pairs !== 'one rests') return work;
  return [...work, ...restPart(secondsOf(work), { ...place, belongsTo: 'partner' })];
}

/** Seconds of work a round gives each move; none where only its rest is on the clock. */
function clockOf(interval: Interval | undefined): number | undefined {
  return interval === undefined || interval.workSeconds === 0 ? undefined : interval.workSeconds;
}
