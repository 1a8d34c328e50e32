import type { BlockKind } from '../plan/plan.ts';
import { keepText } from './keep-text.ts';
import type { Problem } from './problem.ts';

/** What a class being written still lacks, where its last line is right as far as it goes. */
export type LeftToWrite = { readonly kind: 'blocks' } | { readonly kind: 'moves'; readonly block: BlockKind };

type PartedProblems = { readonly unread: readonly Problem[]; readonly left?: LeftToWrite };

/** The lines that could not be read, apart from what simply is not written yet. */
export function partProblems(text: string, problems: readonly Problem[]): PartedProblems {
  const lastLine = keepText(text).trimEnd().split('\n').length;
  const unread: Problem[] = [];
  let left: LeftToWrite | undefined;
  for (const problem of problems) {
    if (problem.code === 'no-block') left = { kind: 'blocks' };
    else if (problem.code === 'no-moves' && problem.line === lastLine)
      left = { kind: 'moves', block: problem.block };
    else unread.push(problem);
  }
  return { unread, ...(left === undefined ? {} : { left }) };
}
