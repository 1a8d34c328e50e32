import type { KitNeed } from '../catalogue/kit.ts';
import type { Move } from '../catalogue/move.ts';
import type { Letter, LetteredBlock, PlannedMove } from '../plan/plan.ts';

/**
 * A stretch of the class on one line before the next takes over: both sides of a one-sided move, or all
 * rounds of a straight set, are one turn. Seconds from the start of the class.
 */
export type Turn = {
  readonly blockIndex: number;
  readonly block: LetteredBlock;
  readonly letter: Letter;
  readonly planned: PlannedMove;
  /** Absent for an open line and a line kept as words. */
  readonly move?: Move;
  /** What one person takes for it, from the kit at hand. */
  readonly kit: readonly KitNeed[];
  readonly startSeconds: number;
  readonly endSeconds: number;
  readonly workSeconds: number;
  /** Its longest bout. */
  readonly boutSeconds: number;
  /** The longest gap between its bouts; 0 where it has one. */
  readonly pauseSeconds: number;
  /** Since the turn before it; infinite for the first of the class. */
  readonly gapSeconds: number;
};
