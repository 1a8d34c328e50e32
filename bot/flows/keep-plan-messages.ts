import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Desk } from '../handling.ts';
import { openPlan } from './open-plan.ts';
import { refreshCard } from './post-draft.ts';
import { updateReview } from './review-plan.ts';

/** Card and review tell of the plan’s class: they follow where it is moved, cancelled, covered or counted again. */
export async function keepPlanMessages(desk: Desk, { planId }: ScheduledClass): Promise<void> {
  const open = planId === undefined ? undefined : await openPlan(desk, planId);
  if (open === undefined) return;
  const cause = `class:${desk.newId()}`;
  await refreshCard(desk, open, cause);
  await updateReview(desk, open, cause);
}
