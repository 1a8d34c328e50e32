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
};

/** Every move of a plan by its line id, in plan order. */
export function movesByLine(plan: Plan, context: TimingContext): ReadonlyMap<LineId, MoveInPlan> {
  return new Map(
    plan.blocks.flatMap((block, index) =>
      (hasLetters(block) ? block.letters : []).flatMap((letter) =>
        letter.moves.map((planned) => {
          const known = knownMove(planned, context);
          const facts = { planned, letter, block: index, ...(known === undefined ? {} : { known }) };
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
