import type { Plan } from '../plan/plan.ts';
import { editPlan } from './edit-plan.ts';
import { keepText } from './keep-text.ts';
import type { Problem } from './problem.ts';
import type { ReadingContext } from './read-plan.ts';

const mostOffered = 3;

/**
 * The edits that a message with these problems almost says: each unknown name, choice or first word in its
 * place. Only what the plan takes without a problem; none where a problem has nothing near.
 */
export function nearEdits(
  plan: Plan,
  text: string,
  problems: readonly Problem[],
  context: ReadingContext,
): readonly string[] {
  const kept = keepText(text);
  const choices = problems.map((problem) => replacementsFor(problem));
  const [only = [], ...others] = choices;
  const wanted = others.length === 0 ? only.map((one) => [one]) : [choices.flatMap(([first]) => first ?? [])];
  return wanted
    .filter((replacements) => replacements.length === problems.length)
    .map((replacements) => replaced(kept, problems, replacements))
    .filter((edit) => editPlan(plan, edit, context).problems.length === 0)
    .slice(0, mostOffered);
}

function replacementsFor(problem: Problem): readonly string[] {
  switch (problem.code) {
    case 'unknown-move':
      return problem.near.map(({ name }) => name);
    case 'ambiguous-move':
      return problem.choices.map(({ name }) => name);
    case 'unknown-edit':
      return problem.nearest === undefined ? [] : [problem.nearest];
    default:
      return [];
  }
}

/** From the last to the first, so that places before them stay. */
function replaced(text: string, problems: readonly Problem[], replacements: readonly string[]): string {
  return problems
    .map(({ span }, place) => ({ span, words: replacements[place] ?? '' }))
    .toSorted((one, other) => other.span.start - one.span.start)
    .reduce((left, { span, words }) => left.slice(0, span.start) + words + left.slice(span.end), text);
}
