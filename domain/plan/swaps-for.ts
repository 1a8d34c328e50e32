import type { Move, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { knownMove } from '../timing/planned-moves.ts';
import { labelledLetters } from './labels.ts';
import { moveInPlaceOf } from './move-in-place.ts';
import type { LineId, Plan, PlannedMove } from './plan.ts';

/** What all moves of a class are to become. `no kit` leaves mats. */
export type SwapWish = 'easier' | 'harder' | 'no kit';

/** One line's move and what would stand in its place; `edit` makes it. Absent where nothing fits. */
export type LineSwap = {
  readonly label: string;
  readonly line: LineId;
  readonly moveId: MoveId;
  readonly to?: { readonly moveId: MoveId; readonly edit: string };
};

/**
 * For each line of a class that the wish concerns, the move that would meet it: the option named on the
 * line, else the catalogue's; without kit, the likest move. No substitute is offered twice.
 */
export function swapsFor(plan: Plan, wish: SwapWish, context: Context): readonly LineSwap[] {
  const taken = new Set<MoveId>();
  return labelledLetters(plan)
    .flatMap(({ moves }) => moves)
    .flatMap(({ label, move: planned }) => {
      const move = knownMove(planned, context);
      if (move === undefined || (wish === 'no kit' && needsNoKit(move))) return [];
      const to =
        wish === 'no kit' ? withoutKit(move, plan, context, taken) : optionOf(planned, move, wish, context);
      if (to !== undefined) taken.add(to.id);
      const swap = { label, line: planned.id, moveId: move.id };
      const edit = wish === 'no kit' ? `swap ${label} ${to?.name}` : `${wish} ${label}`;
      return [to === undefined ? swap : { ...swap, to: { moveId: to.id, edit } }];
    });
}

function needsNoKit({ kit }: Move): boolean {
  return kit.every(({ item }) => item === 'mat');
}

function withoutKit(move: Move, plan: Plan, context: Context, taken: ReadonlySet<MoveId>): Move | undefined {
  return moveInPlaceOf(move, plan, context, (each) => needsNoKit(each) && !taken.has(each.id));
}

/** An option kept as words names no move, and an edit can't put it in place. */
function optionOf(
  { options }: PlannedMove,
  move: Move,
  kind: 'easier' | 'harder',
  { catalogue }: Context,
): Move | undefined {
  const named = options.find((option) => option.kind === kind);
  const id = named === undefined ? move[kind] : named.moveId;
  return id === undefined ? undefined : catalogue.byId.get(id);
}
