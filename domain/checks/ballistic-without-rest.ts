import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { isForBeginners } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapForOneLike } from './mends.ts';
import { linesOfTurns, turnsOf } from './turns-of.ts';

export type BallisticWithoutRest = FindingBase & { readonly code: 'ballistic-without-rest' };

/** At level 1 or for beginners: a ballistic or technical move that starts tired and ends in the next one. */
export function ballisticWithoutRest(
  subject: CheckSubject,
  context: Context,
): readonly BallisticWithoutRest[] {
  if (!isForBeginners(subject.plan)) {
    return [];
  }
  const { leastRestSeconds } = context.settings.floors;
  const turns = turnsOf(subject, context);
  const hurried = turns.filter((turn, index) => {
    const next = turns[index + 1];
    return (
      turn.move !== undefined &&
      needsFreshness(turn.move) &&
      turn.gapSeconds < leastRestSeconds &&
      next !== undefined &&
      next.gapSeconds < leastRestSeconds
    );
  });
  const lines = linesOfTurns(hurried);
  const first = hurried[0];
  if (first?.move === undefined) {
    return [];
  }
  return [
    {
      code: 'ballistic-without-rest',
      severity: 'must fix',
      lines,
      source: 'common practice',
      ...mendWith(
        lines.length === 1
          ? swapForOneLike(first.move, first.planned.id, subject, context, (move) => !needsFreshness(move))
          : undefined,
      ),
    },
  ];
}

function needsFreshness({ effort, traits }: Move): boolean {
  return effort !== 'conditioning' && (traits.includes('ballistic') || traits.includes('technical'));
}
