import type { BlockKind } from '../../plan/plan.ts';
import { duration } from '../durations.ts';
import { limits } from '../limits.ts';
import { anyPhrase, type Match, wholeNumber } from '../matches.ts';
import type { Token } from '../tokens-of.ts';
import { clausesOf } from './clauses.ts';
import { everydayHead } from './everyday-head.ts';

/**
 * How a block line begins; `every` is an EMOM with its own interval, `rounds` a circuit that begins `3 rounds`.
 * `movesALetter`: so many lines below it are one letter.
 */
export type BlockWord = {
  readonly kind: BlockKind;
  readonly form: 'word' | 'every' | 'rounds';
  readonly movesALetter?: number;
};

const words: ReadonlyMap<string, BlockKind> = new Map<string, BlockKind>([
  ['warm up', 'warm-up'],
  ['wu', 'warm-up'],
  ['cool down', 'cool-down'],
  ['cd', 'cool-down'],
  ['mobility', 'mobility'],
  ['song', 'song'],
  ['circuit', 'circuit'],
  ['straight', 'straight'],
  ['straight sets', 'straight'],
  ['straight set', 'straight'],
  ['stations', 'stations'],
  ['station', 'stations'],
  ['emom', 'emom'],
  ['every', 'emom'],
  ['tabata', 'tabata'],
  ['amrap', 'amrap'],
  ['for time', 'for time'],
  ['ladder', 'ladder'],
  ['finisher', 'finisher'],
  ['rest', 'rest'],
  ['water', 'water'],
  ['explain', 'explain'],
  ['demo', 'explain'],
  ['set up', 'set-up'],
  ['clear up', 'clear-up'],
]);

/** Words for straight sets of letters with several moves. */
const groups: ReadonlyMap<string, number> = new Map([
  ['super set', 2],
  ['super sets', 2],
  ['tri set', 3],
  ['tri sets', 3],
  ['giant set', limits.movesALetter],
  ['giant sets', limits.movesALetter],
]);

/** Words that no move's name begins with: what follows is read as the block's, and told where it can't be. */
const never = new Set<BlockKind>([
  'warm-up',
  'cool-down',
  'circuit',
  'stations',
  'emom',
  'tabata',
  'amrap',
  'for time',
  'finisher',
  'clear-up',
  'rest',
  'water',
  'explain',
]);

/** The block word a line begins with, and the place behind it. A word that goes on as a name is none. */
export function blockWordAt(tokens: readonly Token[]): Match<BlockWord> {
  const counted = wholeNumber(tokens, 0);
  const rounds = counted && anyPhrase(tokens, counted.next, ['rounds', 'round']);
  if (
    rounds !== undefined &&
    clausesOf(tokens, rounds.next, 'seconds').every(({ kind }) => kind !== 'unknown')
  ) {
    return { value: { kind: 'circuit', form: 'rounds' }, next: 0 };
  }
  const found = anyPhrase(tokens, 0, [...words.keys(), ...groups.keys()]);
  const movesALetter = found && groups.get(found.value);
  const kind = movesALetter === undefined ? found && words.get(found.value) : 'straight';
  if (found === undefined || kind === undefined) return undefined;
  if (tokens[found.next]?.text === '-' && tokens[found.next]?.glued === true) return undefined;
  if (!never.has(kind) && !goesOnAsBlock(tokens, found.next)) return undefined;
  const form = found.value === 'every' ? 'every' : 'word';
  return { value: { kind, form, ...(movesALetter && { movesALetter }) }, next: found.next };
}

/** The tokens of a line with its block word in front of its length and its name. */
export function wordFirst(typed: readonly Token[]): readonly Token[] {
  const tokens = everydayHead(typed) ?? typed;
  return blockWordAt(tokens) === undefined ? nameBehindWord(lengthBehindWord(tokens)) : tokens;
}

/** What may have its length in front: `5 min amrap`, `1 min rest between rounds`. */
const lengthInFront = new Set<BlockKind>([
  'warm-up',
  'cool-down',
  'mobility',
  'song',
  'emom',
  'amrap',
  'rest',
  'water',
  'explain',
  'set-up',
  'clear-up',
]);

/** The tokens of a line with a length in front of its block word, in the order the line is read in. */
function lengthBehindWord(tokens: readonly Token[]): readonly Token[] {
  const length = duration(tokens, 0, 'minutes');
  if (length === undefined || length.value.bare) return tokens;
  const rest = tokens.slice(length.next);
  const word = blockWordAt(rest);
  if (word === undefined || word.value.form !== 'word' || !lengthInFront.has(word.value.kind)) return tokens;
  return [...rest.slice(0, word.next), ...tokens.slice(0, length.next), ...rest.slice(word.next)];
}

const namedInFront = new Set<BlockKind>(['circuit', 'straight', 'stations', 'finisher']);
const mostNameWords = 3;

/** `core finisher x2, 30/10`: the words in front of the block word become its name in brackets. */
function nameBehindWord(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, index) => {
    const kind = blockWordAt(tokens.slice(index))?.value.kind;
    return kind !== undefined && namedInFront.has(kind) && tokens[index]?.kind === 'word';
  });
  const [first, last] = [tokens[0], tokens[at - 1]];
  const name = tokens.slice(0, Math.max(0, at));
  if (first === undefined || last === undefined || at > mostNameWords) return tokens;
  if (name.some(({ kind }) => kind !== 'word')) return tokens;
  const behind = at + (blockWordAt(tokens.slice(at))?.next ?? 0);
  const clauses = clausesOf(tokens, behind, 'seconds');
  if (clauses.length === 0 || clauses.some(({ kind }) => kind === 'unknown')) return tokens;
  const bracket = (text: string, place: number): Token => ({
    kind: 'sign',
    text,
    value: 0,
    start: place,
    end: place,
    glued: false,
  });
  const named = [bracket('(', first.start), ...name, bracket(')', last.end)];
  return [...tokens.slice(at, behind), ...named, ...tokens.slice(behind)];
}

/** Nothing, a sign, a number, or something a block line says. */
function goesOnAsBlock(tokens: readonly Token[], at: number): boolean {
  const token = tokens[at];
  if (token === undefined || token.kind !== 'word' || token.text === 'minute') return true;
  return clausesOf(tokens.slice(at), 0, 'seconds')[0]?.kind !== 'unknown';
}
