import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
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
  const stretches = stretchesOf(turnsOf(subject, context), context.settings.floors.leastRestSeconds);
  const longest = stretches
    .map((turns) => ({ turns, seconds: turns.reduce((sum, { workSeconds }) => sum + workSeconds, 0) }))
    .filter(({ seconds }) => seconds > mostSeconds)
    .toSorted((one, other) => other.seconds - one.seconds)[0];
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
    },
  ];
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
