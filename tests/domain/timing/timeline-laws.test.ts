import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { arbitraryPlan } from '../../helpers/arbitrary-plan.ts';
import { testContext, testMove } from '../../helpers/plan-builder.ts';

const context = testContext(
  testMove('squat', { kit: [{ item: 'dumbbell', pieces: 2 }] }),
  testMove('swing', { kit: [{ item: 'kettlebell', pieces: 1 }] }),
  testMove('plank', { position: 'prone', effort: 'hold' }),
  testMove('press', { position: 'supine', kit: [{ item: 'dumbbell', pieces: 1 }] }),
);
const anyPlan = arbitraryPlan([...context.catalogue.byId.keys()]);
const lengthOf = ({ startSeconds, endSeconds }: { startSeconds: number; endSeconds: number }) =>
  endSeconds - startSeconds;
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

test('segments touch, never overlap, are never empty, and sum to the length', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { segments, totalSeconds } = buildTimeline(plan, context);
      const starts = segments.map(({ startSeconds }) => startSeconds);
      expect(starts).toEqual(
        [0, ...segments.slice(0, -1).map(({ endSeconds }) => endSeconds)].slice(0, starts.length),
      );
      expect(segments.every((segment) => lengthOf(segment) > 0 && Number.isInteger(lengthOf(segment)))).toBe(
        true,
      );
      expect(sum(segments.map(lengthOf))).toBe(totalSeconds);
    }),
  );
});

test('blocks touch and sum to the length; their work sums to the work', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { blocks, totalSeconds, workSeconds } = buildTimeline(plan, context);
      expect(blocks).toHaveLength(plan.blocks.length);
      expect(sum(blocks.map(lengthOf))).toBe(totalSeconds);
      expect(sum(blocks.map((block) => block.workSeconds))).toBe(workSeconds);
    }),
  );
});

test('a class ends in a rest only where it is the remainder of an interval or a partner’s turn', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const last = buildTimeline(plan, context).segments.at(-1);
      const block = last && plan.blocks[last.block];
      const isOwed = block?.kind === 'emom' || (block && 'pairs' in block && block.pairs === 'one rests');
      if (!isOwed) expect(['rest', 'between-rounds', 'between-blocks']).not.toContain(last?.kind);
    }),
  );
});

test('a late start is what the need has beyond the gap, and never more than its bout', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { lateStarts, segments, lateStartSeconds } = buildTimeline(plan, context);
      for (const late of lateStarts) {
        const bout = segments.find(
          ({ kind, startSeconds }) => kind === 'work' && startSeconds === late.startSeconds,
        );
        const seconds = bout === undefined ? 0 : lengthOf(bout);
        expect(late.lateSeconds).toBe(Math.min(late.needSeconds - late.gapSeconds, seconds));
        expect(late.lateSeconds).toBeGreaterThan(0);
      }
      expect(sum(lateStarts.map(({ lateSeconds }) => lateSeconds))).toBe(lateStartSeconds);
    }),
  );
});
