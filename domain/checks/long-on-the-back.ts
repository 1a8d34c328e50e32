import type { Context } from '../context.ts';
import { asksForOptions, hasGentlerOption } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { linesWithMoves, mendWith, swapsForOnesLike } from './mends.ts';
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
  const turns = turnsOf(subject, context);
  const longest = longestOf(turns, context);
  return longest === undefined || longest.seconds <= context.settings.checks.supineLongSeconds
    ? []
    : [
        {
          code: 'long-on-the-back',
          severity: 'look at',
          lines: linesOfTurns(longest.turns),
          source: 'common practice',
          seconds: Math.round(longest.seconds),
          ...mendWith(swapThatGetsUp(longest.turns, turns, subject, context)),
        },
      ];
}

type Stretch = { readonly turns: readonly Turn[]; readonly seconds: number };

function longestOf(turns: readonly Turn[], context: Context): Stretch | undefined {
  return stretches(turns, context.settings.checks.rowBreakSeconds)
    .map((stretch) => ({ turns: stretch, seconds: lengthOf(stretch) }))
    .toSorted((one, other) => other.seconds - one.seconds)[0];
}

/** One line of the stretch done off the back, where no stretch is too long then. */
function swapThatGetsUp(
  long: readonly Turn[],
  turns: readonly Turn[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  return linesWithMoves(linesOfTurns(long), subject.plan, context)
    .map((line) => {
      const edit = swapsForOnesLike([line], subject, context, ({ position }) => position !== 'supine');
      const left = longestOf(
        turns.map((turn) => (turn.planned.id === line.line ? withoutMove(turn) : turn)),
        context,
      );
      const isShort = left === undefined || left.seconds <= context.settings.checks.supineLongSeconds;
      return isShort ? edit : undefined;
    })
    .find((edit) => edit !== undefined);
}

/** A turn of which nothing more is known than when it is. */
function withoutMove({ move: _, ...turn }: Turn): Turn {
  return turn;
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
