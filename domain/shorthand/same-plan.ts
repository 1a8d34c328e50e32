import type { Plan } from '../plan/plan.ts';
import { samePlain } from '../plan/same-plain.ts';

/** Whether two plans say the same: they may differ in spans and ids. */
export function samePlan(a: Plan, b: Plan): boolean {
  return samePlain(a, b);
}
