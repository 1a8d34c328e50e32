import type { MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import type { LineId, PlannedMove } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { Segment } from '../timing/timeline.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith } from './mends.ts';

export type SidesUnequal = FindingBase & {
  readonly code: 'sides-unequal';
  readonly moveId: MoveId;
  /** Work a side: seconds, or repetitions where any of it is open-ended. */
  readonly unit: 'seconds' | 'reps';
  readonly right: number;
  readonly left: number;
};

type SideWork = { readonly right: number; readonly left: number };

/** A move written for one side gets more work there than on the other, over the whole class. */
export function sidesUnequal(subject: CheckSubject, context: Context): readonly SidesUnequal[] {
  const oneSided = plannedLines(subject.plan)
    .filter(({ letter }) => !letter.wholeSetEachSide)
    .map(({ planned }) => planned)
    .filter(({ sides, choice }) => (sides === 'right' || sides === 'left') && choice.kind === 'move');
  const moveIds = new Set(oneSided.flatMap((planned) => knownMove(planned, context)?.id ?? []));
  return [...moveIds].flatMap((moveId) => {
    const lines = oneSided.filter(({ choice }) => choice.kind === 'move' && choice.moveId === moveId);
    const work = lines
      .map((planned) => workOf(planned, subject.timeline.segments))
      .reduce<SideWork>((sum, next) => ({ right: sum.right + next.right, left: sum.left + next.left }), {
        right: 0,
        left: 0,
      });
    return work.right === work.left ? [] : [finding(subject, moveId, lines, work)];
  });
}

function workOf(planned: PlannedMove, segments: readonly Segment[]): SideWork {
  const amount = segments
    .filter((segment) => segment.kind === 'work')
    .map((segment) => amountIn(segment, planned))
    .reduce((sum, next) => sum + next, 0);
  return planned.sides === 'right' ? { right: amount, left: 0 } : { right: 0, left: amount };
}

function amountIn(segment: Segment, planned: PlannedMove): number {
  if (segment.sharedBy?.includes(planned.id)) {
    return planned.reps ?? 1;
  }
  return segment.move === planned.id ? segment.endSeconds - segment.startSeconds : 0;
}

function finding(
  { plan, timeline }: CheckSubject,
  moveId: MoveId,
  lines: readonly PlannedMove[],
  { right, left }: SideWork,
): SidesUnequal {
  return {
    code: 'sides-unequal',
    severity: 'must fix',
    lines: lines.map(({ id }): LineId => id),
    source: 'common practice',
    moveId,
    unit: lines.some(({ id }) => timeline.segments.some(({ sharedBy }) => sharedBy?.includes(id)))
      ? 'reps'
      : 'seconds',
    right,
    left,
    ...mendWith(
      lines.every(({ reps }) => reps === undefined || reps % 2 === 0)
        ? lines.map(({ id }) => `sides ${labelOf(plan, id)} split sides`).join('\n')
        : undefined,
    ),
  };
}
