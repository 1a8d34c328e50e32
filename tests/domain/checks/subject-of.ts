import { expect } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Finding } from '../../../domain/checks/check-plan.ts';
import type { CheckSubject } from '../../../domain/checks/check-subject.ts';
import type { Context } from '../../../domain/context.ts';
import { measureLoad } from '../../../domain/load/measure-load.ts';
import { labelsByLine } from '../../../domain/plan/labels.ts';
import type { Plan } from '../../../domain/plan/plan.ts';
import { defaultSettings, type Room } from '../../../domain/settings.ts';
import { readPlan } from '../../../domain/shorthand/read-plan.ts';
import { buildTimeline } from '../../../domain/timing/build-timeline.ts';
import { fitToSlot } from '../../../domain/timing/fit-to-slot.ts';

export type Check = (subject: CheckSubject, context: Context) => readonly Finding[];

/** A room of an invented studio, with kit for twelve people in most things. */
const loft: Room = {
  name: 'Loft',
  kit: { dumbbell: 24, kettlebell: 6, mat: 16, step: 12, 'long band': 12 },
  capacity: 16,
  areaSquareMetres: 80,
  doorSeconds: 0,
  clearUpSeconds: 0,
};

export function contextWith(facts: Partial<Context> = {}): Context {
  return {
    catalogue,
    settings: { ...defaultSettings, rooms: [loft] },
    now: '2026-03-02T09:00:00Z',
    ...facts,
  };
}

export function subjectOf(plan: Plan, context: Context): CheckSubject {
  const timeline = buildTimeline(plan, context);
  return { plan, timeline, load: measureLoad(plan, timeline, context), fit: fitToSlot(plan, context) };
}

/** The plan of a text that must read without a problem. */
export function planOf(text: string, context: Context): Plan {
  const { plan, problems } = readPlan(text, context);
  expect(problems).toEqual([]);
  if (plan === undefined) {
    throw new Error('no plan');
  }
  return plan;
}

/** What one check finds in a class, lines shown as the letters a person sees. */
export function findingsIn(text: string, check: Check, facts: Partial<Context> = {}): readonly unknown[] {
  const context = contextWith(facts);
  const plan = planOf(text, context);
  return check(subjectOf(plan, context), context).map((finding) => withLabels(finding, plan));
}

/** A finding with lines shown as the letters a person sees. */
export function withLabels(value: unknown, plan: Plan): unknown {
  const labels = labelsByLine(plan);
  const shown = (part: unknown): unknown => {
    if (typeof part === 'string') {
      return labels.get(part) ?? part;
    }
    if (Array.isArray(part)) {
      return part.map(shown);
    }
    return typeof part === 'object' && part !== null
      ? Object.fromEntries(Object.entries(part).map(([key, inner]) => [key, shown(inner)]))
      : part;
  };
  return shown(value);
}
