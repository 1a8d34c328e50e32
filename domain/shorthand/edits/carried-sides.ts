import type { Catalogue } from '../../catalogue/catalogue.ts';
import type { LineId, PlannedMove, SideUse } from '../../plan/plan.ts';
import { canBeDone, unsaidSides } from '../moves/settle-sides.ts';

/** What became of a side word when another move took the place. */
export type SideChange = {
  readonly kind: 'dropped' | 'assumed';
  readonly sides: SideUse;
  readonly move: LineId;
};

type Carried = { readonly sides: SideUse; readonly change: Omit<SideChange, 'move'> | undefined };

/** The side word of the old move, where the new one has a use for it. */
export function carriedSides(
  old: PlannedMove,
  choice: PlannedMove['choice'],
  wholeSetEachSide: boolean,
  catalogue: Catalogue,
): Carried {
  const before = old.choice.kind === 'move' ? catalogue.byId.get(old.choice.moveId) : undefined;
  const move = choice.kind === 'move' ? catalogue.byId.get(choice.moveId) : undefined;
  const unsaid =
    old.sides === 'both' || (old.sides === 'alternating' && before?.sides === 'alternating by nature');
  const own = unsaidSides(move, wholeSetEachSide);
  if (!unsaid && (move === undefined || canBeDone(move))) return { sides: old.sides, change: undefined };
  if (!unsaid) return { sides: own, change: { kind: 'dropped', sides: old.sides } };
  return { sides: own, change: own === 'split sides' ? { kind: 'assumed', sides: own } : undefined };
}
