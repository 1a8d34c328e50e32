import type { Context } from '../context.ts';
import { asksForOptions, hasGentlerOption } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type LongOnTheBack = FindingBase & {
  readonly code: 'long-on-the-back';
  readonly seconds: number;
};

/** In a long class or with older adults: a long stretch on the back, with no other option named. */
export function longOnTheBack(subject: CheckSubject, context: Context): readonly LongOnTheBack[] {
  if (!asksForOptions(subject.plan, context)) {
    return [];
  }
  const longest = stretches(turnsOf(subject, context), context.settings.checks.rowBreakSeconds)
    .map((turns) => ({ turns, seconds: lengthOf(turns) }))
    .toSorted((one, other) => other.seconds - one.seconds)[0];
  return longest === undefined || longest.seconds <= context.settings.checks.supineLongSeconds
    ? []
    : [
        {
          code: 'long-on-the-back',
          severity: 'look at',
          lines: linesOfTurns(longest.turns),
          source: 'common practice',
          seconds: Math.round(longest.seconds),
        },
      ];
}

/** Turns on the back that follow on; a long enough break lets people sit up. */
function stretches(turns: readonly Turn[], breakSeconds: number): readonly (readonly Turn[])[] {
  const found: Turn[][] = [[]];
  for (const turn of turns) {
    const isOnBack = turn.move?.position === 'supine' && !hasGentlerOption(turn.planned);
    if (!isOnBack || turn.gapSeconds >= breakSeconds || turn.pauseSeconds >= breakSeconds) {
      found.push([]);
    }
    if (isOnBack && turn.pauseSeconds < breakSeconds) {
      found.at(-1)?.push(turn);
    }
  }
  return found;
}

/** From lying down to getting up, rests included. */
function lengthOf(turns: readonly Turn[]): number {
  const [first, last] = [turns[0], turns.at(-1)];
  return first === undefined || last === undefined ? 0 : last.endSeconds - first.startSeconds;
}
