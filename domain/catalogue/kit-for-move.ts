import type { KitItem, KitNeed } from './kit.ts';
import type { Move } from './move.ts';

/** Kit that makes a move more comfortable; without it the move is still done. */
const comforts: ReadonlySet<KitItem> = new Set(['mat']);

/**
 * What one person takes for a move from the kit at hand: the first of the move's kits that is there,
 * without comforts that are not. Undefined where none is.
 */
export const kitForMove = (
  move: Move,
  isAtHand: (item: KitItem) => boolean,
): readonly KitNeed[] | undefined =>
  [move.kit, ...(move.otherKit ?? [])]
    .map((kit) => kit.filter((need) => isAtHand(need.item) || !comforts.has(need.item)))
    .find((kit) => kit.every((need) => isAtHand(need.item)));
