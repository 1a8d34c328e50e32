import { slipPlace } from '../../catalogue/name-slip.ts';
import { blockWordAt } from '../blocks/block-words.ts';
import { clausesOf } from '../blocks/clauses.ts';
import { keepText } from '../keep-text.ts';
import { limits } from '../limits.ts';
import { type Line, linesOf } from '../lines-of.ts';
import { past } from '../matches.ts';
import { moveMarkAt } from '../moves/move-marks.ts';
import { packTokens } from '../moves/pack-tokens.ts';
import { tokensOf } from '../tokens-of.ts';
import { editWordAt, editWords } from './edit-verbs.ts';
import { labelAt } from './label-at.ts';

/**
 * The edits that a message almost says, ready to be sent, several parted by `;`; undefined where it says them
 * already, or where nothing is near one of its lines.
 */
export function nearestEdit(text: string): string | undefined {
  const lines = linesOf(keepText(text).slice(0, limits.messageLength));
  const meant = lines.map((line) => (isEdit(line) ? rest(line, line.start) : nearestTo(line)));
  if (lines.every(isEdit) || meant.includes(undefined)) return undefined;
  return meant.join('; ');
}

function isEdit(line: Line): boolean {
  return editWordAt(tokensOf(line)) !== undefined;
}

function nearestTo(line: Line): string | undefined {
  return withNearVerb(line) ?? withRounds(line) ?? withChangeInFront(line) ?? withVerbInFront(line);
}

/** `swpa B1 front squat`: one slip in the first word. */
function withNearVerb(line: Line): string | undefined {
  const [first, ...others] = tokensOf(line);
  if (first?.kind !== 'word' || others.length === 0) return undefined;
  const near = editWords.filter((word) => word.length > 2 && slipPlace(first.text, word) !== undefined);
  const [verb] = near;
  if (verb === undefined || near.length > 1) return undefined;
  return `${verb} ${rest(line, first.end)}`;
}

/** `4 rounds E`, `E 4 rounds`. */
function withRounds(line: Line): string | undefined {
  const tokens = tokensOf(line);
  const [first] = tokens;
  const label = labelAt(tokens, first?.kind === 'number' ? 2 : 0);
  const number = tokens.find(({ kind, glued }) => kind === 'number' && !(glued && first?.kind === 'word'));
  const isRounds = tokens.some(({ text }) => text === 'rounds' || text === 'round');
  if (!isRounds || label === undefined || number === undefined || tokens.length !== 3) return undefined;
  return `rounds ${label.value.label} x${number.text}`;
}

/** `amrap to 6`, `make the circuit x4`: a block by its word, with its new number. */
function withChangeInFront(line: Line): string | undefined {
  const tokens = tokensOf(line);
  const from = past(tokens, past(tokens, 0, 'make', 'set'), 'the');
  const word = blockWordAt(tokens.slice(from));
  const to = word && past(tokens, from + word.next, 'to');
  if (word === undefined || to === undefined || (from === 0 && to === word.next)) return undefined;
  const [clause, another] = clausesOf(tokens, to, 'seconds');
  const isNumber = clause?.kind === 'length' || clause?.kind === 'interval' || clause?.kind === 'rounds';
  if (!isNumber || another !== undefined) return undefined;
  return `change ${word.value.kind} to ${rest(line, tokens[to]?.start ?? line.start)}`;
}

/** `B1 heavy`, `C rest 15`, `B1 front squat`: a label first, the word for it left out. */
function withVerbInFront(line: Line): string | undefined {
  const tokens = tokensOf(line);
  const label = labelAt(tokens, 0);
  const said = label && tokens[label.next];
  if (label === undefined || said === undefined) return undefined;
  const typed = line.text.slice(label.value.span.start - line.start, label.value.span.end - line.start);
  if (typed !== label.value.label && !/\d/.test(typed)) return undefined;
  const behind = rest(line, label.value.span.end);
  if (said.text === 'rest' || said.text === 'work')
    return `${said.text} ${label.value.label} ${rest(line, said.end)}`;
  const mark = moveMarkAt(packTokens(tokens), label.next);
  const whole = mark?.next === tokens.length ? mark.value.kind : undefined;
  if (whole === 'sides' || whole === 'weight') return `${whole} ${label.value.label} ${behind}`;
  if (whole === 'reps' && mark?.value.kind === 'reps') return `reps ${label.value.label} ${mark.value.reps}`;
  if (whole === 'tempo') return `tempo ${label.value.label} ${behind.replace(/^tempo\s*/i, '')}`;
  return `swap ${label.value.label} ${behind}`;
}

function rest(line: Line, from: number): string {
  return line.text
    .slice(from - line.start)
    .replaceAll(/\s+/g, ' ')
    .replace(/^\s*[:,]\s*/, '')
    .trim();
}
