import type { Move } from '../catalogue/move.ts';
import type { SideUse } from '../plan/plan.ts';

/** Conditioning and mobility are no time under tension. */
export function isUnderTension({ effort }: Move): boolean {
  return effort === 'reps' || effort === 'hold';
}

/**
 * A side's share of a stretch of work: all of it where both sides work at once, else half, whether the
 * sides take turns rep by rep, one after the other, or only one works.
 */
export function sideShare(side: SideUse | undefined, move: Move): number {
  const both = side === undefined || side === 'both';
  return both && move.sides !== 'alternating by nature' ? 1 : 1 / 2;
}
