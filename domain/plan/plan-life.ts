import type { PersonId, PlanId } from '../calendar/scheduled-class.ts';

export type PlanState = 'draft' | 'in review' | 'approved';

/** A step in the life of a plan, kept with who and when. `changes asked` goes back to draft. */
export type LifeStepKind = 'sent' | 'approved' | 'changes asked' | 'withdrawn' | 'changed after approval';

export type LifeStep = {
  readonly kind: LifeStepKind;
  readonly version: number;
  readonly by: PersonId;
  readonly at: string;
  readonly reason?: string;
};

/** Where a plan's draft lives: one thread. Ids of the workspace, opaque to the domain. */
export type Home = { readonly place: string; readonly thread: string };

/** A plan's standing. Versions count from 1 and are never rewritten. */
export type PlanRecord = {
  readonly id: PlanId;
  readonly authorId: PersonId;
  readonly state: PlanState;
  readonly currentVersion: number;
  readonly approvedVersion?: number;
  readonly home?: Home;
  readonly createdAt: string;
};

/** How a version came about. `undo` and `redo` restore an earlier version by appending it again. */
export type VersionCause =
  | { readonly kind: 'written' }
  | { readonly kind: 'edit'; readonly words: string }
  | { readonly kind: 'undo'; readonly restores: number }
  | { readonly kind: 'redo'; readonly restores: number };
