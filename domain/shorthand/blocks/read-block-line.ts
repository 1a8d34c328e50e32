import type { BlockKind, LetteredBlock } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import type { Line } from '../lines-of.ts';
import { printBlockLine } from '../print-block-line.ts';
import { tokensOf } from '../tokens-of.ts';
import type { Told } from '../told.ts';
import { type BlockReading, clauseOf, say } from './block-reading.ts';
import { blockWordAt, wordFirst } from './block-words.ts';
import { clausesOf, spanOf } from './clauses.ts';
import { everydayHead } from './everyday-head.ts';
import { readLadderLine } from './read-ladder-line.ts';
import { type OpenLine, readOpenLine } from './read-open-line.ts';
import { readRoundsLine } from './read-rounds-line.ts';
import { readTimeLine, type TimeLine } from './read-time-line.ts';
import {
  readAmrapLine,
  readEmomLine,
  readEveryLine,
  readForTimeLine,
  readTabataLine,
} from './read-timed-lines.ts';

/** A block line as read; without its value where it could not be, so that the lines below still are. */
export type BlockLine =
  | {
      readonly shape: 'letters';
      readonly kind: LetteredBlock['kind'];
      readonly block?: LetteredBlock;
      /** So many neighbouring lines of one move are one letter. */
      readonly movesALetter?: number;
      /** Reps of each move that has neither reps nor a time of its own: `straight x4, 10 reps`. */
      readonly repsEach?: RepsEach;
    }
  | { readonly shape: 'open'; readonly kind: BlockKind; readonly open?: OpenLine }
  | { readonly shape: 'time'; readonly kind: BlockKind; readonly time?: TimeLine };

/** So many reps, with where they are said. */
export type RepsEach = { readonly reps: number; readonly span: Span };

/** One block line; absent where the line begins with no block word. */
export function readBlockLine(line: Line, told: Told): BlockLine | undefined {
  const typed = tokensOf(line);
  const tokens = wordFirst(typed);
  const word = blockWordAt(tokens);
  if (word === undefined) return undefined;
  const { kind, form, movesALetter } = word.value;
  const reading: BlockReading = {
    line,
    kind,
    tokens,
    at: word.next,
    told,
    span: spanOf(typed, 0, typed.length),
  };
  const before = told.problems.length;
  const isRead = () => told.problems.length === before;
  switch (kind) {
    case 'warm-up':
    case 'cool-down':
    case 'mobility':
    case 'song': {
      const open = readOpenLine(reading, kind);
      return isRead() ? { shape: 'open', kind, ...(open && { open }) } : { shape: 'open', kind };
    }
    case 'rest':
    case 'water':
    case 'explain':
    case 'set-up':
    case 'clear-up': {
      const time = readTimeLine(reading, kind);
      return isRead() ? { shape: 'time', kind, ...(time && { time }) } : { shape: 'time', kind };
    }
    default: {
      const block = form === 'every' ? readEveryLine(reading) : readLettered(reading, kind);
      const group = movesALetter === undefined ? {} : { movesALetter };
      const each = clauseOf(clausesOf(tokens, word.next, 'seconds'), 'reps');
      const repsEach = each === undefined ? {} : { repsEach: { reps: each.reps, span: each.span } };
      if (block === undefined || !isRead()) return { shape: 'letters', kind, ...group };
      if (movesALetter !== undefined || everydayHead(typed) !== undefined) sayReadAs(reading, block);
      return { shape: 'letters', kind, block, ...group, ...repsEach };
    }
  }
}

/** The line as it is written back; not yet where its rounds come from its letters. */
function sayReadAs(reading: BlockReading, block: LetteredBlock): void {
  if ('rounds' in block && block.rounds === 0) return;
  const read = reading.told.text.slice(reading.span.start, reading.span.end);
  say(reading, reading.span, { code: 'read-as', read, as: printBlockLine(block) });
}

function readLettered(reading: BlockReading, kind: LetteredBlock['kind']): LetteredBlock | undefined {
  switch (kind) {
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
      return readRoundsLine(reading, kind);
    case 'emom':
      return readEmomLine(reading);
    case 'tabata':
      return readTabataLine(reading);
    case 'amrap':
      return readAmrapLine(reading);
    case 'for time':
      return readForTimeLine(reading);
    case 'ladder':
      return readLadderLine(reading);
  }
}
