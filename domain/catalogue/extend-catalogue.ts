import type { Catalogue } from './catalogue.ts';
import type { Move, MoveId } from './move.ts';

/**
 * A catalogue with a studio's own moves and its own names for known ones. An own move takes the place of
 * one with the same id; an own name wins over the trade's. A retired move is found by its id alone, and by
 * its whole name where nothing else has it.
 */
export const extendCatalogue = (
  catalogue: Catalogue,
  ownMoves: readonly Move[],
  ownNames: ReadonlyMap<string, MoveId>,
): Catalogue => {
  const byId = new Map([...catalogue.byId, ...ownMoves.map((move): [MoveId, Move] => [move.id, move])]);
  return {
    ...catalogue,
    moves: [...byId.values()].filter(({ retired }) => retired === undefined),
    byId,
    ownNames: new Map([...(catalogue.ownNames ?? []), ...ownNames]),
  };
};
