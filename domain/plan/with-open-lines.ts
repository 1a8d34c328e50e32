import type { Catalogue } from '../catalogue/catalogue.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import { hasLetters } from './blocks-of.ts';
import type { MoveChoice, Plan, PlannedMove } from './plan.ts';

/** The structure of a class: every known move becomes an open line of its pattern, with its time or reps. */
export function withOpenLines(plan: Plan, catalogue: Catalogue): Plan {
  return {
    ...plan,
    blocks: plan.blocks.map((block) =>
      hasLetters(block)
        ? {
            ...block,
            letters: block.letters.map((letter) => ({
              ...letter,
              wholeSetEachSide: false,
              moves: letter.moves.map((move) => openLine(move, catalogue)),
            })),
          }
        : block,
    ),
  };
}

function openLine(move: PlannedMove, catalogue: Catalogue): PlannedMove {
  const known = move.choice.kind === 'move' ? catalogue.byId.get(move.choice.moveId) : undefined;
  if (known === undefined) return move;
  const { id, span, workSeconds, reps } = move;
  return {
    id,
    span,
    choice: openFor(known.pattern),
    sides: 'both',
    ...(workSeconds === undefined ? {} : { workSeconds }),
    ...(reps === undefined ? {} : { reps }),
    options: [],
  };
}

function openFor(pattern: Pattern): MoveChoice {
  const wish = { words: pattern, muscles: [], patterns: [pattern], kit: [], without: [], standing: false };
  return { kind: 'open', wish };
}
