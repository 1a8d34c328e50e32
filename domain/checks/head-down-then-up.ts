import type { Context } from '../context.ts';
import { asksForOptions, hasGentlerOption } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { linesWithMoves, mendWith, swapsForOnesLike } from './mends.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type HeadDownThenUp = FindingBase & { readonly code: 'head-down-then-up' };

/** In a long class or with older adults: head below the heart, then straight up, with no option named. */
export function headDownThenUp(subject: CheckSubject, context: Context): readonly HeadDownThenUp[] {
  const turns = turnsOf(subject, context);
  const down = turns.filter((turn, index) => {
    const next = turns[index + 1];
    return (
      turn.move?.traits.includes('head below heart') === true &&
      !hasGentlerOption(turn.planned) &&
      next?.move?.position === 'standing' &&
      next.gapSeconds < context.settings.floors.leastRestSeconds
    );
  });
  return down.length === 0 || !asksForOptions(subject.plan, context)
    ? []
    : [
        {
          code: 'head-down-then-up',
          severity: 'look at',
          lines: linesOfTurns(down),
          source: 'common practice',
          ...mendWith(
            swapsForOnesLike(
              linesWithMoves(linesOfTurns(down), subject.plan, context),
              subject,
              context,
              ({ traits }) => !traits.includes('head below heart'),
            ),
          ),
        },
      ];
}
