import type { Plan } from '../plan/plan.ts';

/** Whether two plans say the same: they may differ in spans and ids. */
export function samePlan(a: Plan, b: Plan): boolean {
  return plainForm(a) === plainForm(b);
}

function plainForm(value: unknown): string {
  return JSON.stringify(value, (key, part: unknown) =>
    key === 'id' || key === 'span' ? undefined : inOrder(part),
  );
}

function inOrder(part: unknown): unknown {
  if (typeof part !== 'object' || part === null || Array.isArray(part)) return part;
  return Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => (a < b ? -1 : 1)));
}
