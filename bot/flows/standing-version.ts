import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import type { Desk } from '../handling.ts';

/** The version of a class's plan that counts: the last approved one, else the plan as it stands. */
export async function standingVersion(
  desk: Desk,
  { planId }: Pick<ScheduledClass, 'planId'>,
): Promise<PlanVersion | undefined> {
  const { plans } = desk.stores;
  const record = planId === undefined ? undefined : await plans.find(desk.studioId, planId);
  if (record === undefined) return undefined;
  return plans.findVersion(desk.studioId, record.id, record.approvedVersion ?? record.currentVersion);
}
