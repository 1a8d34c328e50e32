import type { Finding } from './checks/check-plan.ts';
import { checkPlan } from './checks/check-plan.ts';
import type { Context } from './context.ts';
import type { Load } from './load/load.ts';
import { measureLoad } from './load/measure-load.ts';
import type { Plan, PlanFacts } from './plan/plan.ts';
import type { Note } from './shorthand/note.ts';
import type { Problem } from './shorthand/problem.ts';
import { readPlan } from './shorthand/read-plan.ts';
import { buildTimeline } from './timing/build-timeline.ts';
import type { Fit } from './timing/fit.ts';
import { fitToSlot } from './timing/fit-to-slot.ts';
import type { Timeline } from './timing/timeline.ts';

/** All that is known of a class: what was read, when each thing happens, what it loads, what is unwise. */
export type ClassReport = {
  readonly kind: 'report';
  readonly plan: Plan;
  readonly timeline: Timeline;
  readonly load: Load;
  readonly fit: Fit;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
};

/** The class could not be read whole; `plan` is what could, and without one `facts` are those of its first line. */
export type ClassProblems = {
  readonly kind: 'problems';
  readonly plan?: Plan;
  readonly facts?: PlanFacts;
  readonly problems: readonly Problem[];
  readonly notes: readonly Note[];
};

/** From the text as typed to the whole report, or to all that can't be read. */
export function reportOnClass(text: string, context: Context): ClassReport | ClassProblems {
  const { plan, facts, notes, problems } = readPlan(text, context);
  if (plan === undefined || problems.length > 0) {
    const known = { ...(plan === undefined ? {} : { plan }), ...(facts === undefined ? {} : { facts }) };
    return { kind: 'problems', ...known, problems, notes };
  }
  return { ...reportOnPlan(plan, context), notes };
}

/** The same for a plan that is data already. */
export function reportOnPlan(plan: Plan, context: Context): ClassReport {
  const timeline = buildTimeline(plan, context);
  const load = measureLoad(plan, timeline, context);
  const fit = fitToSlot(plan, context);
  const findings = checkPlan({ plan, timeline, load, fit }, context);
  return { kind: 'report', plan, timeline, load, fit, findings, notes: [] };
}
