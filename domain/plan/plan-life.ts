import type { PersonId, PlanId } from '../calendar/scheduled-class.ts';
import type { LineId } from './plan.ts';

export type PlanState = 'draft' | 'in review' | 'approved';

/** A step in the life of a plan, kept with who and when. `changes asked` goes back to draft. */
export type LifeStepKind = 'sent' | 'approved' | 'changes asked' | 'withdrawn' | 'changed after approval';

export type LifeStep = {
  readonly kind: LifeStepKind;
  readonly version: number;
  readonly by: PersonId;
  readonly at: string;
  /** Why changes were asked, or the note of an approval. */
  readonly reason?: string;
};

/** What someone said of one line of a plan; it follows the line until it is resolved. */
export type PlanComment = {
  readonly id: string;
  readonly planId: PlanId;
  readonly line: LineId;
  readonly version: number;
  readonly text: string;
  readonly by: PersonId;
  readonly at: string;
  readonly resolved?: { readonly by: PersonId; readonly at: string };
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

/**
 * How a version came about. `editedStamp`: the workspace's stamp of the edit of a message that wrote it. `undo`
 * and `redo` restore an earlier version by appending it again.
 */
export type VersionCause =
  | { readonly kind: 'written'; readonly editedStamp?: string }
  | { readonly kind: 'edit'; readonly words: string }
  | { readonly kind: 'undo'; readonly restores: number }
  | { readonly kind: 'redo'; readonly restores: number };
