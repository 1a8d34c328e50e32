import type { PlannedMove } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import { limits } from '../limits.ts';
import { phraseOf } from '../matches.ts';
import type { LimitedThing } from '../problem.ts';
import { type LetterReading, noteAt, spanOfTokens, tellAt, wordsOf } from './letter-reading.ts';
import type { MoveMark } from './move-marks.ts';
import { nearNameOf } from './name-book.ts';
import { innerText, type MoveToken, piecesOf } from './pack-tokens.ts';
import { settleSides } from './settle-sides.ts';
import { nameIn, optionOf, type SplitMark, splitMove } from './split-move.ts';
import { type WishPart, wishOf, wishPhrases } from './wish-words.ts';

/** One move as read, with the sets of its own where they were written (`3x10`). */
export type ReadMove = { readonly move: PlannedMove; readonly ownRounds?: number };

type Choice = PlannedMove['choice'];
type Named = { readonly choice: Choice; readonly marks: readonly SplitMark[] };

/** One move with everything beside its name. What can't be read is told, and the move is then absent. */
export function readMove(
  tokens: readonly MoveToken[],
  reading: LetterReading,
  wholeSetEachSide: boolean,
): ReadMove | undefined {
  const before = reading.told.problems.length;
  const named = choiceOf(tokens, reading);
  if (named === undefined) return undefined;
  const facts = factsOf(named.marks, reading);
  const { sets, ...stated } = facts;
  const written: PlannedMove = {
    id: '',
    span: spanOfTokens(tokens),
    choice: named.choice,
    sides: 'both',
    ...stated,
  };
  const sidesMark = named.marks.find(({ mark }) => mark.kind === 'sides');
  const move = settleSides(written, sidesMark && spanOfTokens(sidesMark.tokens), wholeSetEachSide, reading);
  if (reading.told.problems.length > before) return undefined;
  return { move, ...(sets === undefined ? {} : { ownRounds: sets }) };
}

function choiceOf(tokens: readonly MoveToken[], reading: LetterReading): Named | undefined {
  const question = tokens.findIndex((token) => token.text === '?');
  if (question !== -1) return openChoice(tokens, question, reading);
  const quote = tokens.find((token) => token.kind === 'quote');
  if (quote !== undefined) return keptWords(tokens, quote, reading);
  return moveChoice(tokens, reading);
}

/** `"…"`: a line kept as words, with its time and no load. */
function keptWords(
  tokens: readonly MoveToken[],
  quote: MoveToken,
  reading: LetterReading,
): Named | undefined {
  const text = innerText(reading.told.text, quote);
  const { name, marks } = splitMove(
    tokens.filter((token) => token !== quote),
    reading.book,
  );
  if (text === '') return tellAt(reading, spanOfTokens([quote]), { code: 'name-needed' });
  if (name.length > 0) return unknownWords(name, reading);
  return { choice: { kind: 'words', text }, marks };
}

function openChoice(
  tokens: readonly MoveToken[],
  question: number,
  reading: LetterReading,
): Named | undefined {
  const others = tokens.filter((_, at) => at !== question);
  const { name, marks } = splitMove(others, reading.book);
  const parts: WishPart[] = [];
  const unknown: MoveToken[] = [];
  for (let at = 0; at < name.length; ) {
    const part = phraseOf(name, at, wishPhrases);
    const token = name[at];
    if (part !== undefined) parts.push(part.value);
    else if (token !== undefined && !fillers.has(token.text)) unknown.push(token);
    at = part?.next ?? at + 1;
  }
  if (unknown.length > 0) return tellAt(reading, spanOfTokens(unknown), { code: 'unknown-wish' });
  const words = name.filter(({ text }) => !fillers.has(text));
  return { choice: { kind: 'open', wish: wishOf(wordsOf(words), parts) }, marks };
}

const fillers = new Set(['with', 'a', 'for', 'and', ',']);

function moveChoice(tokens: readonly MoveToken[], reading: LetterReading): Named | undefined {
  const { found, name, marks } = nameIn(splitMove(tokens, reading.book), tokens, reading.book);
  if (name.length === 0) return tellAt(reading, spanOfTokens(tokens), { code: 'name-needed' });
  const span = spanOfTokens(name);
  switch (found.kind) {
    case 'found':
      if (found.how === 'slip')
        noteAt(reading, span, { code: 'read-as', read: wordsOf(name), as: found.move.name });
      if (found.move.retired) noteAt(reading, span, { code: 'retired-move', move: found.move.name });
      return { choice: { kind: 'move', moveId: found.move.id }, marks };
    case 'choices':
      return tellAt(reading, span, { code: 'ambiguous-move', choices: found.moves.map(nearNameOf) });
    case 'unknown': {
      const two = twoMoves(tokens, reading);
      return two === undefined
        ? tellAt(reading, span, { code: 'unknown-move', near: found.near.map(nearNameOf) })
        : tellAt(reading, span, { code: 'two-moves', ...two });
    }
  }
}

/** `squat, row` on one line: two known names with a comma between. */
function twoMoves(
  tokens: readonly MoveToken[],
  reading: LetterReading,
): { readonly first: string; readonly second: string } | undefined {
  const pieces = piecesOf(tokens, ',').map((piece) => splitMove(piece, reading.book).name);
  const known = pieces.flatMap((name) => {
    const found = name.length === 0 ? undefined : reading.book.find(wordsOf(name));
    if (found === undefined || found.kind === 'unknown') return [];
    return [found.kind === 'found' ? found.move.name : wordsOf(name)];
  });
  const [first, second] = known;
  return first === undefined || second === undefined ? undefined : { first, second };
}

function unknownWords(name: readonly MoveToken[], reading: LetterReading): undefined {
  return tellAt(reading, spanOfTokens(name), {
    code: 'unknown-words',
    on: 'move',
    works: 'goblet squat 45s heavy',
  });
}

type StatedFacts = Partial<Omit<PlannedMove, 'id' | 'span' | 'choice' | 'options'>> & {
  readonly options: PlannedMove['options'];
  readonly sets?: number;
};

/** Everything said beside the name, each at most once. */
function factsOf(marks: readonly SplitMark[], reading: LetterReading): StatedFacts {
  const notes: string[] = [];
  const options: PlannedMove['options'][number][] = [];
  let facts: Omit<StatedFacts, 'options' | 'note'> = {};
  for (const mark of marks) {
    if (mark.words !== undefined && mark.mark.kind === 'option') {
      const option = readOption(mark.mark.option, mark, reading);
      if (option !== undefined) options.push(option);
      continue;
    }
    if (mark.mark.kind === 'note') {
      notes.push(...mark.tokens.map((token) => innerText(reading.told.text, token)));
      continue;
    }
    const fact = factOf(mark, reading);
    const twice = Object.keys(fact).find((key) => key in facts);
    if (twice !== undefined)
      tellAt(reading, spanOfTokens(mark.tokens), { code: 'said-twice', what: factWords[twice] ?? twice });
    facts = { ...facts, ...fact };
  }
  const note = notes.filter((words) => words !== '').join(', ');
  return { ...facts, options, ...(note === '' ? {} : { note }) };
}

const factWords: Readonly<Record<string, string>> = {
  workSeconds: 'time',
  reps: 'reps',
  sets: 'sets',
  tempo: 'tempo',
  sides: 'side',
  weight: 'weight',
  rpe: 'rpe',
  metres: 'distance',
};

function readOption(
  kind: 'easier' | 'harder' | 'or',
  mark: SplitMark,
  reading: LetterReading,
): PlannedMove['options'][number] | undefined {
  const words = mark.words ?? [];
  if (words.length === 0) return tellAt(reading, spanOfTokens(mark.tokens), { code: 'name-needed' });
  const option = optionOf(kind, words, reading);
  if (option.moveId === undefined)
    noteAt(reading, spanOfTokens(words), { code: 'option-kept', text: option.text });
  return option;
}

type Fact = Omit<StatedFacts, 'options' | 'note'>;

function factOf({ mark, tokens, behindName }: SplitMark, reading: LetterReading): Fact {
  const span = spanOfTokens(tokens);
  switch (mark.kind) {
    case 'time':
      return ranged(reading, span, 'work', mark.seconds, limits.workSeconds)
        ? { workSeconds: mark.seconds }
        : {};
    case 'reps':
      return ranged(reading, span, 'reps', mark.reps, limits.reps) ? { reps: mark.reps } : {};
    case 'sets':
      return setsOf(mark, span, reading);
    case 'number':
      return bareNumber(mark.value, span, behindName, reading);
    case 'tempo':
      if (mark.threeNumbers) noteAt(reading, span, { code: 'last-pause-assumed' });
      return ranged(reading, span, 'work', secondsOf(mark.tempo), { least: 1, most: 120 })
        ? { tempo: mark.tempo }
        : {};
    case 'sides':
      return { sides: mark.sides };
    case 'weight':
      return mark.weight.kind === 'feel' || ranged(reading, span, 'weight', mark.weight.amount, limits.weight)
        ? { weight: mark.weight }
        : {};
    case 'rpe':
      return ranged(reading, span, 'rpe', mark.rpe, limits.rpe) ? { rpe: mark.rpe } : {};
    case 'metres':
      return ranged(reading, span, 'metres', mark.metres, limits.metres) ? { metres: mark.metres } : {};
    case 'at': {
      const works =
        mark.value <= limits.rpe.most
          ? [`rpe ${mark.value}`, `${mark.value}kg`]
          : [`${mark.value}kg`, `${mark.value}lb`];
      tellAt(reading, span, { code: 'sign-asked', works });
      return {};
    }
    case 'option':
    case 'note':
      return {};
  }
}

function secondsOf(tempo: NonNullable<PlannedMove['tempo']>): number {
  return tempo.lowerSeconds + tempo.bottomPauseSeconds + tempo.liftSeconds + tempo.topPauseSeconds;
}

/** Sets of its own belong to straight sets only; elsewhere they are asked. */
function setsOf(mark: MoveMark & { readonly kind: 'sets' }, span: Span, reading: LetterReading): Fact {
  if (reading.kind !== 'straight') {
    tellAt(reading, span, { code: 'not-here', what: 'sets of its own', block: reading.kind });
    return {};
  }
  const good =
    ranged(reading, span, 'rounds', mark.rounds, limits.rounds) &&
    ranged(reading, span, 'reps', mark.reps, limits.reps);
  return good ? { sets: mark.rounds, reps: mark.reps } : {};
}

/** Before the name it is reps; behind it, seconds on a clock from 15 up, reps without a clock, else asked. */
function bareNumber(value: number, span: Span, behindName: boolean, reading: LetterReading): Fact {
  if (!Number.isInteger(value)) {
    tellAt(reading, span, { code: 'unit-needed', works: [`${value}kg`] });
    return {};
  }
  if (!behindName || !reading.timed) {
    return ranged(reading, span, 'reps', value, limits.reps) ? { reps: value } : {};
  }
  if (value < 15) {
    tellAt(reading, span, { code: 'unit-needed', works: [`x${value}`, `${value}s`] });
    return {};
  }
  if (!ranged(reading, span, 'work', value, limits.workSeconds)) return {};
  noteAt(reading, span, { code: 'bare-seconds', seconds: value });
  return { workSeconds: value };
}

function ranged(
  reading: LetterReading,
  span: Span,
  what: LimitedThing,
  value: number,
  range: { readonly least: number; readonly most: number },
): boolean {
  const { least, most } = range;
  const good = value >= least && value <= most;
  if (!good) tellAt(reading, span, { code: 'out-of-range', what, least, most });
  return good;
}
