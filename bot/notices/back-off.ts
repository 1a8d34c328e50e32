export type BackOff = {
  readonly firstMs: number;
  readonly mostMs: number;
  /** Tries before a notice counts as dead. */
  readonly mostAttempts: number;
};

/** About three hours of trying: a notice outlives a long failure of the workspace. */
export const defaultBackOff: BackOff = { firstMs: 1_000, mostMs: 300_000, mostAttempts: 45 };

/** Doubles with each attempt up to a cap; `chance` in [0, 1) spreads tries over the upper half. */
export function backOffMs(backOff: BackOff, attempts: number, chance: number): number {
  const full = Math.min(backOff.mostMs, backOff.firstMs * 2 ** Math.min(attempts - 1, 30));
  return Math.round(full * (0.5 + chance / 2));
}
