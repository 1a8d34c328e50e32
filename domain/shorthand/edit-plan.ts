import { labelsByLine } from '../plan/labels.ts';
import type { Plan } from '../plan/plan.ts';
import { type Change, changesBetween } from './changes-between.ts';
import { applyEdit } from './edits/apply-edit.ts';
import type { SideChange } from './edits/carried-sides.ts';
import type { PlacedEdit } from './edits/edit.ts';
import type { Edited, Editing } from './edits/edit-step.ts';
import { allIds, withIdsInOrder } from './edits/plan-lines.ts';
import { readEdits } from './edits/read-edits.ts';
import { spanOfLine } from './group-lines.ts';
import { keepText } from './keep-text.ts';
import { limits } from './limits.ts';
import { nameBook } from './moves/name-book.ts';
import type { Note } from './note.ts';
import { printPlan } from './print-plan.ts';
import type { Problem } from './problem.ts';
import { type ReadingContext, readPlan } from './read-plan.ts';
import { samePlan } from './same-plan.ts';
import { nothingTold, type Told, tellProblem } from './told.ts';

/** The plan after all edits of a message, absent where any of them could not be made. */
export type PlanEdit = {
  readonly plan?: Plan;
  readonly changes: readonly Change[];
  readonly notes: readonly Note[];
  readonly problems: readonly Problem[];
};

/**
 * Edits of a plan, a line each; all letters are those of `plan`. Every line is read and told; only a message
 * without a problem changes anything. Lines keep their ids; spans are those of the new plan as printed.
 */
export function editPlan(plan: Plan, text: string, context: ReadingContext): PlanEdit {
  const kept = keepText(text);
  const told = nothingTold(kept);
  if (kept.length > limits.messageLength) {
    const problem = { code: 'message-too-long', length: kept.length, most: limits.messageLength } as const;
    tellProblem(told, 1, { start: 0, end: 1 }, problem);
    return { changes: [], notes: [], problems: told.problems };
  }
  const edits = readEdits(kept, told);
  if (edits.length === 0 && told.problems.length === 0) {
    tellProblem(told, 1, { start: 0, end: Math.min(1, kept.length) }, { code: 'unknown-edit' });
  }
  const book = nameBook(context);
  const steps = applyAll(plan, edits, { original: plan, book, told });
  const settled = told.problems.length > 0 ? undefined : settle(steps, told, context, plan);
  const problems = told.problems.toSorted((a, b) => a.span.start - b.span.start);
  if (settled === undefined) return { changes: [], notes: told.notes, problems };
  const sides = steps.flatMap((step) => step.edited.sides);
  const changes = [...changesBetween(plan, settled, book.catalogue), ...sideChanges(settled, sides)];
  return { plan: settled, changes, notes: told.notes, problems };
}

type Step = { readonly placed: PlacedEdit; readonly edited: Edited };

/** Each edit on what the one before it left; one that can't be made is told and passed over. */
function applyAll(plan: Plan, edits: readonly PlacedEdit[], editing: Editing): readonly Step[] {
  const steps: Step[] = [];
  for (const placed of edits) {
    const edited = applyEdit(steps.at(-1)?.edited.plan ?? plan, placed, editing);
    if (edited !== undefined) steps.push({ placed, edited });
  }
  return steps;
}

/** The plan read again as printed, so that an edit can make nothing that could not be written. */
function settle(
  steps: readonly Step[],
  told: Told,
  context: ReadingContext,
  original: Plan,
): Plan | undefined {
  const last = steps.at(-1);
  if (last === undefined) return original;
  const { catalogue } = nameBook(context);
  const read = (plan: Plan) => readPlan(printPlan(plan, catalogue), context);
  const edited = last.edited.plan;
  const again = read(edited);
  if (again.problems.length === 0 && again.plan !== undefined && samePlan(again.plan, edited)) {
    return withIdsInOrder(again.plan, allIds(edited));
  }
  for (const { line: _, span: __, read: ___, ...problem } of again.problems) {
    const cause = steps.find(({ edited: { plan } }) =>
      read(plan).problems.some(({ code }) => code === problem.code),
    );
    const { line } = (cause ?? last).placed;
    tellProblem(told, line.number, spanOfLine(line), problem);
  }
  if (again.problems.length === 0) {
    tellProblem(told, last.placed.line.number, spanOfLine(last.placed.line), { code: 'edit-unclear' });
  }
  return undefined;
}

function sideChanges(plan: Plan, sides: readonly SideChange[]): readonly Change[] {
  const labels = labelsByLine(plan);
  return sides.map(({ kind, sides: use, move }) => ({
    kind: kind === 'dropped' ? 'side-dropped' : 'side-assumed',
    label: labels.get(move) ?? '',
    sides: use,
  }));
}

export type { Change } from './changes-between.ts';
