import type { MoveLookUp } from '../../catalogue/look-up-move.ts';
import type { Option } from '../../plan/plan.ts';
import { type LetterReading, wordsOf } from './letter-reading.ts';
import { type MoveMark, moveMarkAt } from './move-marks.ts';
import type { NameBook } from './name-book.ts';
import type { MoveToken } from './pack-tokens.ts';

/** A mark with the tokens it took; an option has the tokens of its own words too. */
export type SplitMark = {
  readonly mark: MoveMark;
  readonly tokens: readonly MoveToken[];
  readonly words?: readonly MoveToken[];
  /** Whether a word of the name stands before it. */
  readonly behindName: boolean;
};

/** One move's tokens parted into its name and what is said beside it. */
export type SplitMove = {
  readonly name: readonly MoveToken[];
  readonly marks: readonly SplitMark[];
};

const decoration = /^(?:[.!:,]|\p{Extended_Pictographic}|\p{Emoji_Modifier}|\ufe0f|\u200d)$/u;

export function splitMove(tokens: readonly MoveToken[], book: NameBook): SplitMove {
  const name: MoveToken[] = [];
  const marks: SplitMark[] = [];
  for (let at = 0; at < tokens.length; ) {
    const found = moveMarkAt(tokens, at);
    const token = tokens[at];
    if (token === undefined) break;
    if (found === undefined) {
      if (!(token.kind === 'sign' && decoration.test(token.text))) name.push(token);
      at += 1;
      continue;
    }
    const words = found.value.kind === 'option' ? optionWords(tokens, found.next, book) : undefined;
    const next = found.next + (words?.length ?? 0);
    marks.push({
      mark: found.value,
      tokens: tokens.slice(at, next),
      behindName: name.length > 0,
      ...(words && { words }),
    });
    at = next;
  }
  return { name, marks };
}

/**
 * The words of an option run to a comma, a note or the next option where they are one known name, else to
 * the first thing that is said of the move itself.
 */
function optionWords(tokens: readonly MoveToken[], from: number, book: NameBook): readonly MoveToken[] {
  const hardStop = tokens.findIndex((_, at) => at >= from && endsOption(tokens, at));
  const whole = tokens.slice(from, hardStop === -1 ? tokens.length : hardStop);
  const firstMark = whole.findIndex((_, at) => moveMarkAt(whole, at) !== undefined);
  if (firstMark === -1 || isKnown(book.find(wordsOf(whole)))) return whole;
  return whole.slice(0, firstMark);
}

function endsOption(tokens: readonly MoveToken[], at: number): boolean {
  if (tokens[at]?.text === ',' || tokens[at]?.kind === 'note') return true;
  return moveMarkAt(tokens, at)?.value.kind === 'option';
}

function isKnown(found: MoveLookUp): boolean {
  return found.kind === 'found' && found.how !== 'slip';
}

/** Marks that may be words of a name (`alternating curl`, `90/90 switch`), fewest taken in first. */
const nameLike: readonly ReadonlySet<MoveMark['kind']>[] = [
  new Set(['sides', 'weight']),
  new Set(['number']),
  new Set(['sides', 'weight', 'number', 'reps', 'sets']),
];

export type NamedMove = {
  readonly found: MoveLookUp;
  readonly name: readonly MoveToken[];
  readonly marks: readonly SplitMark[];
};

/**
 * The name looked up without the words beside it; where that is no known name, with those that may be part
 * of it.
 */
export function nameIn(split: SplitMove, tokens: readonly MoveToken[], book: NameBook): NamedMove {
  const bare: NamedMove = { found: book.find(wordsOf(split.name)), ...split };
  if (isKnown(bare.found)) return bare;
  const longer = nameLike.map((kinds) => longerName(split, tokens, kinds, book));
  return longer.find(({ found }) => isKnown(found)) ?? bare;
}

function longerName(
  split: SplitMove,
  tokens: readonly MoveToken[],
  kinds: ReadonlySet<MoveMark['kind']>,
  book: NameBook,
): NamedMove {
  const kept = split.marks.filter(({ mark }) => !kinds.has(mark.kind));
  const beside = new Set(kept.flatMap((mark) => mark.tokens));
  const name = tokens.filter((token) => !beside.has(token) && token.text !== ',');
  const found = kept.length === split.marks.length ? nothing : book.find(wordsOf(name));
  const from = name[0]?.start ?? 0;
  const marks = kept.map((mark) => ({ ...mark, behindName: (mark.tokens[0]?.start ?? 0) > from }));
  return { found, name, marks };
}

const nothing: MoveLookUp = { kind: 'unknown', near: [] };

export function optionOf(kind: Option['kind'], words: readonly MoveToken[], reading: LetterReading): Option {
  const found = reading.book.find(wordsOf(words));
  if (found.kind === 'found') return { kind, moveId: found.move.id, text: found.move.name };
  return { kind, text: wordsOf(words) };
}
