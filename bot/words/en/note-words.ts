import type { BlockKind } from '../../../domain/plan/plan.ts';
import type { Note } from '../../../domain/shorthand/note.ts';
import { lengthText } from './card-words.ts';

/** What was assumed while reading, one short sentence each. */
export function noteText(note: Note): string {
  switch (note.code) {
    case 'slot-assumed':
      return `No length on the first line: ${note.slotSeconds / 60} min taken. Say it there: 45 min`;
    case 'from-timetable':
      return `From the timetable: ${[
        ...(note.slotSeconds === undefined ? [] : [`${note.slotSeconds / 60} min`]),
        ...(note.room === undefined ? [] : [note.room]),
        ...(note.people === undefined ? [] : [`${note.people} people`]),
      ].join(', ')}.`;
    case 'title-missing':
      return 'No title: the first line reads as part of the class.';
    case 'line-left-out':
      return `Line ${note.line} left out, the title line is below it: "${note.text}"`;
    case 'fact-in-title':
      return `"${note.fact}" in the title is taken as the class's.`;
    case 'next-such-time':
      return `${note.startsAt.time} read as the next one: ${note.startsAt.date}.`;
    case 'read-as':
      return `${note.read} read as ${note.as}`;
    case 'retired-move':
      return `${note.move} is retired here: swap it when you can.`;
    case 'bare-seconds':
      return `${note.seconds} read as ${note.seconds} s`;
    case 'back-to-back':
      return `${note.moves.join(` ${note.sign} `)} read as back to back`;
    case 'joined':
      return `${note.labels.join(' + ')} read as ${groupText(note.labels.length)}`;
    case 'joined-rests':
      return `rest ${note.keptSeconds} once behind them; ${note.droppedSeconds.join(' and ')} between them is left out`;
    case 'rest-once':
      return `rest ${note.seconds} once, before the ${blockText(note.before)}${note.name === undefined ? '' : ` (${note.name})`}`;
    case 'words-kept':
      return `Kept as words on the sheet: ${note.words.join(', ')}`;
    case 'option-kept':
      return `Option kept as words: ${note.text}`;
    case 'sides-assumed':
      return `${note.move}: half the time each side (split sides)`;
    case 'last-pause-assumed':
      return 'Three numbers of tempo: no pause at the end';
    case 'distance-fills-interval':
      return `The distance takes the interval: ${note.seconds} s`;
    case 'inside-times':
      return `The times inside add up to ${lengthText(note.sumSeconds)}; the block stays ${lengthText(note.blockSeconds)}`;
    case 'bouts-too-few':
      return `${note.moves} moves for ${note.bouts} bouts: the last ${note.moves - note.bouts} never come`;
  }
}

function groupText(moves: number): string {
  return moves === 2 ? 'a pair' : moves === 3 ? 'a tri-set' : 'a giant set';
}

function blockText(kind: BlockKind): string {
  return kind === 'emom' || kind === 'amrap' ? kind.toUpperCase() : kind;
}
