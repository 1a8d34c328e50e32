import type { Letter, LetteredBlock, PlannedMove } from '../../plan/plan.ts';
import { limits } from '../limits.ts';
import { type LetterReading, noteAt, tellAt } from '../moves/letter-reading.ts';

/** A letter with the reading of its (first) line, for what is told of it once its block is known. */
export type PlacedLetter = { readonly letter: Letter; readonly reading: LetterReading };

/** 3 s a rep for a line that is open or kept as words: Gettman LR et al., Med Sci Sports 1978;10:171–6. */
const assumedSecondsPerRep = 3;

/** The letters as their block takes them; those that don't fit it are told and left out. */
export function settleLetters(block: LetteredBlock, letters: readonly PlacedLetter[]): readonly Letter[] {
  return letters.flatMap(({ letter, reading }) => {
    const before = reading.told.problems.length;
    const settled = settleLetter(block, letter, reading);
    return reading.told.problems.length > before ? [] : [settled];
  });
}

function settleLetter(block: LetteredBlock, letter: Letter, reading: LetterReading): Letter {
  if (letter.moves.length > limits.movesALetter) {
    tellAt(reading, letter.span, { code: 'too-many', what: 'moves', most: limits.movesALetter });
  }
  if (letter.order === 'by round') checkByRound(block, letter, reading);
  switch (block.kind) {
    case 'tabata':
      return { ...letter, moves: letter.moves.map((move) => onTabataClock(move, reading)) };
    case 'emom':
      return onInterval(block, letter, reading);
    case 'straight': {
      const hasClock = block.intervals.some(({ workSeconds }) => workSeconds > 0);
      if (!hasClock) needTimeOrReps(block, letter, reading);
      return letter;
    }
    default:
      return letter;
  }
}

/** `by round` needs one move a round, so it stands only where rounds are counted. */
function checkByRound(block: LetteredBlock, letter: Letter, reading: LetterReading): void {
  if (!('rounds' in block)) {
    tellAt(reading, letter.span, { code: 'not-here', what: 'by round', block: block.kind });
    return;
  }
  const rounds = letter.rounds ?? block.rounds;
  const moves = letter.moves.length;
  if (moves !== rounds && rounds > 0)
    tellAt(reading, letter.span, { code: 'by-round-mismatch', moves, rounds });
}

/** Tabata's bouts are 20 s; a time of its own says the same or is a problem. */
function onTabataClock({ workSeconds, ...move }: PlannedMove, reading: LetterReading): PlannedMove {
  if (workSeconds !== undefined && workSeconds !== 20) {
    tellAt(reading, move.span, { code: 'not-here', what: 'time of its own', block: 'tabata' });
  }
  return move;
}

function needTimeOrReps(block: LetteredBlock, letter: Letter, reading: LetterReading): void {
  for (const move of letter.moves) {
    if (move.workSeconds === undefined && move.reps === undefined && move.metres === undefined) {
      tellAt(reading, move.span, { code: 'time-or-reps-needed', block: block.kind });
    }
  }
}

type EmomBlock = LetteredBlock & { readonly kind: 'emom' };

/** What a letter's moves need must fit the interval, twice where partners swap; a distance without more takes what is left of it. */
function onInterval(block: EmomBlock, letter: Letter, reading: LetterReading): Letter {
  const needs = letter.moves.map((move) => needOf(move, block.workSeconds, reading));
  const times = block.pairs === 'swap' ? 2 : 1;
  const known = times * needs.reduce<number>((sum, seconds) => sum + (seconds ?? 0), 0);
  const left = block.intervalSeconds - known;
  const unknown = letter.moves.filter((_, index) => needs[index] === undefined);
  const [distance] = unknown.filter(({ metres }) => metres !== undefined);
  const seconds = Math.floor(left / times);
  if (unknown.length === 1 && distance !== undefined && seconds > 0) {
    noteAt(reading, distance.span, { code: 'distance-fills-interval', seconds });
    return {
      ...letter,
      moves: letter.moves.map((move) => (move === distance ? { ...move, workSeconds: seconds } : move)),
    };
  }
  for (const move of unknown) tellAt(reading, move.span, { code: 'time-or-reps-needed', block: 'emom' });
  if (left < 0) {
    tellAt(reading, letter.span, {
      code: 'interval-too-short',
      needSeconds: known,
      intervalSeconds: block.intervalSeconds,
    });
  }
  return letter;
}

function needOf(
  move: PlannedMove,
  blockSeconds: number | undefined,
  reading: LetterReading,
): number | undefined {
  const given = move.workSeconds ?? blockSeconds;
  if (given !== undefined) return given;
  return move.reps === undefined ? undefined : Math.round(move.reps * secondsPerRep(move, reading));
}

function secondsPerRep(move: PlannedMove, { book }: LetterReading): number {
  const own = move.choice.kind === 'move' ? book.catalogue.byId.get(move.choice.moveId)?.tempo : undefined;
  const tempo = move.tempo ?? own;
  if (tempo === undefined) return assumedSecondsPerRep;
  const { lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds } = tempo;
  return Math.max(1, lowerSeconds + bottomPauseSeconds + liftSeconds + topPauseSeconds);
}
