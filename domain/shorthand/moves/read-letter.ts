import type { Letter } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import { duration } from '../durations.ts';
import { limits } from '../limits.ts';
import type { Line } from '../lines-of.ts';
import { anyPhrase, phrase, sign } from '../matches.ts';
import { tokensOf } from '../tokens-of.ts';
import { type LetterReading, noteAt, spanOfTokens, tellAt, wordsOf } from './letter-reading.ts';
import { type MoveToken, packTokens, piecesOf } from './pack-tokens.ts';
import { type ReadMove, readMove } from './read-move.ts';
import { splitMove } from './split-move.ts';
import { type TypedLabel, typedLabelOf } from './typed-labels.ts';

/** A line of moves as read; absent `letter` where something on it could not be. */
export type ReadLetter = {
  readonly letter?: Letter;
  readonly label?: TypedLabel;
  readonly line: Line;
};

type LetterFacts = {
  readonly restSeconds?: number;
  readonly restSpan?: Span;
  readonly wholeSetEachSide: boolean;
  readonly burnout: boolean;
  readonly rest: readonly MoveToken[];
};

/** One line below a block line: a move, or several back to back, or one a round. */
export function readLetter(reading: LetterReading): ReadLetter {
  const { line, told } = reading;
  const before = told.problems.length;
  const label = typedLabelOf(line);
  const tokens = packTokens(tokensOf(line, label?.length ?? 0));
  const byRound = anyPhrase(tokens, 0, ['by round', 'by rounds']);
  const start = byRound === undefined ? 0 : (sign(tokens, byRound.next, ':')?.next ?? byRound.next);
  const facts = letterFacts(tokens.slice(start), reading);
  const parts = byRound === undefined ? partsInTurn(facts.rest, reading) : piecesOf(facts.rest, ',');
  const read = movesOf(parts, facts, reading);
  if (parts.length === 0) tellAt(reading, spanOfTokens(tokens), { code: 'name-needed' });
  if (told.problems.length > before) return { line, ...(label && { label }) };
  const rounds = read.find(({ ownRounds }) => ownRounds !== undefined)?.ownRounds;
  const letter: Letter = {
    id: '',
    span: spanOfTokens(tokens),
    order: byRound === undefined ? 'in turn' : 'by round',
    moves: read.map(({ move }) => move),
    ...(facts.restSeconds === undefined ? {} : { restSeconds: facts.restSeconds }),
    wholeSetEachSide: facts.wholeSetEachSide,
    burnout: facts.burnout,
    ...(rounds === undefined ? {} : { rounds }),
    say: [],
  };
  return { line, letter, ...(label && { label }) };
}

function movesOf(
  parts: readonly (readonly MoveToken[])[],
  facts: LetterFacts,
  reading: LetterReading,
): readonly ReadMove[] {
  const beyond = parts[limits.movesALetter];
  if (beyond !== undefined) {
    tellAt(reading, spanOfTokens(beyond), { code: 'too-many', what: 'moves', most: limits.movesALetter });
  }
  return parts
    .slice(0, limits.movesALetter)
    .flatMap((part) => readMove(part, reading, facts.wholeSetEachSide) ?? []);
}

/** What is said of the whole letter, taken out of the line wherever it stands. */
function letterFacts(tokens: readonly MoveToken[], reading: LetterReading): LetterFacts {
  const rest: MoveToken[] = [];
  let facts: Omit<LetterFacts, 'rest'> = { wholeSetEachSide: false, burnout: false };
  for (let at = 0; at < tokens.length; ) {
    const token = tokens[at];
    const restWord = phrase(tokens, at, 'rest');
    const length = restWord && duration(tokens, restWord.next, 'seconds');
    const wholeSet = anyPhrase(tokens, at, ['whole set each side', 'whole set e/s', 'whole set per side']);
    const burnout = phrase(tokens, at, 'burnout');
    if (length !== undefined) {
      facts = {
        ...facts,
        ...letterRest(length.value.seconds, tokens.slice(at, length.next), facts, reading),
      };
    } else if (wholeSet !== undefined) {
      facts = { ...facts, wholeSetEachSide: true };
      tellBrokenFrame(tokens.slice(at, wholeSet.next), reading);
    } else if (burnout !== undefined) {
      facts = { ...facts, burnout: true };
    } else if (token !== undefined) {
      rest.push(token);
    }
    at = (length ?? wholeSet ?? burnout)?.next ?? at + 1;
  }
  return { ...facts, rest: withoutEndCommas(rest) };
}

function withoutEndCommas(tokens: readonly MoveToken[]): readonly MoveToken[] {
  const last = tokens.findLastIndex(({ text }) => text !== ',' && text !== '.');
  return tokens.slice(0, last + 1);
}

function letterRest(
  seconds: number,
  tokens: readonly MoveToken[],
  facts: Omit<LetterFacts, 'rest'>,
  reading: LetterReading,
): { readonly restSeconds?: number } {
  const span = spanOfTokens(tokens);
  if (ownRestIsForbidden.has(reading.kind)) {
    return tellAt(reading, span, { code: 'not-here', what: 'rest', block: reading.kind }) ?? {};
  }
  if (facts.restSeconds !== undefined)
    return tellAt(reading, span, { code: 'said-twice', what: 'rest' }) ?? {};
  const { least, most } = limits.restSeconds;
  if (seconds > most) return tellAt(reading, span, { code: 'out-of-range', what: 'rest', least, most }) ?? {};
  return { restSeconds: seconds };
}

const ownRestIsForbidden = new Set<LetterReading['kind']>(['tabata', 'emom', 'amrap', 'for time', 'ladder']);

function tellBrokenFrame(tokens: readonly MoveToken[], { kind, ...reading }: LetterReading): void {
  if (kind !== 'stations' && kind !== 'emom' && kind !== 'tabata') return;
  const sides = 'whole set each side';
  tellAt({ kind, ...reading }, spanOfTokens(tokens), { code: 'sides-break-frame', block: kind, sides });
}

/** Moves joined by `+`; `&`, `and` and `/` join too where a known move stands on each side. */
function partsInTurn(
  tokens: readonly MoveToken[],
  reading: LetterReading,
): readonly (readonly MoveToken[])[] {
  return piecesOf(tokens, '+').flatMap((piece) => splitAtJoiner(piece, reading) ?? [piece]);
}

const joiners = ['&', 'and', '/'];

function splitAtJoiner(
  piece: readonly MoveToken[],
  reading: LetterReading,
): readonly (readonly MoveToken[])[] | undefined {
  const joiner = piece.find(({ text }) => joiners.includes(text));
  if (joiner === undefined) return undefined;
  const whole = reading.book.find(wordsOf(splitMove(piece, reading.book).name));
  if (whole.kind === 'choices' || (whole.kind === 'found' && whole.how !== 'slip')) return undefined;
  const parts = joiners.reduce<readonly (readonly MoveToken[])[]>(
    (pieces, text) => pieces.flatMap((each) => piecesOf(each, text)),
    [piece],
  );
  const moves = parts.flatMap((part) => {
    const found = reading.book.find(wordsOf(splitMove(part, reading.book).name));
    return found.kind === 'unknown' ? [] : [found.kind === 'found' ? found.move.name : wordsOf(part)];
  });
  if (parts.length < 2 || moves.length < parts.length) return undefined;
  noteAt(reading, spanOfTokens(piece), { code: 'back-to-back', sign: joiner.text, moves });
  return parts;
}
