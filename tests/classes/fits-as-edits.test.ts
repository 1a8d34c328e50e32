import { describe, expect, test } from 'vitest';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { reportOnClass, reportOnPlan } from '../../domain/class-report.ts';
import { defaultSettings } from '../../domain/settings.ts';
import { editPlan } from '../../domain/shorthand/edit-plan.ts';
import { leversOf } from '../../domain/timing/fit-levers.ts';
import { lengthMeter } from '../../domain/timing/length-of-class.ts';
import { wholeClasses } from './whole-classes.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-03-02T09:00:00Z' };

/** Each class in its own slot and in slots that it is too long or too short for. */
const slots = [-420, -180, -60, -7, 0, 45, 300, 900] as const;
const cases = wholeClasses.flatMap(({ text, totalSeconds }) =>
  slots.map((off) => ({ name: text.split(',')[0], text, slotSeconds: Math.max(300, totalSeconds + off) })),
);

describe('every proposal and every cut, applied as the edit it is, gives the length and the work it says', () => {
  test.each(cases)('$name in $slotSeconds s', ({ text, slotSeconds }) => {
    const report = reportOnClass(text, context);
    if (report.kind === 'problems') throw new Error(JSON.stringify(report.problems));
    const plan = { ...report.plan, facts: { ...report.plan.facts, slotSeconds } };
    const { fit, timeline } = reportOnPlan(plan, context);
    const cuts = fit.lateStartCuts.flatMap(({ proposal }) => proposal ?? []);
    for (const { edit, totalSeconds, workChangeSeconds } of [...fit.proposals, ...cuts]) {
      const edited = editPlan(plan, edit, context);
      expect({ edit, problems: edited.problems }).toEqual({ edit, problems: [] });
      const after = edited.plan === undefined ? undefined : reportOnPlan(edited.plan, context).timeline;
      expect({ edit, total: after?.totalSeconds, work: after?.workSeconds }).toEqual({
        edit,
        total: totalSeconds,
        work: timeline.workSeconds + workChangeSeconds,
      });
    }
    expect(fit.proposals.every(({ totalSeconds }) => totalSeconds === fit.teachingSeconds)).toBe(true);
  });
});

describe('every change the search may make is what its line of the edit language does', () => {
  // A cool-down to the end would hide every change.
  const fixed = wholeClasses.map(({ text }) => ({
    name: text.split(',')[0],
    text: text.replace('cool-down to the end', 'cool-down 5:00'),
  }));

  test.each(fixed)('$name', ({ text }) => {
    const report = reportOnClass(text, context);
    if (report.kind === 'problems') throw new Error(JSON.stringify(report.problems));
    const { plan } = report;
    const lengthOf = lengthMeter(context);
    const levers = (['shorter', 'longer'] as const).flatMap((way) => leversOf(plan, way, lengthOf, context));
    expect(levers.length).toBeGreaterThan(0);
    for (const { line, apply, mostSteps } of levers) {
      for (const steps of new Set([1, Math.ceil(mostSteps / 2)])) {
        const { plan: edited, problems } = editPlan(plan, line(steps), context);
        const length = edited === undefined ? undefined : lengthOf(edited);
        expect({ edit: line(steps), problems, length }).toEqual({
          edit: line(steps),
          problems: [],
          length: lengthOf(apply(plan, steps)),
        });
      }
    }
  });
});
