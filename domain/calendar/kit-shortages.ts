import type { KitItem } from '../catalogue/kit.ts';
import { labelledLetters } from '../plan/labels.ts';
import type { LetteredBlock, Plan } from '../plan/plan.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { kitByLine, layOut, piecesInUse } from './lay-out.ts';

/** Kit that the room does not have for a head count. `havePieces` is without what rooms share. */
export type KitShortage = {
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
};

/** Where a shortage is met: some start elsewhere in the block, or share in pairs. Labels as on the card. */
export type KitRotation = KitShortage & {
  readonly label: string;
  /** People who can have the kit at once, and those who can't. */
  readonly atOnce: number;
  readonly over: number;
  /** The letter of the same block that needs none of it, where those over start; absent: they share. */
  readonly startAt?: string;
};

/** What is short in a room for a head count; nothing where the room is not known. */
export function kitShortages(
  plan: Plan,
  people: number,
  room: string | undefined,
  context: TimingContext,
): readonly KitShortage[] {
  const kit = context.settings.rooms.find(({ name }) => name === room)?.kit;
  if (kit === undefined) return [];
  return layOut(plan, people, context).flatMap(({ item, pieces: needPieces }) => {
    const havePieces = kit[item] ?? 0;
    return needPieces <= havePieces ? [] : [{ item, needPieces, havePieces }];
  });
}

/** Each block in which kit is short, letter by letter: who starts elsewhere, and where. */
export function kitRotations(
  plan: Plan,
  people: number,
  room: string | undefined,
  context: TimingContext,
): readonly KitRotation[] {
  const kitOf = kitByLine(plan, context);
  const letters = labelledLetters(plan);
  return kitShortages(plan, people, room, context).flatMap(({ item, havePieces }) => {
    const shortBlocks = new Set<LetteredBlock>(
      letters
        .map(({ block }) => block)
        .filter((block) => piecesInUse(block, item, people, kitOf) > havePieces),
    );
    const aPersonOf = (place: number) => {
      const letter = letters[place]?.letter;
      return letter === undefined
        ? 0
        : Math.max(0, ...kitOf(letter).map((need) => (need.item === item ? need.pieces : 0)));
    };
    return letters.flatMap(({ block, label }, place): readonly KitRotation[] => {
      const aPerson = aPersonOf(place);
      if (!shortBlocks.has(block) || aPerson === 0) return [];
      const users = block.pairs === undefined ? people : Math.ceil(people / 2);
      const atOnce = Math.min(users, Math.floor(havePieces / aPerson));
      const free = letters.find(
        (other, otherPlace) => other.block === block && aPersonOf(otherPlace) === 0,
      )?.label;
      const needPieces = users * aPerson;
      return atOnce === users
        ? []
        : [
            {
              item,
              needPieces,
              havePieces,
              label,
              atOnce,
              over: users - atOnce,
              ...(free === undefined ? {} : { startAt: free }),
            },
          ];
    });
  });
}
