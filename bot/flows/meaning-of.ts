import type { PlanReading } from '../../domain/shorthand/read-plan.ts';

/** What a direct message outside any thread is for. */
export type Meaning = 'opens a class' | 'more lines' | 'unclear';

/**
 * A class is opened by a title line with its length, or by a message with blocks of its own. Lines without
 * a title belong to the draft written just before, where there is one.
 */
export function meaningOf(text: string, reading: PlanReading, draftJustWritten: boolean): Meaning {
  const lines = text.split('\n').filter((line) => line.trim() !== '').length;
  if (lines === 0) return 'unclear';
  const blocks = reading.plan?.blocks.length ?? 0;
  const titled = reading.plan?.facts.title !== undefined;
  const timed = !reading.notes.some(({ code }) => code === 'slot-assumed');
  if (draftJustWritten && !timed && (blocks === 0 || !titled)) return 'more lines';
  // Several lines of a class that could not be read have a number somewhere; talk mostly has none.
  if (blocks > 0 || timed || (lines > 1 && /\d/.test(text))) return 'opens a class';
  return 'unclear';
}
