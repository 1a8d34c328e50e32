import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Muscle } from '../../../domain/catalogue/muscles.ts';
import { measureLoad } from '../../../domain/load/measure-load.ts';
import type { Plan } from '../../../domain/plan/plan.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { editPlan } from '../../../domain/shorthand/edit-plan.ts';
import { readPlan } from '../../../domain/shorthand/read-plan.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { mendOfWeek } from '../../../domain/week/mend-of-week.ts';
import { slot, taught } from './week-builder.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-11-23T06:00:00.000Z' };
const text = [
  'Press & Squat, 45 min, level 2, 12 people',
  'kit: dumbbells, mats, kettlebells',
  'warm-up 6:00: march',
  'straight x3, 40/30',
  'goblet squat',
  'dumbbell shoulder press',
  'rest 60',
  'circuit x3, 40/20',
  'push-up + bodyweight squat',
  'reverse lunge alternating',
  'cool-down to the end',
].join('\n');

function planOf(): Plan {
  const { plan } = readPlan(text, context);
  if (plan === undefined) throw new Error('the class can be read');
  return plan;
}

const setsIn = (plan: Plan, muscle: Muscle) =>
  measureLoad(plan, buildTimeline(plan, context), context).setsByMuscle[muscle] ?? 0;

describe('the edit a report proposes', () => {
  const plan = planOf();
  const scheduled = { ...taught(slot('Mon')).scheduled, planId: 'plan', state: 'planned' } as const;

  test.each(defaultSettings.firstPriority.filter((muscle) => setsIn(plan, muscle) < 3))(
    'for %s can be read, keeps the time, and adds sets for it',
    (muscle) => {
      const sets = (each: Muscle) => (each === muscle ? 0 : 12);
      const mend = mendOfWeek([muscle], [{ scheduled, plan, version: 1 }], sets, context);
      const { plan: mended, problems } = editPlan(plan, mend?.edit ?? '', context);
      expect(problems).toEqual([]);
      if (mended === undefined) throw new Error(`no plan after "${mend?.edit}"`);
      expect(buildTimeline(mended, context).totalSeconds).toBe(buildTimeline(plan, context).totalSeconds);
      expect(setsIn(mended, muscle)).toBeGreaterThan(setsIn(plan, muscle));
    },
  );
});
