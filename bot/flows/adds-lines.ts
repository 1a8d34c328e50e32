import type { Context } from '../../domain/context.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';

/**
 * Whether what was said reads as more lines of a draft: nothing in it is strange to the reader, or what is
 * strange comes near a name the reader knows.
 */
export function addsLines(draft: string, said: string, context: Context): boolean {
  const before = readPlan(draft, context).problems.length;
  const { problems } = readPlan(withLines(draft, said), context);
  return problems.slice(before).every((problem) => 'near' in problem && problem.near.length > 0);
}

export function withLines(draft: string, said: string): string {
  return `${draft.trimEnd()}\n${said.trim()}`;
}
