import type { LineId } from '../plan/plan.ts';

export type SegmentKind =
  | 'work'
  | 'change'
  | 'rest'
  | 'between-rounds'
  | 'between-blocks'
  | 'explain'
  | 'set-up'
  | 'count-in'
  | 'open';

/** A stretch of the class in whole seconds from its start; segments touch and never overlap. */
export type Segment = {
  readonly kind: SegmentKind;
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** Index into the plan's blocks. */
  readonly block: number;
  readonly letter?: LineId;
  readonly move?: LineId;
  readonly side?: 'right' | 'left' | 'alternating';
  /** From 1. */
  readonly round?: number;
  /** Repetitions aimed at in this bout, where known. */
  readonly reps?: number;
  /** Moves that share one open-ended stretch of work (AMRAP, for time, ladder). */
  readonly sharedBy?: readonly LineId[];
  /** The rest is a water break, or holds the explaining. */
  readonly also?: 'water' | 'explain' | 'clear-up';
};

/** A bout that a too short transition eats into. Judged over the letter. */
export type LateStart = {
  readonly letter: LineId;
  readonly move: LineId;
  /** Seconds the transition needs, seconds the gap gives, and what is missing. */
  readonly needSeconds: number;
  readonly gapSeconds: number;
  readonly lateSeconds: number;
  /** Start of the bout that is late, seconds from the start of the class. */
  readonly startSeconds: number;
};

export type Timeline = {
  readonly totalSeconds: number;
  readonly workSeconds: number;
  readonly restSeconds: number;
  readonly lateStartSeconds: number;
  readonly segments: readonly Segment[];
  readonly lateStarts: readonly LateStart[];
  /** One a block, in plan order; a block's rest before the next block belongs to it. */
  readonly blocks: readonly BlockTime[];
};

export type BlockTime = {
  readonly block: number;
  readonly startSeconds: number;
  readonly endSeconds: number;
  readonly workSeconds: number;
};
