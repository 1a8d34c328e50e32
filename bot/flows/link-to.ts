import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import type { Desk } from '../handling.ts';
import { textKey } from './post-draft.ts';
import { reviewKeyOf } from './review-plan.ts';

/** The address of a message in the workspace; undefined where the workspace did not say its own. */
export function linkTo(
  { workspaceUrl }: Pick<Desk, 'workspaceUrl'>,
  at: { readonly place: string; readonly stamp: string } | undefined,
): string | undefined {
  if (workspaceUrl === undefined || at === undefined) return undefined;
  return `${workspaceUrl.replace(/\/$/, '')}/archives/${at.place}/p${at.stamp.replace('.', '')}`;
}

/** The message that a plan's thread stands under; undefined while it is on its way. */
export async function linkToDraft(desk: Desk, { home, id }: PlanRecord): Promise<string | undefined> {
  if (home !== undefined) return linkTo(desk, { place: home.place, stamp: home.thread });
  return linkTo(desk, (await desk.stores.notices.find(desk.studioId, textKey(id)))?.sentTo);
}

/** The message a plan is decided under. */
export async function linkToReview(desk: Desk, record: PlanRecord): Promise<string | undefined> {
  const notice = await desk.stores.notices.find(desk.studioId, await reviewKeyOf(desk, record));
  return linkTo(desk, notice?.sentTo);
}
