import type { Context } from '../../domain/context.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import { keepText } from '../../domain/shorthand/keep-text.ts';
import type { Problem } from '../../domain/shorthand/problem.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';

/**
 * Whether what was said reads as more lines of a draft: nothing in it is strange to the reader, or what is
 * strange comes near a name the reader knows. A line may well be unfinished: its block's moves come next.
 */
export function addsLines(draft: string, said: string, context: Context): boolean {
  const { problems, isForClass } = readingOf(draft, said, context);
  return isForClass && !problems.some(isStrange);
}

/** Whether what was said reads as more lines of a draft, word for word. */
export function readsAsLines(draft: string, said: string, context: Context): boolean {
  const { problems, isForClass } = readingOf(draft, said, context);
  return isForClass && problems.every(({ code }) => code === 'no-moves' || code === 'misplaced-time');
}

/** A cool-down keeps any words, and it ends the class: words that name no move there are no line of it. */
function readingOf(
  draft: string,
  said: string,
  context: Context,
): { readonly problems: readonly Problem[]; readonly isForClass: boolean } {
  const from = keepText(draft.trimEnd()).length;
  const { problems, plan } = readPlan(withLines(draft, said), context);
  return {
    problems: problems.filter(({ span }) => span.start >= from),
    isForClass: wordsInCoolDown(plan) === wordsInCoolDown(readPlan(draft, context).plan),
  };
}

function wordsInCoolDown(plan: Plan | undefined): number {
  const items = (plan?.blocks ?? []).flatMap((block) => (block.kind === 'cool-down' ? block.items : []));
  return items.filter(({ what }) => what.kind === 'words').length;
}

export function withLines(draft: string, said: string): string {
  return `${draft.trimEnd()}\n${said.trim()}`;
}

function isStrange(problem: Problem): boolean {
  switch (problem.code) {
    case 'unknown-move':
      return problem.near.length === 0;
    case 'unknown-words':
    case 'unknown-kit':
    case 'no-block':
    case 'line-before-block':
    case 'line-under-time':
      return true;
    default:
      return false;
  }
}
