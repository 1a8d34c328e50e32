import { expect, test } from 'vitest';
import { measureLoad } from '../../../domain/load/measure-load.ts';
import { splitOfLoad } from '../../../domain/load/split-of-load.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { letters, on, plan, rounds, testContext, testMove } from '../../helpers/plan-builder.ts';

test('push : pull and upper : lower : trunk are sets of the moves', () => {
  const context = testContext(
    testMove('push-up', { pattern: 'horizontal push', primeMovers: ['chest'] }),
    testMove('row', { pattern: 'horizontal pull', primeMovers: ['upper back'] }),
    testMove('squat', { pattern: 'squat', primeMovers: ['quadriceps'] }),
    testMove('plank', { pattern: 'anti-extension', primeMovers: ['abdominals'], effort: 'hold' }),
    testMove('curl', { pattern: 'isolation', primeMovers: ['biceps'] }),
    testMove('calf raise', { pattern: 'isolation', primeMovers: ['calves'] }),
  );
  const lines = letters('push-up', 'row', 'squat', 'plank', 'curl', 'calf raise');
  const whole = plan([rounds('circuit', 2, on(40, 20), lines)]);
  const load = measureLoad(whole, buildTimeline(whole, context), context);
  expect(splitOfLoad(whole, load, context)).toEqual({ push: 2, pull: 2, upper: 6, lower: 4, trunk: 1 });
});
