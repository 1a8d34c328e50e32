import type { Move } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Context } from '../context.ts';
import type { LineId } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapThatMends } from './mends.ts';
import { namedFocus } from './named-focus.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, neighboursIn, turnsOf } from './turns-of.ts';

export type SamePrimeMover = FindingBase & {
  readonly code: 'same-prime-mover';
  readonly first: LineId;
  readonly second: LineId;
  readonly muscle: Muscle;
};

type Couple = { readonly before: Turn; readonly after: Turn; readonly muscle: Muscle };

/** Trunk work is stacked on purpose in every studio: common practice. */
const stacked: readonly Muscle[] = ['abdominals', 'obliques', 'lower back'];

/**
 * Two moves of one superset, or of neighbouring letters with hardly a break between, have the same prime
 * mover, outside a `burnout` and where the class's focus doesn't name it.
 */
export function samePrimeMover(subject: CheckSubject, context: Context): readonly SamePrimeMover[] {
  const turns = turnsOf(subject, context);
  const couplesIn = (some: readonly Turn[]): readonly Couple[] =>
    neighboursIn(some, context.settings.checks.rowBreakSeconds).flatMap(({ before, after }) =>
      coupleOf(before, after, subject),
    );
  const couples = couplesIn(turns);
  const first = couples[0];
  if (first === undefined) {
    return [];
  }
  const lines = linesOfTurns(couples.flatMap(({ before, after }) => [before, after]));
  return [
    {
      code: 'same-prime-mover',
      severity: 'look at',
      lines,
      source: 'common practice',
      first: first.before.planned.id,
      second: first.after.planned.id,
      muscle: first.muscle,
      ...mendWith(swapThatMends(subject.plan, turns, lines, (some) => couplesIn(some).length === 0)),
    },
  ];
}

function coupleOf(before: Turn, after: Turn, { plan }: CheckSubject): readonly Couple[] {
  const muscle = sharedPrimeMover(before.move, after.move);
  const onPurpose =
    before.block.burnout ||
    before.letter.burnout ||
    after.letter.burnout ||
    (before.letter.id === after.letter.id && before.letter.order === 'by round') ||
    before.move?.id === after.move?.id;
  return muscle === undefined || onPurpose || namedFocus(plan, before.block).has(muscle)
    ? []
    : [{ before, after, muscle }];
}

/** What both are for first; conditioning and trunk work are left out. */
function sharedPrimeMover(one: Move | undefined, other: Move | undefined): Muscle | undefined {
  const muscle = one?.primeMovers[0];
  return muscle !== undefined &&
    muscle === other?.primeMovers[0] &&
    isStrength(one) &&
    isStrength(other) &&
    !stacked.includes(muscle)
    ? muscle
    : undefined;
}

function isStrength(move: Move | undefined): boolean {
  return move?.effort === 'reps' || move?.effort === 'hold';
}
