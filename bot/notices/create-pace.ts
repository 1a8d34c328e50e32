import type { RealTime } from '../real-time.ts';

/** Makes a call when its place is free for one; gives or throws what the call does. */
export type Pace = <Result>(place: string, call: () => Promise<Result>) => Promise<Result>;

/**
 * Holds calls to one place apart by `pacingMs` of real time, counted from the answer to the one before: a call
 * that was slow on its way must not arrive close to a quick one.
 */
export function createPace(realTime: RealTime, pacingMs: number): Pace {
  const freeAtMs = new Map<string, number>();
  const holdFrom = (place: string, atMs: number) =>
    freeAtMs.set(place, Math.max(freeAtMs.get(place) ?? 0, atMs + pacingMs));
  return async (place, call) => {
    const nowMs = realTime.nowMs();
    const atMs = Math.max(nowMs, freeAtMs.get(place) ?? 0);
    holdFrom(place, atMs);
    if (atMs > nowMs) await realTime.wait(atMs - nowMs);
    try {
      return await call();
    } finally {
      holdFrom(place, realTime.nowMs());
    }
  };
}
