import type { OpenBlock, OpenItem } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import { duration } from '../durations.ts';
import { limits } from '../limits.ts';
import { anyPhrase, sign } from '../matches.ts';
import { type LetterReading, noteAt, spanOfTokens, wordsOf } from '../moves/letter-reading.ts';
import { innerText, type MoveToken, packTokens, piecesOf, plainWords } from '../moves/pack-tokens.ts';
import { nameIn, type SplitMark, splitMove } from '../moves/split-move.ts';
import { type BlockReading, tell, within, wordSpan } from './block-reading.ts';
import { secondsSaid } from './read-timed-lines.ts';

type OpenKind = OpenBlock['kind'];

/** An open block's line: its length, and the tokens behind it that list what is done. */
export type OpenLine = { readonly block: OpenBlock; readonly itemTokens: readonly MoveToken[] };

/** `warm-up 6:00: march, hip hinge`, `cool-down to the end`, `song 3:45`. */
export function readOpenLine(reading: BlockReading, kind: OpenKind): OpenLine | undefined {
  const tokens = packTokens(reading.tokens);
  const first = tokens.findIndex(({ start }) => start === reading.tokens[reading.at]?.start);
  let at = first === -1 ? tokens.length : first;
  at = pastSigns(tokens, at);
  const early = nameAt(reading, tokens, at);
  at = pastSigns(tokens, early?.next ?? at);
  const toTheEnd = anyPhrase(tokens, at, ['to the end', 'to end']);
  const length = duration(tokens, at, kind === 'song' ? 'seconds' : 'minutes');
  if (toTheEnd !== undefined && kind !== 'cool-down') {
    return tell(reading, spanOfTokens(tokens.slice(at, toTheEnd.next)), {
      code: 'not-here',
      what: 'to the end',
      block: kind,
    });
  }
  if (toTheEnd === undefined && length === undefined) {
    return tell(reading, wordSpan(reading), { code: 'number-needed', block: kind, works: `${kind} 5:00` });
  }
  const next = toTheEnd?.next ?? length?.next ?? at;
  const span = spanOfTokens(tokens.slice(at, next));
  const fixed = toTheEnd === undefined ? length?.value : undefined;
  const seconds = fixed && (kind === 'song' ? secondsSaid(reading, { ...fixed, span }) : fixed.seconds);
  if (seconds !== undefined) within(reading, span, 'length', seconds, limits.lengthSeconds);
  const late = early ?? nameAt(reading, tokens, next);
  const name = late?.name;
  const block: OpenBlock = {
    kind,
    id: '',
    span: reading.span,
    ...(name === undefined || name === '' ? {} : { name }),
    length: seconds === undefined ? { kind: 'to the end' } : { kind: 'fixed', seconds },
    items: [],
    say: [],
  };
  return { block, itemTokens: tokens.slice(early === undefined ? (late?.next ?? next) : next) };
}

function pastSigns(tokens: readonly MoveToken[], at: number): number {
  return (sign(tokens, at, ':') ?? sign(tokens, at, ','))?.next ?? at;
}

function nameAt(
  reading: BlockReading,
  tokens: readonly MoveToken[],
  at: number,
): { readonly name: string; readonly next: number } | undefined {
  const token = tokens[at];
  return token?.kind === 'note' ? { name: innerText(reading.told.text, token), next: at + 1 } : undefined;
}

/** An item with its words where no move is known by them. */
export type ReadItem = { readonly item: OpenItem; readonly keptWords?: string };

/** What is listed behind or below an open block; unknown words are kept, never a problem. */
export function readItems(tokens: readonly MoveToken[], reading: LetterReading): readonly ReadItem[] {
  const from = tokens.findIndex(({ text }) => text !== ':' && text !== ',');
  if (from === -1) return [];
  return piecesOf(tokens.slice(from), ',')
    .flatMap((piece) => backToBack(piece, reading))
    .flatMap((piece) => readItem(piece, reading) ?? []);
}

/** `march + hip hinge` are two items where both are known. */
function backToBack(piece: readonly MoveToken[], reading: LetterReading): readonly (readonly MoveToken[])[] {
  const parts = piecesOf(piece, '+');
  const known = parts.every(
    (part) => reading.book.find(wordsOf(splitMove(part, reading.book).name)).kind === 'found',
  );
  return parts.length > 1 && known ? parts : [piece];
}

function readItem(piece: readonly MoveToken[], reading: LetterReading): ReadItem | undefined {
  const span = spanOfTokens(piece);
  const { rest, workSeconds } = timeIn(piece, reading);
  const timed = workSeconds === undefined ? {} : { workSeconds };
  const known = knownItem(rest, span, reading);
  if (known !== undefined) return { item: { ...known, ...timed } };
  const text = plainWords(asTyped(withoutEndSigns(rest), reading.told.text));
  if (text === '') return undefined;
  return { item: { id: '', span, what: { kind: 'words', text }, ...timed }, keptWords: text };
}

/** Signs that join or part words say nothing at an item's ends. */
function withoutEndSigns(tokens: readonly MoveToken[]): readonly MoveToken[] {
  const isWord = ({ text }: MoveToken) => !/^[-:.+/&]$/.test(text);
  return tokens.slice(Math.max(0, tokens.findIndex(isWord)), tokens.findLastIndex(isWord) + 1);
}

/** An item's one time and the words without it; with several times all of them stay words. */
function timeIn(
  piece: readonly MoveToken[],
  reading: LetterReading,
): { readonly rest: readonly MoveToken[]; readonly workSeconds?: number } {
  const [time] = timesIn(piece, reading);
  const rest = piece.filter((token) => time === undefined || !time.tokens.includes(token));
  if (time?.mark.kind !== 'time' || time.mark.seconds === 0) return { rest: piece };
  return timesIn(rest, reading).length > 0 ? { rest: piece } : { rest, workSeconds: time.mark.seconds };
}

function timesIn(piece: readonly MoveToken[], reading: LetterReading): readonly SplitMark[] {
  return splitMove(piece, reading.book).marks.filter(({ mark }) => mark.kind === 'time');
}

function knownItem(tokens: readonly MoveToken[], span: Span, reading: LetterReading): OpenItem | undefined {
  if (tokens.some(({ text, kind }) => text === '?' || kind === 'quote')) return undefined;
  const { found, name, marks } = nameIn(splitMove(tokens, reading.book), tokens, reading.book);
  if (found.kind !== 'found' || name.length === 0) return undefined;
  if (found.how === 'slip') {
    noteAt(reading, spanOfTokens(name), { code: 'read-as', read: wordsOf(name), as: found.move.name });
  }
  const detail = plainWords(marks.map((mark) => detailOf(mark, reading)).join(' '));
  return {
    id: '',
    span,
    what: { kind: 'move', moveId: found.move.id },
    ...(detail === '' ? {} : { detail }),
  };
}

function detailOf({ tokens }: SplitMark, reading: LetterReading): string {
  return tokens
    .map((token, index) => {
      const words = token.kind === 'note' ? `(${innerText(reading.told.text, token)})` : token.text;
      return (index > 0 && token.start !== tokens[index - 1]?.end ? ' ' : '') + words;
    })
    .join('');
}

/** The words as the draft has them; brackets and quotes are closed. */
function asTyped(tokens: readonly MoveToken[], text: string): string {
  return tokens
    .map((token, index) => {
      const apart = index > 0 && token.start !== tokens[index - 1]?.end;
      return (apart ? ' ' : '') + tokenAsTyped(token, text);
    })
    .join('');
}

function tokenAsTyped(token: MoveToken, text: string): string {
  switch (token.kind) {
    case 'note':
      return `(${innerText(text, token)})`;
    case 'quote':
      return `"${innerText(text, token)}"`;
    default:
      return text.slice(token.start, token.end);
  }
}
