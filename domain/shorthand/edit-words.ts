import type { Context } from '../context.ts';
import { blockWordAt } from './blocks/block-words.ts';
import { beginsOnlyEdits, editWordAt } from './edits/edit-verbs.ts';
import { keepText } from './keep-text.ts';
import { limits } from './limits.ts';
import { type Line, linesOf } from './lines-of.ts';
import { readPlan } from './read-plan.ts';
import { tokensOf } from './tokens-of.ts';

/**
 * Whether a message is meant as edits: its first word begins nothing else, or every line begins with an edit
 * word, but for moves below an added block.
 */
export function looksLikeEdit(text: string): boolean {
  const lines = linesOf(keepText(text).slice(0, limits.messageLength));
  const [first] = lines;
  if (first === undefined || !beginsEdit(first)) return false;
  return (
    beginsOnlyEdits(tokensOf(first)) ||
    lines.every((line, at) => beginsEdit(line) || isBelowAddedBlock(lines, at))
  );
}

function beginsEdit(line: Line): boolean {
  return editWordAt(tokensOf(line)) !== undefined;
}

function isBelowAddedBlock(lines: readonly Line[], at: number): boolean {
  const edit = lines.slice(0, at).findLast(beginsEdit);
  if (edit === undefined) return false;
  const tokens = tokensOf(edit);
  return tokens[0]?.text === 'add' && blockWordAt(tokens.slice(1)) !== undefined;
}

/** Whether a message is a class of its own: a block that reads, and more than that one line. */
export function looksLikeClass(text: string, context: Context): boolean {
  const kept = keepText(text);
  if (kept.length > limits.messageLength) return false;
  const lines = linesOf(kept);
  if (lines.length < 2) return false;
  return (readPlan(text, context).plan?.blocks.length ?? 0) > 0;
}

export { nearestEdit } from './edits/nearest-edit.ts';
