import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import type { Catalogue } from '../catalogue/catalogue.ts';
import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Move } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Settings } from '../settings.ts';
import { slotNameOf } from './week-class.ts';
import type { PlanWish } from './week-report.ts';

type WishContext = { readonly settings: Settings; readonly catalogue: Catalogue };

/** Moves a wish names at most: few enough to be remembered while planning. */
const mostMoves = 2;

/**
 * What to plan into the first class to come that has no plan yet, where no plan can take an edit: a move each
 * for the muscles most short, with kit that its room has, neither ballistic nor technical, easiest first.
 */
export function planWish(
  missing: readonly Muscle[],
  withoutPlan: readonly ScheduledClass[],
  { settings, catalogue }: WishContext,
): PlanWish | undefined {
  const [next] = withoutPlan;
  if (next === undefined) return undefined;
  const kit = settings.rooms.find(({ name }) => name === next.room)?.kit ?? {};
  const moves = missing
    .flatMap((muscle) => moveFor(muscle, catalogue.moves, kit) ?? [])
    .slice(0, mostMoves)
    .map(({ name }) => name);
  return moves.length === 0
    ? undefined
    : { slotName: slotNameOf(next, settings), startsAt: next.startsAt, moves };
}

function moveFor(muscle: Muscle, moves: readonly Move[], kit: Settings['rooms'][number]['kit']) {
  return moves
    .filter(
      (move) =>
        move.primeMovers[0] === muscle &&
        move.effort === 'reps' &&
        !move.traits.includes('ballistic') &&
        !move.traits.includes('technical') &&
        kitForMove(move, (item) => (kit[item] ?? 0) > 0) !== undefined,
    )
    .toSorted((a, b) => compoundFirst(a) - compoundFirst(b) || a.level - b.level)[0];
}

function compoundFirst({ traits }: Move): number {
  return traits.includes('compound') ? 0 : 1;
}
