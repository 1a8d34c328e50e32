import type { Catalogue } from './catalogue.ts';
import type { Move } from './move.ts';
import { type NameEntry, nameIndexOf, pairsOf } from './name-index.ts';
import { nameWords } from './name-words.ts';

/** Below these shares of likeness a word or a name is no help to the person; ours, tried on the spellings of the tests. */
const leastWordLikeness = 0.5;
const leastNameLikeness = 0.38;

/** How like two words are, 0 to 1: shared neighbouring letters, and a start in common for a word cut short. */
const wordLikeness = (shared: number, typed: string, word: string): number => {
  const dice = (2 * shared) / (typed.length + word.length + 2);
  const isCutShort =
    Math.min(typed.length, word.length) >= 3 && (word.startsWith(typed) || typed.startsWith(word));
  return typed === word ? 1 : Math.max(dice, isCutShort ? 0.6 : 0);
};

const likeWords = (
  typed: string,
  wordsByPair: ReadonlyMap<string, readonly string[]>,
): ReadonlyMap<string, number> => {
  const shared = new Map<string, number>();
  for (const pair of new Set(pairsOf(typed))) {
    for (const word of wordsByPair.get(pair) ?? []) shared.set(word, (shared.get(word) ?? 0) + 1);
  }
  const likenesses = [...shared].map(([word, count]): [string, number] => [
    word,
    wordLikeness(count, typed, word),
  ]);
  return new Map(likenesses.filter(([, likeness]) => likeness >= leastWordLikeness));
};

const bestOf = <Item>(items: readonly Item[], likenessOf: (item: Item) => number | undefined): number => {
  let best = 0;
  for (const item of items) best = Math.max(best, likenessOf(item) ?? 0);
  return best;
};

/** The mean over the words of both sides of how well each is met on the other. */
const nameLikeness = (likenesses: readonly ReadonlyMap<string, number>[], entry: NameEntry): number => {
  let sum = 0;
  for (const likeness of likenesses) sum += bestOf(entry.words, (word) => likeness.get(word));
  for (const word of entry.words) sum += bestOf(likenesses, (likeness) => likeness.get(word));
  return sum / (likenesses.length + entry.words.length);
};

/** The known moves whose names are most like the words, best first; equal ones by level, then in catalogue order. */
export const nearNames = (words: string, catalogue: Catalogue, max = 3): readonly Move[] => {
  const index = nameIndexOf(catalogue);
  const likenesses = nameWords(words.slice(0, 80))
    .slice(0, 8)
    .map((typed) => likeWords(typed, index.wordsByPair));
  const met = new Set(likenesses.flatMap((likeness) => [...likeness.keys()]));
  const entries = new Set([...met].flatMap((word) => index.byWord.get(word) ?? []));
  const best = new Map<Move, number>();
  for (const entry of entries) {
    const likeness = nameLikeness(likenesses, entry) + (entry.how === 'name' ? 0.01 : 0);
    for (const move of entry.moves) best.set(move, Math.max(best.get(move) ?? 0, likeness));
  }
  return [...best]
    .filter(([, likeness]) => likeness >= leastNameLikeness)
    .sort(([a, likenessA], [b, likenessB]) => likenessB - likenessA || a.level - b.level)
    .slice(0, max)
    .map(([move]) => move);
};
