import { type KitItem, type KitNeed, kitItems } from '../catalogue/kit.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { Letter, LetteredBlock, Plan } from '../plan/plan.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import type { TimingContext } from '../timing/timing-context.ts';

/** Pieces of one kind to lay out before the class. */
export type LaidOut = { readonly item: KitItem; readonly pieces: number };

/**
 * The kit to lay out for a head count: of each kind the most that any block has in use at once, in the order
 * of `kitItems`. At stations a piece is counted for the people at its station, in pairs for one of the two,
 * everywhere else for everyone.
 */
export function layOut(plan: Plan, people: number, context: TimingContext): readonly LaidOut[] {
  const kitOf = kitByLine(plan, context);
  const blocks = plan.blocks.filter(hasLetters);
  return kitItems
    .map((item) => ({
      item,
      pieces: Math.max(0, ...blocks.map((block) => piecesInUse(block, item, people, kitOf))),
    }))
    .filter(({ pieces }) => pieces > 0);
}

type KitOf = (letter: Letter) => readonly KitNeed[];

/** The kit of each letter's moves, for one person. */
export function kitByLine(plan: Plan, context: TimingContext): KitOf {
  const moves = movesByLine(plan, context);
  return (letter) => letter.moves.flatMap(({ id }) => moves.get(id)?.kit ?? []);
}

/** Pieces of one kind that a block has in use at once. */
export function piecesInUse(block: LetteredBlock, item: KitItem, people: number, kitOf: KitOf): number {
  const aPerson = block.letters.map((letter) =>
    Math.max(0, ...kitOf(letter).map((need) => (need.item === item ? need.pieces : 0))),
  );
  if (block.kind === 'stations') {
    const atStation = block.peoplePerStation ?? Math.ceil(people / block.letters.length);
    return aPerson.reduce((sum, pieces) => sum + pieces * atStation, 0);
  }
  const users = block.pairs === undefined ? people : Math.ceil(people / 2);
  return Math.max(0, ...aPerson) * users;
}
