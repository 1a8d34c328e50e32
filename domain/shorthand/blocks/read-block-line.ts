import type { BlockKind, LetteredBlock } from '../../plan/plan.ts';
import type { Line } from '../lines-of.ts';
import { tokensOf } from '../tokens-of.ts';
import type { Told } from '../told.ts';
import type { BlockReading } from './block-reading.ts';
import { blockWordAt, wordFirst } from './block-words.ts';
import { spanOf } from './clauses.ts';
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
  | { readonly shape: 'letters'; readonly kind: LetteredBlock['kind']; readonly block?: LetteredBlock }
  | { readonly shape: 'open'; readonly kind: BlockKind; readonly open?: OpenLine }
  | { readonly shape: 'time'; readonly kind: BlockKind; readonly time?: TimeLine };

/** One block line; absent where the line begins with no block word. */
export function readBlockLine(line: Line, told: Told): BlockLine | undefined {
  const typed = tokensOf(line);
  const tokens = wordFirst(typed);
  const word = blockWordAt(tokens);
  if (word === undefined) return undefined;
  const { kind, form } = word.value;
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
      return isRead() ? { shape: 'letters', kind, ...(block && { block }) } : { shape: 'letters', kind };
    }
  }
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
