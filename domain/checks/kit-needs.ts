import { type KitItem, type KitNeed, kitItems } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { roomOf } from '../plan/class-facts.ts';
import type { Letter, LetteredBlock, LineId, Plan } from '../plan/plan.ts';
import type { Room } from '../settings.ts';
import { type MoveInPlan, movesByLine } from '../timing/planned-moves.ts';

/** Pieces of one kind that a block needs at one moment, and how many are there. */
export type KitCount = {
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
  /** Pieces that other classes have out at that time. */
  readonly outPieces: number;
  readonly lines: readonly LineId[];
};

type Need = KitNeed & { readonly line: LineId };

/** What else serves in place of a piece: common practice. */
const alsoServes: Readonly<Partial<Record<KitItem, readonly KitItem[]>>> = {
  dumbbell: ['kettlebell'],
  kettlebell: ['dumbbell'],
  step: ['box', 'bench'],
  box: ['bench', 'step'],
  bench: ['step', 'box'],
  chair: ['bench', 'box'],
  'medicine ball': ['slam ball'],
  'slam ball': ['medicine ball'],
};

/** The piece itself, and what else serves in its place. */
export function itemsThatServe(item: KitItem): readonly KitItem[] {
  return [item, ...(alsoServes[item] ?? [])];
}

/**
 * Kit a block needs at once for its people, against the room's. Empty where head count, room or the room's
 * kit is not known. Mats count only where the room says how many it has: people bring their own.
 */
export function kitCounts(plan: Plan, context: Context): readonly KitCount[] {
  const room = roomOf(plan, context);
  const { people } = plan.facts;
  if (room === undefined || people === undefined || Object.keys(room.kit).length === 0) {
    return [];
  }
  const moves = movesByLine(plan, context);
  return plan.blocks
    .filter(hasLetters)
    .flatMap((block) => countsOfBlock(block, people, room, moves, context))
    .filter(({ item }) => item !== 'mat' || room.kit.mat !== undefined);
}

function countsOfBlock(
  block: LetteredBlock,
  people: number,
  room: Room,
  moves: ReadonlyMap<LineId, MoveInPlan>,
  context: Context,
): readonly KitCount[] {
  const needs = block.letters.map((letter) => needsOfLetter(letter, moves));
  return kitItems.flatMap((item) => {
    const ofItem = needs.map((letter) => letter.filter((need) => need.item === item));
    const lines = ofItem.flat().map(({ line }) => line);
    return lines.length === 0
      ? []
      : [{ ...stock(item, room, context), item, lines, needPieces: atOnce(block, ofItem, people) }];
  });
}

/** At stations each letter has its own people, more than are said where all could not stand; elsewhere all do the same letter at once. */
function atOnce(block: LetteredBlock, needs: readonly (readonly Need[])[], people: number): number {
  const perPerson = needs.map((letter) => Math.max(0, ...letter.map(({ pieces }) => pieces)));
  if (block.kind === 'stations') {
    const each = Math.max(block.peoplePerStation ?? 0, Math.ceil(people / block.letters.length));
    return perPerson.reduce((sum, pieces) => sum + pieces * each, 0);
  }
  const users = block.pairs === undefined ? people : Math.ceil(people / 2);
  return Math.max(...perPerson) * users;
}

function needsOfLetter(letter: Letter, moves: ReadonlyMap<LineId, MoveInPlan>): readonly Need[] {
  return letter.moves.flatMap(({ id: line }) =>
    (moves.get(line)?.kit ?? []).map((need) => ({ ...need, line })),
  );
}

function stock(
  item: KitItem,
  room: Room,
  context: Context,
): { readonly havePieces: number; readonly outPieces: number } {
  const items = itemsThatServe(item);
  const total = (pieces: Readonly<Partial<Record<KitItem, number>>>): number =>
    items.reduce((sum, one) => sum + (pieces[one] ?? 0), 0);
  return { havePieces: total(room.kit), outPieces: total(context.kitInUse ?? {}) };
}
