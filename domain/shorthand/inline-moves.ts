import { clausesOf } from './blocks/clauses.ts';
import { readBlockLine } from './blocks/read-block-line.ts';
import type { Line } from './lines-of.ts';
import { anyPhrase } from './matches.ts';
import { moveMarkAt } from './moves/move-marks.ts';
import { packTokens } from './moves/pack-tokens.ts';
import { type Token, tokensOf } from './tokens-of.ts';
import { nothingTold, type Told } from './told.ts';

/**
 * `tabata: squats, burpees` as its block line and a line a letter; any other line as it is. What stands
 * before the colon reads whole as a block line, and what stands behind it says more than one could.
 */
export function partInlineMoves(line: Line, told: Told): readonly Line[] {
  const tokens = tokensOf(line);
  const colon = tokens.findIndex((token, at) => token.text === ':' && tokens[at + 1]?.glued !== true);
  const behind = tokens.slice(colon + 1);
  if (colon === -1 || clausesOf(behind, 0, 'seconds').every(({ kind }) => kind !== 'unknown')) return [line];
  const head = partOf(line, line.start, tokens[colon]?.start ?? line.start);
  const trial = nothingTold(told.text);
  if (readBlockLine(head, trial)?.shape !== 'letters' || trial.problems.length > 0) return [line];
  const starts = behind.flatMap((token, at) => (startsALetter(behind, at) ? [token.start] : []));
  const lineEnd = line.start + line.clean.length;
  return [head, ...starts.map((start, index) => partOf(line, start, starts[index + 1] ?? lineEnd))];
}

/** The first word, and each behind a comma that begins a move rather than says more of the one before. */
function startsALetter(tokens: readonly Token[], at: number): boolean {
  if (at === 0) return true;
  if (tokens[at - 1]?.text !== ',' || isInBrackets(tokens, at)) return false;
  const ofTheLetter = anyPhrase(tokens, at, ['rest', 'whole set', 'burnout']);
  const mark = moveMarkAt(packTokens(tokens.slice(at)), 0)?.value.kind;
  return ofTheLetter === undefined && (mark === undefined || mark === 'number' || mark === 'reps');
}

function isInBrackets(tokens: readonly Token[], at: number): boolean {
  const before = tokens.slice(0, at).map(({ text }) => text);
  return before.lastIndexOf('(') > before.lastIndexOf(')');
}

/** The stretch of a line between two places of the draft, without a comma at its end. */
function partOf(line: Line, start: number, end: number): Line {
  const [from, until] = [start - line.start, end - line.start];
  const clean = line.clean.slice(from, until).replace(/[\s,]+$/, '');
  return { ...line, start, text: line.text.slice(from, from + clean.length), clean };
}
