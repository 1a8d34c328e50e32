import type { Catalogue } from './catalogue.ts';
import { partKitWords } from './kit-words.ts';
import type { Move } from './move.ts';
import { lettersOf, type NameEntry, type NameIndex, nameIndexOf } from './name-index.ts';
import { slipPlace } from './name-slip.ts';
import { nameWords, plainWords } from './name-words.ts';
import { nearNames } from './near-names.ts';

type FoundMove = {
  readonly kind: 'found';
  readonly move: Move;
  /** What had to be forgiven; `name` and `nickname` include case, plural, hyphens and trade shorthand. */
  readonly how: 'name' | 'nickname' | 'word order' | 'slip';
  /** The name or nickname that was read, as the catalogue writes it. */
  readonly readAs: string;
};

export type MoveLookUp =
  | FoundMove
  /** Several moves go by this name: the person is asked. */
  | { readonly kind: 'choices'; readonly moves: readonly Move[] }
  /** `near`: at most three, likeliest first. */
  | { readonly kind: 'unknown'; readonly near: readonly Move[] };

type Known = Exclude<MoveLookUp, { kind: 'unknown' }>;

const longestName = 80;
const mostWords = 10;
const shortestSlipWord = 5;

const knownAs = (
  moves: readonly Move[],
  how: FoundMove['how'],
  readAs: string | undefined,
): Known | undefined => {
  const [move, ...others] = moves;
  if (move === undefined) return undefined;
  return others.length === 0
    ? { kind: 'found', move, how, readAs: readAs ?? move.name }
    : { kind: 'choices', moves };
};

const entryAs = (entry: NameEntry, how: FoundMove['how']): Known | undefined =>
  knownAs(entry.moves, how, entry.spelling);

/** Whether the words, in some order and each used once, make up the key without a gap. */
const makeUp = (words: readonly string[], key: string): boolean =>
  words.length === 0
    ? key === ''
    : words.some(
        (word, at) => key.startsWith(word) && makeUp(words.toSpliced(at, 1), key.slice(word.length)),
      );

const byNameOrOrder = (words: readonly string[], index: NameIndex): Known | undefined => {
  const key = words.join('');
  const exact = index.byKey.get(key);
  if (exact !== undefined) return entryAs(exact, exact.how);
  const reordered = (index.byLetters.get(lettersOf(key)) ?? []).filter((entry) => makeUp(words, entry.key));
  const [only, ...others] = reordered;
  if (only === undefined) return undefined;
  const moves = [...new Set(reordered.flatMap((entry) => entry.moves))];
  return others.length === 0 ? entryAs(only, 'word order') : knownAs(moves, 'word order', undefined);
};

/** `dumbbell goblet squat` is a goblet squat, since that is done with a dumbbell. */
const byNameBesideKit = (words: readonly string[], index: NameIndex): Known | undefined => {
  const parted = partKitWords(words);
  if (parted === undefined) return undefined;
  const named = byNameOrOrder(parted.rest, index);
  if (named === undefined) return undefined;
  return named.kind === 'found'
    ? knownAs([named.move].filter(parted.isDoneWith), 'nickname', undefined)
    : knownAs(named.moves.filter(parted.isDoneWith), 'nickname', undefined);
};

const byWords = (words: readonly string[], index: NameIndex): Known | undefined =>
  byNameOrOrder(words, index) ?? byNameBesideKit(words, index);

const lengthsNear = (length: number): readonly number[] => [length - 1, length, length + 1];

/** How long the word is that holds this place of an entry's key; a hyphen parts no words. */
const wordLengthAt = (place: number, entry: NameEntry): number => {
  let end = 0;
  for (const word of entry.spacedWords) {
    end += word.length;
    if (place < end) return word.length;
  }
  return 0;
};

const isNearEntry = (typed: string, entry: NameEntry): boolean => {
  const place = slipPlace(typed, entry.key);
  return place !== undefined && wordLengthAt(place, entry) >= shortestSlipWord;
};

/** The whole name with one slip, however it is spaced. */
const slipsOfName = (typed: string, index: NameIndex): readonly Known[] =>
  lengthsNear(typed.length)
    .flatMap((length) => index.byLength.get(length) ?? [])
    .filter((entry) => isNearEntry(typed, entry))
    .flatMap((entry) => entryAs(entry, 'slip') ?? []);

const wordsNear = (typed: string, index: NameIndex): readonly string[] =>
  lengthsNear(typed.length)
    .flatMap((length) => (length < shortestSlipWord ? [] : (index.wordsByLength.get(length) ?? [])))
    .filter((word) => slipPlace(typed, word) !== undefined);

/** One word with a slip, the words in any order or beside a kit word. */
const slipsOfWord = (words: readonly string[], index: NameIndex): readonly Known[] =>
  words.flatMap((typed, at) =>
    index.byWord.has(typed)
      ? []
      : wordsNear(typed, index).flatMap((word) => byWords(words.with(at, word), index) ?? []),
  );

const withSlip = (known: Known): Known => (known.kind === 'found' ? { ...known, how: 'slip' } : known);

const movesOf = (known: Known): readonly Move[] => (known.kind === 'found' ? [known.move] : known.moves);

const sameMoves = (a: Known, b: Known): boolean => {
  const others = movesOf(b);
  return movesOf(a).length === others.length && movesOf(a).every((move) => others.includes(move));
};

const bySlip = (typedText: string, words: readonly string[], index: NameIndex): Known | undefined => {
  if (words.every((word) => index.byWord.has(word))) return undefined;
  const asTyped = plainWords(typedText);
  const isSame = asTyped.join(' ') === words.join(' ');
  const near = (isSame ? [words] : [words, asTyped]).flatMap((typed) => [
    ...slipsOfName(typed.join(''), index),
    ...slipsOfWord(typed, index),
  ]);
  const [first] = near;
  if (first === undefined) return undefined;
  return near.every((known) => sameMoves(known, first)) ? withSlip(first) : undefined;
};

/**
 * The move that a person means by these words, without side words, numbers or notes. Forgives case,
 * plural, a hyphen, a space or nothing inside a name, word order, trade shorthand, and one slip in a word
 * of five or more letters where exactly one move is near. A studio's own names are part of its catalogue,
 * see `extend-catalogue.ts`.
 */
export const lookUpMove = (words: string, catalogue: Catalogue): MoveLookUp => {
  const typed = words.length > longestName ? [] : nameWords(words);
  if (typed.length === 0) return { kind: 'unknown', near: [] };
  if (typed.length > mostWords) return { kind: 'unknown', near: nearNames(words, catalogue) };
  const index = nameIndexOf(catalogue);
  return (
    byWords(typed, index) ??
    bySlip(words, typed, index) ?? { kind: 'unknown', near: nearNames(words, catalogue) }
  );
};
