import fc from 'fast-check';
import { expect, test } from 'vitest';
import { defaultSettings } from '../../../domain/settings.ts';
import { fitToSlot } from '../../../domain/timing/fit-to-slot.ts';
import { arbitraryPlan } from '../../helpers/arbitrary-plan.ts';
import { open, testContext, testMove } from '../../helpers/plan-builder.ts';

const context = testContext(testMove('squat'), testMove('row'));
const { floors } = defaultSettings;

/** A plan with both ends, in a slot near its length. */
const anyClass = fc
  .record({
    middle: arbitraryPlan(['squat', 'row']),
    warmUp: fc.integer({ min: 240, max: 600 }),
    coolDown: fc.oneof(fc.integer({ min: 240, max: 600 }), fc.constant('to the end' as const)),
    offSeconds: fc.integer({ min: -600, max: 600 }),
  })
  .map(({ middle, warmUp, coolDown, offSeconds }) => {
    const inner = middle.blocks.filter(({ kind }) => kind !== 'warm-up' && kind !== 'cool-down');
    const blocks = [open('warm-up', warmUp), ...inner, open('cool-down', coolDown)];
    const length = fitToSlot({ ...middle, blocks }, context).totalSeconds;
    return { blocks, facts: { ...middle.facts, slotSeconds: Math.max(300, length + offSeconds) } };
  });

test('every proposal is exact; at most three, of different kinds, least change of work first', () => {
  fc.assert(
    fc.property(anyClass, (plan) => {
      const { proposals, teachingSeconds } = fitToSlot(plan, context);
      expect(proposals.length).toBeLessThanOrEqual(3);
      expect(new Set(proposals.map(({ kind }) => kind)).size).toBe(proposals.length);
      expect(proposals.every(({ totalSeconds }) => totalSeconds === teachingSeconds)).toBe(true);
      const changes = proposals.map(({ workChangeSeconds }) => Math.abs(workChangeSeconds));
      expect(changes).toEqual(changes.toSorted((one, other) => one - other));
    }),
  );
});

test('nothing is cut below the studio’s floors, nor what is below them already', () => {
  fc.assert(
    fc.property(anyClass, (plan) => {
      const { proposals, lateStartCuts, spareSeconds } = fitToSlot(plan, context);
      const cuts = [
        ...(spareSeconds < 0 ? proposals : []),
        ...lateStartCuts.flatMap(({ proposal }) => proposal ?? []),
      ];
      for (const line of cuts.flatMap(({ edit }) => edit.split('\n'))) {
        const [, end, minutes, seconds] = /^(warm-up|cool-down) (\d+):(\d\d)$/.exec(line) ?? [];
        const written = plan.blocks.find(({ kind }) => kind === end);
        const least =
          written !== undefined && 'length' in written && written.length.kind === 'fixed'
            ? Math.min(written.length.seconds, floors.leastWarmUpSeconds)
            : floors.leastCoolDownSeconds;
        if (end !== undefined) expect(60 * Number(minutes) + Number(seconds)).toBeGreaterThanOrEqual(least);
        const [, rest] = /^(?:rest after|between rounds) [A-Z]+ (\d+)$/.exec(line) ?? [];
        if (rest !== undefined) expect(Number(rest)).toBeGreaterThanOrEqual(floors.leastRestSeconds);
      }
    }),
  );
});

test('a late start’s cut makes the class end on time', () => {
  fc.assert(
    fc.property(anyClass, (plan) => {
      const { lateStartCuts, teachingSeconds, totalSeconds } = fitToSlot(plan, context);
      for (const { lateSeconds, proposal } of lateStartCuts) {
        if (totalSeconds + lateSeconds <= teachingSeconds) expect(proposal).toBeUndefined();
        if (proposal !== undefined) expect(proposal.totalSeconds).toBe(teachingSeconds - lateSeconds);
      }
    }),
  );
});
