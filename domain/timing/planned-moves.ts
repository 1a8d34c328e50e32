import type { Catalogue } from '../catalogue/catalogue.ts';
import type { Move } from '../catalogue/move.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { Letter, LineId, Plan, PlannedMove } from '../plan/plan.ts';

/** A move of a letter with what the catalogue knows of it; open lines and plain words have no `known`. */
export type MoveInPlan = {
  readonly planned: PlannedMove;
  readonly letter: Letter;
  readonly block: number;
  readonly known?: Move;
};

/** Every move of a plan by its line id. */
export function movesByLine(plan: Plan, catalogue: Catalogue): ReadonlyMap<LineId, MoveInPlan> {
  return new Map(
    plan.blocks.flatMap((block, index) =>
      (hasLetters(block) ? block.letters : []).flatMap((letter) =>
        letter.moves.map((planned) => [
          planned.id,
          { planned, letter, block: index, ...knownOf(planned, catalogue) },
        ]),
      ),
    ),
  );
}

function knownOf({ choice }: PlannedMove, catalogue: Catalogue): { readonly known?: Move } {
  const known = choice.kind === 'move' ? catalogue.byId.get(choice.moveId) : undefined;
  return known === undefined ? {} : { known };
}
