import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { linesWithMoves, mendWith, swapsForOnesLike } from './mends.ts';
import { isWeighted } from './move-facts.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type LoadedWithoutBreak = FindingBase & {
  readonly code: 'loaded-without-break';
  readonly seconds: number;
  readonly mostSeconds: number;
};

/** At level 1 or for beginners: loaded work runs on too long with no rest in it. */
export function loadedWithoutBreak(subject: CheckSubject, context: Context): readonly LoadedWithoutBreak[] {
  const { loadedNonStopBeginnersSeconds: mostSeconds } = context.settings.checks;
  if (!isForBeginners(subject.plan)) {
    return [];
  }
  const turns = turnsOf(subject, context);
  const longest = longestOf(turns, context);
  if (longest === undefined) {
    return [];
  }
  return [
    {
      code: 'loaded-without-break',
      severity: 'look at',
      lines: linesOfTurns(longest.turns),
      source: 'common practice',
      seconds: Math.round(longest.seconds),
      mostSeconds,
      ...mendWith(swapThatBreaks(longest.turns, turns, subject, context)),
    },
  ];
}

type Stretch = { readonly turns: readonly Turn[]; readonly seconds: number };

/** The longest of those that run on too long. */
function longestOf(turns: readonly Turn[], { settings }: Context): Stretch | undefined {
  return stretchesOf(turns, settings.floors.leastRestSeconds)
    .map((stretch) => ({ turns: stretch, seconds: stretch.reduce((sum, turn) => sum + turn.workSeconds, 0) }))
    .filter(({ seconds }) => seconds > settings.checks.loadedNonStopBeginnersSeconds)
    .toSorted((one, other) => other.seconds - one.seconds)[0];
}

/** One line of the stretch done without a weight, where nothing runs on too long then; from its middle on. */
function swapThatBreaks(
  long: readonly Turn[],
  turns: readonly Turn[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const lines = linesWithMoves(linesOfTurns(long), subject.plan, context);
  const middle = Math.floor(lines.length / 2);
  return [...lines.slice(middle), ...lines.slice(0, middle)]
    .map((line) => {
      const light = turns.map((turn) => (turn.planned.id === line.line ? { ...turn, kit: [] } : turn));
      return longestOf(light, context) === undefined
        ? swapsForOnesLike([line], subject, context, ({ kit }) => !isWeighted(kit))
        : undefined;
    })
    .find((edit) => edit !== undefined);
}

/** Loaded turns that follow on one another; a straight set's own rests break it. */
function stretchesOf(turns: readonly Turn[], breakSeconds: number): readonly (readonly Turn[])[] {
  const stretches: Turn[][] = [];
  for (const turn of turns) {
    const last = stretches.at(-1);
    const runsOn = turn.gapSeconds < breakSeconds && isWeighted(turn.kit);
    if (last !== undefined && runsOn) {
      last.push(turn);
    } else {
      stretches.push([turn]);
    }
  }
  return stretches.filter((stretch) => stretch.every((turn) => isUnbroken(turn, breakSeconds)));
}

function isUnbroken({ kit, pauseSeconds }: Turn, breakSeconds: number): boolean {
  return isWeighted(kit) && pauseSeconds < breakSeconds;
}
