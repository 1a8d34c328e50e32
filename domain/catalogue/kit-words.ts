import type { KitItem, KitNeed } from './kit.ts';
import type { Move } from './move.ts';

type Fits = (kit: readonly KitNeed[]) => boolean;

const has =
  (...items: readonly KitItem[]): Fits =>
  (kit) =>
    kit.some((need) => items.includes(need.item));

const isWithoutKit: Fits = (kit) => kit.every((need) => need.item === 'mat');

/** Words in front of or behind a move's name that only say which kit it is done with. */
const kitWords: ReadonlyMap<string, Fits> = new Map([
  ['bodyweight', isWithoutKit],
  ['weighted', has('dumbbell', 'kettlebell', 'barbell', 'plate', 'medicine ball', 'slam ball', 'sandbag')],
  ['dumbbell', has('dumbbell')],
  ['kettlebell', has('kettlebell')],
  ['barbell', has('barbell')],
  ['plate', has('plate')],
  ['band', has('long band', 'mini band')],
  ['strap', has('suspension strap')],
  ['suspension', has('suspension strap')],
  ['bench', has('bench')],
  ['step', has('step')],
  ['box', has('box')],
  ['ball', has('medicine ball', 'slam ball')],
  ['sandbag', has('sandbag')],
  ['slider', has('slider')],
  ['chair', has('chair')],
]);

const unusedByThemselves: ReadonlySet<string> = new Set([
  'medicine',
  'mini',
  'long',
  'loop',
  'resistance',
  'double',
]);

/** A name's words parted into its kit words and the rest; undefined where it has none of the first. */
export const partKitWords = (
  words: readonly string[],
): { readonly rest: readonly string[]; readonly isDoneWith: (move: Move) => boolean } | undefined => {
  const fits = words.flatMap((word) => kitWords.get(word) ?? []);
  if (fits.length === 0) return undefined;
  const rest = words.filter((word) => !kitWords.has(word) && !unusedByThemselves.has(word));
  if (rest.length === 0) return undefined;
  return {
    rest,
    isDoneWith: (move) =>
      fits.every((serves) => [move.kit, ...(move.otherKit ?? [])].some((kit) => serves(kit))),
  };
};
