import { type ButtonValue, readButtonValue } from '../blocks/button-value.ts';
import type { Desk } from '../handling.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';

/** What a button or form of this app carries, and the plan it stands for as it is now. */
export type PlanOfValue = { readonly value: ButtonValue; readonly open: OpenPlan };

/** Undefined for what no button of this studio carries: another's plan, a version that was never made. */
export async function planOfValue(desk: Desk, text: string): Promise<PlanOfValue | undefined> {
  const value = readButtonValue(text);
  const open = value === undefined ? undefined : await openPlan(desk, value.plan);
  return value === undefined || open === undefined || value.version > open.record.currentVersion
    ? undefined
    : { value, open };
}
