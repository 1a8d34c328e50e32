import type { KitItem, KitNeed } from '../catalogue/kit.ts';
import type { Move, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';

/** The facts of a move, of the catalogue or the studio's own; absent where neither knows it. */
export function moveById(id: MoveId, context: Context): Move | undefined {
  return context.catalogue.byId.get(id) ?? context.settings.ownMoves.find((move) => move.id === id);
}

const weights: ReadonlySet<KitItem> = new Set([
  'dumbbell',
  'kettlebell',
  'barbell',
  'plate',
  'medicine ball',
  'slam ball',
  'sandbag',
]);

/** Whether this kit puts a weight in the hands or on the back. */
export function isWeighted(kit: readonly KitNeed[]): boolean {
  return kit.some(({ item }) => weights.has(item));
}

/** On the back, the front or the side. */
export function isLyingDown(move: Move): boolean {
  return move.position === 'supine' || move.position === 'prone' || move.position === 'side-lying';
}
