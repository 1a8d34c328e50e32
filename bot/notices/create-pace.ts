import type { RealTime } from '../real-time.ts';

/** Holds posts to one place apart by `pacingMs` of real time. */
export function createPace(realTime: RealTime, pacingMs: number): (place: string) => Promise<void> {
  const freeAtMs = new Map<string, number>();
  return async (place) => {
    const nowMs = realTime.nowMs();
    const atMs = Math.max(nowMs, freeAtMs.get(place) ?? 0);
    freeAtMs.set(place, atMs + pacingMs);
    if (atMs > nowMs) await realTime.wait(atMs - nowMs);
  };
}
