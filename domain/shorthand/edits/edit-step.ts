import type { Letter, LetteredBlock, Plan, PlannedMove } from '../../plan/plan.ts';
import { spanOfLine } from '../group-lines.ts';
import type { Line } from '../lines-of.ts';
import type { NameBook } from '../moves/name-book.ts';
import type { ProblemKind } from '../problem.ts';
import { type Told, tellProblem } from '../told.ts';
import type { SideChange } from './carried-sides.ts';
import type { LabelRef } from './edit.ts';
import { blockOfLetter } from './plan-lines.ts';
import { resolveLabel } from './resolve-label.ts';

/** A plan under edit: labels are those of `original`, the version the message was written on. */
export type Editing = {
  readonly original: Plan;
  readonly book: NameBook;
  readonly told: Told;
};

/** The plan after one edit, with what became of side words on the way. */
export type Edited = { readonly plan: Plan; readonly sides: readonly SideChange[] };

export type Step = { readonly plan: Plan; readonly line: Line; readonly editing: Editing };

export type Target = { readonly letter: Letter; readonly block: LetteredBlock; readonly move?: PlannedMove };

export function tell({ line, editing }: Step, problem: ProblemKind): undefined {
  tellProblem(editing.told, line.number, spanOfLine(line), problem);
}

/** The letter, and the move where one is meant, as they stand now. */
export function targetOf(ref: LabelRef, { plan, line, editing }: Step): Target | undefined {
  const ids = resolveLabel(ref, editing.original, line, editing.told);
  if (ids === undefined) return undefined;
  const block = blockOfLetter(plan, ids.letter);
  const letter = block?.letters.find(({ id }) => id === ids.letter);
  const move = letter?.moves.find(({ id }) => id === ids.move);
  if (block === undefined || letter === undefined || (ids.move !== undefined && move === undefined)) {
    tellProblem(editing.told, line.number, ref.span, { code: 'letter-gone', label: ref.label });
    return undefined;
  }
  return { letter, block, ...(move && { move }) };
}

/** The one move meant: of a letter with several, its own label is needed. */
export function moveTarget(ref: LabelRef, step: Step): (Target & { readonly move: PlannedMove }) | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const [only, another] = target.letter.moves;
  if (target.move !== undefined) return { ...target, move: target.move };
  if (only !== undefined && another === undefined) return { ...target, move: only };
  const moves = target.letter.moves.map((_, index) => `${ref.label}${index + 1}`);
  tellProblem(step.editing.told, step.line.number, ref.span, {
    code: 'one-move-needed',
    label: ref.label,
    moves,
  });
  return undefined;
}
