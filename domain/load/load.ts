import type { Muscle } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import type { LineId } from '../plan/plan.ts';

/** Estimate over a range of body weights, kilocalories. */
export type EnergyEstimate = {
  readonly lightKg: number;
  readonly heavyKg: number;
  readonly lightKcal: number;
  readonly heavyKcal: number;
  readonly rows: readonly {
    readonly block: number;
    readonly edition: 2011 | 2024;
    readonly code: string;
    readonly met: number;
    readonly seconds: number;
  }[];
};

/** What one block, one move gives; a class's load is the sum over these. */
export type LoadRow = {
  readonly block: number;
  readonly letter: LineId;
  readonly move: LineId;
  /** Sets counted for its prime movers; assisting muscles get half. */
  readonly sets: number;
  /** Seconds a side. */
  readonly tensionSeconds: number;
  readonly conditioningSeconds: number;
  /** Repetitions in all, both sides together; absent for holds, conditioning and mobility. */
  readonly reps?: number;
  /** Open-ended work: the count is an estimate. */
  readonly about: boolean;
};

/**
 * Interval sets by muscle and pattern, seconds under tension a side by muscle, prime mover or assisting.
 * Every muscle and pattern that was touched is present; others are absent.
 */
export type Load = {
  readonly setsByMuscle: Readonly<Partial<Record<Muscle, number>>>;
  readonly tensionSecondsByMuscle: Readonly<Partial<Record<Muscle, number>>>;
  readonly setsByPattern: Readonly<Partial<Record<Pattern, number>>>;
  readonly conditioningSeconds: number;
  readonly rows: readonly LoadRow[];
  /** Absent until the studio turns energy on. */
  readonly energy?: EnergyEstimate;
  /** Estimated RPE (0–10) × minutes; absent without an estimate. */
  readonly sessionLoad?: number;
};
