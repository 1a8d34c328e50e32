import type { Context } from '../context.ts';
import type { Plan } from '../plan/plan.ts';
import { buildTimeline } from '../timing/build-timeline.ts';
import { limits } from './limits.ts';
import { type Told, tellProblem } from './told.ts';

/** Tells the block with which the plan grows longer than any plan may be. */
export function checkLength(plan: Plan, told: Told, context: Pick<Context, 'catalogue' | 'settings'>): void {
  const { least, most } = limits.planSeconds;
  const over = buildTimeline(plan, context).blocks.find(({ endSeconds }) => endSeconds > most);
  const block = over && plan.blocks[over.block];
  if (block === undefined) return;
  const line = told.text.slice(0, block.span.start).split('\n').length;
  tellProblem(told, line, block.span, { code: 'out-of-range', what: 'plan', least, most });
}
