import type { Block, Plan } from '../plan/plan.ts';
import { type Part, secondsOf, workSecondsIn } from './part.ts';
import { partsOfBlock } from './parts-of-block.ts';
import { partsOfClass } from './parts-of-class.ts';
import type { Timeline } from './timeline.ts';
import type { TimingContext } from './timing-context.ts';

/** Length and work of a class, in seconds. */
export type LengthOf = (plan: Plan) => Pick<Timeline, 'totalSeconds' | 'workSeconds'>;

/** Measures variants of a class one after the other; a block that stays the same is laid out once. */
export function lengthMeter(context: TimingContext): LengthOf {
  const known = new Map<Block, readonly Part[]>();
  const partsOf = (block: Block) => {
    const parts = known.get(block) ?? partsOfBlock(block, context);
    known.set(block, parts);
    return parts;
  };
  return (plan) => {
    const parts = partsOfClass(plan, context, partsOf).flat();
    return { totalSeconds: secondsOf(parts), workSeconds: workSecondsIn(parts) };
  };
}
