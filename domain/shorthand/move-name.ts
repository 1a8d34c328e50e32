import type { Catalogue } from '../catalogue/catalogue.ts';
import type { MoveId } from '../catalogue/move.ts';

/** A move's name; a move this catalogue does not hold goes by the words of its id. */
export function moveName(moveId: MoveId, catalogue: Catalogue): string {
  return catalogue.byId.get(moveId)?.name ?? moveId.replaceAll('-', ' ');
}
