import type { Move, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import type { PlannedMove } from '../plan/plan.ts';

/** The facts of a move, of the catalogue or the studio's own; absent where neither knows it. */
export function moveById(id: MoveId, context: Context): Move | undefined {
  return context.catalogue.byId.get(id) ?? context.settings.ownMoves.find((move) => move.id === id);
}

/** The facts of a planned move; absent for an open line and a line kept as words. */
export function knownMove(planned: PlannedMove, context: Context): Move | undefined {
  return planned.choice.kind === 'move' ? moveById(planned.choice.moveId, context) : undefined;
}

/** Whether the move is held or moved with a weight, band or strap; a mat is no load. */
export function isLoaded(move: Move): boolean {
  return move.kit.some(({ item }) => item !== 'mat' && item !== 'step' && item !== 'box' && item !== 'chair');
}

export function isLyingDown(move: Move): boolean {
  return move.position === 'supine' || move.position === 'prone' || move.position === 'side-lying';
}
