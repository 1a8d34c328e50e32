import { ambiguousNames } from './ambiguous-names.ts';
import type { Catalogue } from './catalogue.ts';
import type { Move, MoveId } from './move.ts';
import { nameParts } from './name-words.ts';

/** One way to write a move: its name, a nickname, or a name that several moves share. */
export type NameEntry = {
  /** As written in the catalogue. */
  readonly spelling: string;
  readonly how: 'name' | 'nickname';
  readonly moves: readonly Move[];
  readonly words: readonly string[];
  /** The words as parted by spaces only: `pushup` for push-up. */
  readonly spacedWords: readonly string[];
  /** The words without a space between them. */
  readonly key: string;
  /** The letters of `key` in alphabetical order. */
  readonly letters: string;
};

export type NameIndex = {
  readonly byKey: ReadonlyMap<string, NameEntry>;
  readonly byLetters: ReadonlyMap<string, readonly NameEntry[]>;
  readonly byLength: ReadonlyMap<number, readonly NameEntry[]>;
  readonly byWord: ReadonlyMap<string, readonly NameEntry[]>;
  readonly wordsByLength: ReadonlyMap<number, readonly string[]>;
  readonly wordsByPair: ReadonlyMap<string, readonly string[]>;
};

/** The letters of a text in alphabetical order: equal for any order and spacing of the same words. */
export const lettersOf = (key: string): string => [...key].sort().join('');

/** Neighbouring letters of a word, its ends marked: `^row$` gives `^r ro ow w$`. */
export const pairsOf = (word: string): readonly string[] =>
  Array.from({ length: word.length + 1 }, (_, at) => `^${word}$`.slice(at, at + 2));

const entryOf = (spelling: string, how: 'name' | 'nickname', moves: readonly Move[]): NameEntry => {
  const parts = nameParts(spelling);
  const words = parts.flat();
  const key = words.join('');
  const spacedWords = parts.map((part) => part.join(''));
  return { spelling, how, moves, words, spacedWords, key, letters: lettersOf(key) };
};

const entriesByMove = new WeakMap<Move, readonly NameEntry[]>();

const entriesOfMove = (move: Move): readonly NameEntry[] => {
  const kept = entriesByMove.get(move);
  if (kept !== undefined) return kept;
  const nicknames = move.nicknames.map((nickname) => entryOf(nickname, 'nickname', [move]));
  const entries = [...nicknames, entryOf(move.name, 'name', [move])];
  entriesByMove.set(move, entries);
  return entries;
};

const known = (catalogue: Catalogue, ids: readonly MoveId[]): readonly Move[] =>
  ids.flatMap((id) => catalogue.byId.get(id) ?? []);

/** Every entry of a catalogue; where two share a key, the later one stands: a studio's own. */
const entriesOf = (catalogue: Catalogue): readonly NameEntry[] => {
  const shared = ambiguousNames.flatMap(({ names, ids }) =>
    names.map((name) => entryOf(name, 'nickname', known(catalogue, ids))),
  );
  const own = [...(catalogue.ownNames ?? [])].map(([name, id]) =>
    entryOf(name, 'nickname', known(catalogue, [id])),
  );
  const found = [...shared, ...catalogue.moves.flatMap(entriesOfMove), ...own].filter(
    (entry) => entry.moves.length > 0,
  );
  return [...new Map(found.map((entry) => [entry.key, entry])).values()];
};

const groupBy = <Item, Key>(
  items: readonly Item[],
  keysOf: (item: Item) => readonly Key[],
): ReadonlyMap<Key, readonly Item[]> => {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    for (const key of keysOf(item)) {
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [item]);
      else group.push(item);
    }
  }
  return groups;
};

/** Whole names of retired moves: read where nothing else has them, never near anything. */
const retiredEntries = (catalogue: Catalogue): readonly NameEntry[] =>
  catalogue.byId.size === catalogue.moves.length
    ? []
    : [...catalogue.byId.values()].filter(({ retired }) => retired === true).flatMap(entriesOfMove);

const buildIndex = (catalogue: Catalogue): NameIndex => {
  const entries = entriesOf(catalogue);
  const words = [...new Set(entries.flatMap((entry) => entry.words))];
  const writtenWords = [...new Set([...words, ...entries.flatMap((entry) => entry.spacedWords)])];
  return {
    byKey: new Map([...retiredEntries(catalogue), ...entries].map((entry) => [entry.key, entry])),
    byLetters: groupBy(entries, (entry) => [entry.letters]),
    byLength: groupBy(entries, (entry) => [entry.key.length]),
    byWord: groupBy(entries, (entry) => [...new Set(entry.words)]),
    wordsByLength: groupBy(writtenWords, (word) => [word.length]),
    wordsByPair: groupBy(words, (word) => [...new Set(pairsOf(word))]),
  };
};

const indexes = new WeakMap<Catalogue, NameIndex>();

/** The index of a catalogue's names, built when first asked for. */
export const nameIndexOf = (catalogue: Catalogue): NameIndex => {
  const built = indexes.get(catalogue);
  if (built !== undefined) return built;
  const index = buildIndex(catalogue);
  indexes.set(catalogue, index);
  return index;
};
