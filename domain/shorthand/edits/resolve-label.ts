import { labelledLetters } from '../../plan/labels.ts';
import type { LineId, Plan } from '../../plan/plan.ts';
import type { Line } from '../lines-of.ts';
import { type Told, tellProblem } from '../told.ts';
import type { LabelRef } from './edit.ts';

/** The lines a label stands for in this version: its letter, and the move where the label names one. */
export function resolveLabel(
  { label, span }: LabelRef,
  plan: Plan,
  line: Line,
  told: Told,
): { readonly letter: LineId; readonly move?: LineId } | undefined {
  const letters = labelledLetters(plan);
  for (const { label: own, letter } of letters) {
    if (own === label) return { letter: letter.id };
    const place = letter.moves.findIndex((_, index) => `${own}${index + 1}` === label);
    const move = letter.moves[place];
    if (move !== undefined) return { letter: letter.id, move: move.id };
  }
  const last = letters.at(-1)?.label;
  tellProblem(told, line.number, span, {
    code: 'no-such-letter',
    label,
    ...(last !== undefined && { last }),
  });
  return undefined;
}
