import type { KitItem, KitNeed } from '../catalogue/kit.ts';
import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Move } from '../catalogue/move.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { Letter, LineId, Plan, PlannedMove } from '../plan/plan.ts';
import type { TimingContext } from './timing-context.ts';

/** A move of a letter with what is known of it; open lines and plain words have no `known`. */
export type MoveInPlan = {
  readonly planned: PlannedMove;
  readonly letter: Letter;
  readonly block: number;
  readonly known?: Move;
  /** What one person takes for it, from the kit at hand. */
  readonly kit: readonly KitNeed[];
};

/** Every move of a plan by its line id, in plan order. */
export function movesByLine(plan: Plan, context: TimingContext): ReadonlyMap<LineId, MoveInPlan> {
  const isAtHand = kitAtHand(plan, context);
  return new Map(
    plan.blocks.flatMap((block, index) =>
      (hasLetters(block) ? block.letters : []).flatMap((letter) =>
        letter.moves.map((planned) => {
          const known = knownMove(planned, context);
          const kit = known === undefined ? [] : (kitForMove(known, isAtHand) ?? known.kit);
          const facts = { planned, letter, block: index, kit, ...(known === undefined ? {} : { known }) };
          return [planned.id, facts] as const;
        }),
      ),
    ),
  );
}

/** The facts of a planned move, of the catalogue or the studio's own; absent where neither knows it. */
export function knownMove({ choice }: PlannedMove, { catalogue, settings }: TimingContext): Move | undefined {
  if (choice.kind !== 'move') return undefined;
  return catalogue.byId.get(choice.moveId) ?? settings.ownMoves.find(({ id }) => id === choice.moveId);
}

/** The class's kit, else the room's; where neither is told, everything is at hand. */
function kitAtHand({ facts }: Plan, { settings }: TimingContext): (item: KitItem) => boolean {
  if (facts.kit !== undefined) {
    const named = new Set(facts.kit);
    return (item) => named.has(item);
  }
  const room = settings.rooms.find(({ name }) => name === facts.room);
  return (item) => room === undefined || (room.kit[item] ?? 0) > 0;
}
