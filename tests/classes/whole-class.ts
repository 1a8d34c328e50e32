import type { Muscle } from '../../domain/catalogue/muscles.ts';
import type { Pattern } from '../../domain/catalogue/patterns.ts';

/** A class of our own, and the facts its report must hold, worked out by hand beside each figure. */
export type WholeClass = {
  readonly text: string;
  /** Seconds of each block in order, with the last rest it keeps. */
  readonly blockSeconds: readonly number[];
  readonly totalSeconds: number;
  readonly spareSeconds: number;
  readonly workSeconds: number;
  readonly restSeconds: number;
  readonly setsByPattern: Readonly<Partial<Record<Pattern, number>>>;
  readonly conditioningSeconds: number;
  readonly setsByMuscle?: Readonly<Partial<Record<Muscle, number>>>;
  /** Open lines left, so that it is not ready for review. */
  readonly openLines?: number;
};
