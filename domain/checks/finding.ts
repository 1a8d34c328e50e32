import type { LineId } from '../plan/plan.ts';

export type Severity = 'must fix' | 'look at' | 'good to know';

/** Where a rule comes from: a named publication, or `common practice` (no published source). */
export type RuleSource = 'common practice' | { readonly published: string };

/**
 * Read, but unwise. Each check file narrows `code` to its own literal and `facts` to what its words need;
 * the union `Finding` of all of them lives in `check-plan.ts`.
 */
export type FindingBase = {
  readonly code: string;
  readonly severity: Severity;
  /** Letters and moves concerned, by line id; empty where the whole class is meant. */
  readonly lines: readonly LineId[];
  readonly source: RuleSource;
  /** Lines of the edit language that mend it, where one edit does. */
  readonly mend?: string;
};
