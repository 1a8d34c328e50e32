import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measureLoad } from '../../../domain/load/measure-load.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { arbitraryPlan } from '../../helpers/arbitrary-plan.ts';
import { testContext, testMove } from '../../helpers/plan-builder.ts';

const context = testContext(
  testMove('squat', { primeMovers: ['quadriceps'], assisting: ['glutes'] }),
  testMove('swing', { primeMovers: ['glutes', 'hamstrings'], traits: ['ballistic'], pattern: 'hinge' }),
  testMove('plank', { primeMovers: ['abdominals'], effort: 'hold', pattern: 'anti-extension' }),
  testMove('burpee', { effort: 'conditioning', pattern: 'locomotion' }),
);
const anyPlan = arbitraryPlan([...context.catalogue.byId.keys()]);
const measured = (plan: Parameters<typeof buildTimeline>[0]) => {
  const timeline = buildTimeline(plan, context);
  return { timeline, load: measureLoad(plan, timeline, context) };
};
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

test('a class’s sets by pattern and its conditioning are the sums over its rows', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { load } = measured(plan);
      expect(sum(Object.values(load.setsByPattern))).toBeCloseTo(sum(load.rows.map(({ sets }) => sets)), 9);
      expect(load.conditioningSeconds).toBeCloseTo(sum(load.rows.map((row) => row.conditioningSeconds)), 9);
    }),
  );
});

test('a class’s load is the sum of the loads of its blocks', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { load, timeline } = measured(plan);
      const ofBlocks = plan.blocks.map((_, block) => {
        const segments = timeline.segments.filter((segment) => segment.block === block);
        return measureLoad(plan, { ...timeline, segments }, context);
      });
      for (const muscle of ['quadriceps', 'glutes', 'hamstrings', 'abdominals'] as const) {
        expect(sum(ofBlocks.map((part) => part.setsByMuscle[muscle] ?? 0))).toBeCloseTo(
          load.setsByMuscle[muscle] ?? 0,
          9,
        );
        expect(sum(ofBlocks.map((part) => part.tensionSecondsByMuscle[muscle] ?? 0))).toBeCloseTo(
          load.tensionSecondsByMuscle[muscle] ?? 0,
          9,
        );
      }
    }),
  );
});

test('no row is negative, and a move has no more time under tension or conditioning than the class has work', () => {
  fc.assert(
    fc.property(anyPlan, (plan) => {
      const { load, timeline } = measured(plan);
      expect(load.rows.every(({ sets, tensionSeconds }) => sets >= 0 && tensionSeconds >= 0)).toBe(true);
      const used = sum(load.rows.map((row) => row.tensionSeconds + row.conditioningSeconds));
      expect(used).toBeLessThanOrEqual(timeline.workSeconds + 1e-6);
    }),
  );
});
