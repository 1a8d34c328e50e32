import { setTimeout as sleep } from 'node:timers/promises';

/** Real time, for pacing, back-off and timers; the domain's clock is another. */
export type RealTime = {
  readonly nowMs: () => number;
  /** Resolves after the time, or early where the signal is aborted; never rejects. */
  readonly wait: (ms: number, signal?: AbortSignal) => Promise<void>;
};

export const realTime: RealTime = {
  nowMs: Date.now,
  wait: (ms, signal) => sleep(ms, undefined, signal === undefined ? {} : { signal }).catch(() => {}),
};
