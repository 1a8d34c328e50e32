import type { Desk } from '../handling.ts';

/** Enqueues every notice that is due at `desk.now` and not enqueued yet. Safe to repeat. */
export async function enqueueDue(_desk: Desk): Promise<void> {}

/** The next instant after `desk.now` at which something falls due, if anything is planned. */
export async function nextDueAt(_desk: Desk): Promise<string | undefined> {
  return undefined;
}
