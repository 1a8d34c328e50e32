import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Move, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { classLevel, kitAtHand, plannedLines } from './class-facts.ts';
import type { Plan } from './plan.ts';

/**
 * A move to teach in another's place: the same prime mover, not above the class's level, with the kit at
 * hand, and not in the class already. The same pattern, position, sides and effort, and no higher level, are preferred, then the
 * catalogue's order.
 */
export function moveInPlaceOf(
  move: Move,
  plan: Plan,
  context: Context,
  fits: (candidate: Move) => boolean,
): Move | undefined {
  const used = movesIn(plan);
  const level = classLevel(plan) ?? move.level;
  const atHand = kitAtHand(plan, context);
  return context.catalogue.moves
    .filter(
      (candidate) =>
        candidate.id !== move.id &&
        !used.has(candidate.id) &&
        candidate.level <= level &&
        candidate.effort !== 'mobility' &&
        candidate.primeMovers[0] === move.primeMovers[0] &&
        kitForMove(candidate, (item) => atHand.has(item)) !== undefined &&
        fits(candidate),
    )
    .reduce<Move | undefined>(
      (best, candidate) =>
        best === undefined || likeness(candidate, move) > likeness(best, move) ? candidate : best,
      undefined,
    );
}

function likeness(candidate: Move, move: Move): number {
  return (
    (candidate.pattern === move.pattern ? 8 : 0) +
    (candidate.level <= move.level ? 4 : 0) +
    (candidate.position === move.position ? 4 : 0) +
    (candidate.sides === move.sides ? 2 : 0) +
    (candidate.effort === move.effort ? 1 : 0)
  );
}

function movesIn(plan: Plan): ReadonlySet<MoveId> {
  return new Set(
    plannedLines(plan).flatMap(({ planned: { choice } }) => (choice.kind === 'move' ? [choice.moveId] : [])),
  );
}
