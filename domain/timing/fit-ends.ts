import type { Block, OpenBlock, Plan } from '../plan/plan.ts';
import type { FloorSettings } from '../settings.ts';

/** ACSM: warm-up and cool-down of 5–10 minutes each; the longer end. */
const mostSeconds = 600;

/** The warm-up or the cool-down of a class, with how far it may go. Its length is a fixed one here. */
export type End = {
  readonly kind: 'warm-up' | 'cool-down';
  readonly block: number;
  readonly seconds: number;
  readonly leastSeconds: number;
  readonly mostSeconds: number;
};

/** The only one of its kind in the class; where there are several, an edit could not say which. */
export function endOf(plan: Plan, kind: End['kind'], floors: FloorSettings): End | undefined {
  const [found, another] = plan.blocks.flatMap((block, index) =>
    block.kind === kind ? [{ block, index }] : [],
  );
  if (found === undefined || another !== undefined || !isFixed(found.block)) return undefined;
  const { seconds } = found.block.length;
  const least = kind === 'warm-up' ? floors.leastWarmUpSeconds : floors.leastCoolDownSeconds;
  return {
    kind,
    block: found.index,
    seconds,
    leastSeconds: Math.min(seconds, least),
    mostSeconds: Math.max(seconds, mostSeconds),
  };
}

function isFixed(
  block: Block,
): block is OpenBlock & { readonly length: { readonly kind: 'fixed'; readonly seconds: number } } {
  return 'length' in block && block.length.kind === 'fixed';
}

/** What an end takes of some seconds to add or, where negative, to cut. */
export function takenBy(end: End | undefined, seconds: number): number {
  if (end === undefined) return 0;
  return Math.min(end.mostSeconds, Math.max(end.leastSeconds, end.seconds + seconds)) - end.seconds;
}

/** The same class with another length of one of its warm-ups or cool-downs. */
export function withLength(plan: Plan, index: number, seconds: number): Plan {
  const block = plan.blocks[index];
  if (block === undefined || !('length' in block)) return plan;
  return { ...plan, blocks: plan.blocks.with(index, { ...block, length: { kind: 'fixed', seconds } }) };
}
