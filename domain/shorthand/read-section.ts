import { hasLetters } from '../plan/blocks-of.ts';
import type { Block, BlockKind, Letter, LetteredBlock, OpenBlock } from '../plan/plan.ts';
import { clausesOf } from './blocks/clauses.ts';
import type { BlockLine } from './blocks/read-block-line.ts';
import { readItems } from './blocks/read-open-line.ts';
import { type PlacedLetter, settleLetters } from './blocks/settle-block.ts';
import { type BelowLine, type Section, spanOfLine } from './group-lines.ts';
import { limits } from './limits.ts';
import type { Line } from './lines-of.ts';
import { joinInGroups } from './moves/join-in-groups.ts';
import { type LetterReading, noteAt, tellAt } from './moves/letter-reading.ts';
import type { NameBook } from './moves/name-book.ts';
import { packTokens } from './moves/pack-tokens.ts';
import { type ReadLetter, readLetter } from './moves/read-letter.ts';
import { joinTypedLetters, typedLabelOf } from './moves/typed-labels.ts';
import { withRepsEach } from './moves/with-reps-each.ts';
import { tokensOf } from './tokens-of.ts';
import { type Told, tellProblem } from './told.ts';

/** A block as read; absent where its line could not be. `keptWords`: what an open block keeps as text. */
export type ReadSection = { readonly block?: Block; readonly keptWords: readonly string[] };

export function readSection(section: Section, book: NameBook, told: Told): ReadSection {
  const { head } = section;
  switch (head.shape) {
    case 'time':
      for (const below of section.below) {
        const problem = { code: 'line-under-time', block: head.kind } as const;
        tellProblem(told, below.line.number, spanOfLine(below.line), problem);
      }
      return head.time?.kind === 'time' ? { block: head.time.block, keptWords: [] } : { keptWords: [] };
    case 'open':
      return readOpenSection(section, book, told);
    case 'letters':
      return { keptWords: [], ...blockOf(readLetteredSection(section, book, told)) };
  }
}

function blockOf(block: Block | undefined): { readonly block?: Block } {
  return block === undefined ? {} : { block };
}

function readOpenSection({ head, line, below }: Section, book: NameBook, told: Told): ReadSection {
  if (head.shape !== 'open') return { keptWords: [] };
  const readingOf = (at: typeof line): LetterReading => ({
    line: at,
    kind: head.kind,
    timed: true,
    book,
    told,
  });
  for (const each of below) if (each.kind === 'moves') tellInterval(each.line, head.kind, told);
  const inline = head.open === undefined ? [] : readItems(head.open.itemTokens, readingOf(line));
  const listed = below.flatMap((each) =>
    each.kind === 'moves'
      ? readItems(packTokens(tokensOf(each.line, typedLabelOf(each.line)?.length ?? 0)), readingOf(each.line))
      : [],
  );
  if (head.open === undefined) return { keptWords: [] };
  const read = [...inline, ...listed];
  const block: OpenBlock = {
    ...head.open.block,
    items: read.map(({ item }) => item),
    say: saidUnder(below),
  };
  sayInsideTimes(block, readingOf(line));
  return { block, keptWords: read.flatMap(({ keptWords }) => keptWords ?? []) };
}

/** Work and rest belong to a block of their own: the line is no item of a warm-up. */
function tellInterval(line: Line, on: BlockKind, told: Told): void {
  if (clausesOf(tokensOf(line), 0, 'seconds').some(({ kind }) => kind === 'interval')) {
    tellProblem(told, line.number, spanOfLine(line), {
      code: 'unknown-words',
      on,
      works: 'circuit x3, 40/20',
    });
  }
}

function saidUnder(below: readonly BelowLine[]): readonly string[] {
  return below.flatMap((each) => (each.kind === 'say' && each.words !== '' ? [each.words] : []));
}

/** Times inside never change the block's length; a difference is said. */
function sayInsideTimes(block: OpenBlock, reading: LetterReading): void {
  if (block.length.kind !== 'fixed') return;
  const times = block.items.flatMap(({ workSeconds }) => workSeconds ?? []);
  const sumSeconds = times.reduce((sum, seconds) => sum + seconds, 0);
  const blockSeconds = block.length.seconds;
  const allTimed = times.length === block.items.length && times.length > 0;
  if (sumSeconds > blockSeconds || (allTimed && sumSeconds !== blockSeconds)) {
    noteAt(reading, block.span, { code: 'inside-times', sumSeconds, blockSeconds });
  }
}

function readLetteredSection(
  { head, line, below }: Section,
  book: NameBook,
  told: Told,
): LetteredBlock | undefined {
  if (head.shape !== 'letters') return undefined;
  const readingOf = (at: typeof line): LetterReading => ({
    line: at,
    kind: head.kind,
    timed: hasClock(head.kind, head.block),
    book,
    told,
  });
  const eachRound = below.find((each) => each.kind === 'each round');
  const read: ReadLetter[] = [];
  for (const each of below) {
    if (each.kind === 'moves') read.push(readLetter(readingOf(each.line)));
    if (each.kind === 'say') saySomething(each, read, told);
  }
  const letters = lettersOf(read, head, line, told);
  const block = withRestEachRound(head.block, eachRound, below, told);
  if (read.length === 0) {
    tellProblem(told, line.number, spanOfLine(line), { code: 'no-moves', block: head.kind });
    return undefined;
  }
  if (block === undefined) return undefined;
  const placed = letters.map((letter) => ({ letter, reading: readingOf(lineOf(letter, read) ?? line) }));
  const settled = settleLetters(block, withinLimit(placed));
  if (settled.length === 0) return undefined;
  return withKnownRounds(withLetters(block, settled), readingOf(line));
}

/** Lines joined as typed, and as the block's word groups them; where one can't be read, none is grouped. */
function lettersOf(
  read: readonly ReadLetter[],
  { movesALetter, repsEach }: Extract<BlockLine, { readonly shape: 'letters' }>,
  line: Line,
  told: Told,
): readonly Letter[] {
  const typed = joinTypedLetters(read, told);
  const letters = repsEach === undefined ? typed : withRepsEach(typed, repsEach, line.number, told);
  const areRead = read.every(({ letter }) => letter !== undefined);
  return movesALetter === undefined || !areRead
    ? letters
    : joinInGroups(letters, { line, span: spanOfLine(line), movesALetter }, told);
}

function lineOf(letter: Letter, read: readonly ReadLetter[]) {
  return read.find((each) => each.letter?.span.start === letter.span.start)?.line;
}

function withinLimit(placed: readonly PlacedLetter[]): readonly PlacedLetter[] {
  const beyond = placed[limits.lettersABlock];
  if (beyond !== undefined) {
    tellAt(beyond.reading, beyond.letter.span, {
      code: 'too-many',
      what: 'letters',
      most: limits.lettersABlock,
    });
  }
  return placed.slice(0, limits.lettersABlock);
}

function withLetters(block: LetteredBlock, letters: readonly Letter[]): LetteredBlock {
  return { ...block, letters };
}

/** Whether a clock gives the work, so that a bare number on a line is seconds. */
export function hasClock(kind: LetteredBlock['kind'], block: LetteredBlock | undefined): boolean {
  switch (kind) {
    case 'circuit':
    case 'stations':
    case 'finisher':
    case 'emom':
    case 'tabata':
      return true;
    case 'straight':
      return block?.kind === 'straight' && block.intervals.some(({ workSeconds }) => workSeconds > 0);
    case 'amrap':
    case 'for time':
    case 'ladder':
      return false;
  }
}

/** A cue belongs to the letter above it. */
function saySomething(said: BelowLine & { readonly kind: 'say' }, read: ReadLetter[], told: Told): void {
  const last = read.pop();
  if (last === undefined) {
    tellProblem(told, said.line.number, spanOfLine(said.line), { code: 'say-without-letter' });
    return;
  }
  const { letter } = last;
  if (letter === undefined || said.words === '') read.push(last);
  else read.push({ ...last, letter: { ...letter, say: [...letter.say, said.words] } });
}

/** `rest 60 each round` as the last line under a circuit's moves. */
function withRestEachRound(
  block: LetteredBlock | undefined,
  said: (BelowLine & { readonly kind: 'each round' }) | undefined,
  below: readonly BelowLine[],
  told: Told,
): LetteredBlock | undefined {
  if (said === undefined) return block;
  const tell = (problem: Parameters<typeof tellProblem>[3]) => {
    tellProblem(told, said.line.number, spanOfLine(said.line), problem);
    return block;
  };
  if (below.slice(below.indexOf(said)).some(({ kind }) => kind === 'moves')) {
    return tell({ code: 'each-round-not-last' });
  }
  if (block === undefined) return block;
  if (block.kind !== 'circuit' && block.kind !== 'stations' && block.kind !== 'finisher') {
    return tell({ code: 'not-here', what: 'each round', block: block.kind });
  }
  const twice = below.filter(({ kind }) => kind === 'each round').length > 1;
  if (block.betweenRoundsSeconds !== undefined || twice) {
    return tell({ code: 'said-twice', what: 'rest between rounds' });
  }
  return { ...block, betweenRoundsSeconds: said.seconds };
}

/** Straight sets may leave the rounds to letters that all have their own. */
function withKnownRounds(block: LetteredBlock, reading: LetterReading): LetteredBlock | undefined {
  if (block.kind !== 'straight' || block.rounds > 0) return block;
  if (block.letters.every(({ rounds }) => rounds !== undefined)) return { ...block, rounds: 1 };
  return tellAt(reading, block.span, {
    code: 'number-needed',
    block: 'straight',
    works: 'straight x3, 40/20',
  });
}

/** Moves past the eighth bout of a tabata never come; that is said. */
export function sayTooFewBouts(block: Block, told: Told): void {
  if (!hasLetters(block) || block.kind !== 'tabata') return;
  const moves = block.letters.reduce((sum, letter) => sum + letter.moves.length, 0);
  if (moves > 8) told.notes.push({ span: block.span, code: 'bouts-too-few', moves, bouts: 8 });
}
