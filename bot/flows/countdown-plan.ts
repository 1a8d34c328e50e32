import { type CountdownPlan, standingOf } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk } from '../handling.ts';

/** How a class's plan stands, and its last approved version. */
export async function countdownPlanOf(desk: Desk, { planId }: ScheduledClass): Promise<CountdownPlan> {
  const { plans } = desk.stores;
  const record = planId === undefined ? undefined : await plans.find(desk.studioId, planId);
  const standing = standingOf(record);
  if (record?.approvedVersion === undefined) return { standing };
  const version = await plans.findVersion(desk.studioId, record.id, record.approvedVersion);
  return { standing, ...(version?.plan === undefined ? {} : { approved: version.plan }) };
}
