import { labelledLetters } from './labels.ts';
import type { Plan } from './plan.ts';

/** The labels of all lines that name no move yet, in order. */
export function openLabels(plan: Plan): readonly string[] {
  return labelledLetters(plan).flatMap(({ moves }) =>
    moves.flatMap(({ label, move }) => (move.choice.kind === 'open' ? [label] : [])),
  );
}
