import { hasLetters } from './blocks-of.ts';
import type { Letter, LetteredBlock, LineId, Plan, PlannedMove } from './plan.ts';

/** A letter with what it is called in the class: `B`, and its moves `B1`, `B2` where it has several. */
export type LabelledLetter = {
  readonly label: string;
  readonly letter: Letter;
  readonly block: LetteredBlock;
  readonly moves: readonly { readonly label: string; readonly move: PlannedMove }[];
};

/** The label of the n-th letter of a class, from 0: A … Z, AA, AB … */
function letterLabel(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : letterLabel(Math.floor(index / 26) - 1) + last;
}

/** All letters of a plan in order, labelled through the whole class. */
export function labelledLetters(plan: Plan): readonly LabelledLetter[] {
  return plan.blocks
    .filter(hasLetters)
    .flatMap((block) => block.letters.map((letter) => ({ block, letter })))
    .map(({ block, letter }, index) => {
      const label = letterLabel(index);
      const moves = letter.moves.map((move, place) => ({
        label: letter.moves.length > 1 ? `${label}${place + 1}` : label,
        move,
      }));
      return { label, letter, block, moves };
    });
}

/** The label of every letter and move by its line id. */
export function labelsByLine(plan: Plan): ReadonlyMap<LineId, string> {
  return new Map(
    labelledLetters(plan).flatMap(({ label, letter, moves }) => [
      [letter.id, label] as const,
      ...moves.map(({ label: moveLabel, move }) => [move.id, moveLabel] as const),
    ]),
  );
}
