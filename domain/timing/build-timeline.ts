import type { Plan } from '../plan/plan.ts';
import { isRest, type Part, secondsOf, workSecondsIn } from './part.ts';
import { partsOfBlock } from './parts-of-block.ts';
import { partsOfClass } from './parts-of-class.ts';
import type { BlockTime, Segment, Timeline } from './timeline.ts';
import type { TimingContext } from './timing-context.ts';
import { lateStarts } from './transitions.ts';

/** The whole class on the clock, in whole seconds from its start: segments touch and never overlap. */
export function buildTimeline(plan: Plan, context: TimingContext): Timeline {
  const partsByBlock = partsOfClass(plan, context, (block) => partsOfBlock(block, context));
  const parts = partsByBlock.flat();
  const segments = layOut(partsByBlock);
  const late = lateStarts(plan, segments, context);
  return {
    totalSeconds: segments.at(-1)?.endSeconds ?? 0,
    workSeconds: workSecondsIn(parts),
    restSeconds: secondsOf(parts.filter(isRest)),
    lateStartSeconds: late.reduce((total, { lateSeconds }) => total + lateSeconds, 0),
    segments,
    lateStarts: late,
    blocks: blockTimes(partsByBlock),
  };
}

function layOut(partsByBlock: readonly (readonly Part[])[]): readonly Segment[] {
  let clock = 0;
  return partsByBlock.flatMap((parts, block) =>
    parts.map(({ seconds, belongsTo: _, kind, ...facts }) => {
      const startSeconds = clock;
      clock += seconds;
      return { kind, startSeconds, endSeconds: clock, block, ...facts };
    }),
  );
}

function blockTimes(partsByBlock: readonly (readonly Part[])[]): readonly BlockTime[] {
  let clock = 0;
  return partsByBlock.map((parts, block) => {
    const startSeconds = clock;
    clock += secondsOf(parts);
    return { block, startSeconds, endSeconds: clock, workSeconds: workSecondsIn(parts) };
  });
}
