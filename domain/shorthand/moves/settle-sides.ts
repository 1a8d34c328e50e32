import type { Move } from '../../catalogue/move.ts';
import type { PlannedMove, SideUse } from '../../plan/plan.ts';
import type { Span } from '../../span.ts';
import { type LetterReading, noteAt, tellAt } from './letter-reading.ts';

/**
 * The sides a move is done on: as said where the move can be done so; without a word a one-sided move is
 * split, with a note, and one that alternates by nature alternates.
 */
export function settleSides(
  written: PlannedMove,
  saidAt: Span | undefined,
  wholeSetEachSide: boolean,
  reading: LetterReading,
): PlannedMove {
  const move =
    written.choice.kind === 'move' ? reading.book.catalogue.byId.get(written.choice.moveId) : undefined;
  const sides = saidAt === undefined ? unsaidSides(move, wholeSetEachSide) : written.sides;
  const span = saidAt ?? written.span;
  if (saidAt === undefined && sides === 'split sides' && move !== undefined) {
    noteAt(reading, span, { code: 'sides-assumed', move: move.name });
  }
  if (saidAt !== undefined && move !== undefined && !canBeDone(move)) {
    tellAt(reading, span, { code: 'sides-not-possible', move: move.name });
  }
  if (sides === 'split sides' && (written.reps ?? 0) % 2 === 1) {
    tellAt(reading, span, { code: 'odd-reps', reps: written.reps ?? 0 });
  }
  if (sides === 'each side' && breaksFrame(reading.kind)) {
    tellAt(reading, span, { code: 'sides-break-frame', block: reading.kind, sides });
  }
  return { ...written, sides };
}

/** In a letter done once a side, its moves need no sides of their own. */
export function unsaidSides(move: Move | undefined, wholeSetEachSide: boolean): SideUse {
  if (move === undefined || move.sides === 'both at once') return 'both';
  if (move.sides === 'alternating by nature') return 'alternating';
  return wholeSetEachSide ? 'both' : 'split sides';
}

/** Whether a side word means anything for this move. */
export function canBeDone(move: Move): boolean {
  return move.sides !== 'both at once' || move.oneSideAtATime;
}

/** A full work time a side does not fit where the clock gives one. */
function breaksFrame(kind: LetterReading['kind']): boolean {
  return kind === 'stations' || kind === 'emom' || kind === 'tabata';
}
