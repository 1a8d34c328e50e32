import type { Desk } from '../handling.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';

/** The version a coach asked changes on, where a later one waits for the first approval. */
export type AskedOn = { readonly askedOn?: OpenPlan };

export async function askedOn(desk: Desk, { record }: OpenPlan): Promise<AskedOn> {
  if (record.state !== 'in review' || record.approvedVersion !== undefined) return {};
  const steps = await desk.stores.reviews.list(desk.studioId, record.id);
  const asked = steps.findLast(({ kind }) => kind === 'changes asked')?.version;
  if (asked === undefined || asked === record.currentVersion) return {};
  const before = await openPlan(desk, record.id, asked);
  return before === undefined ? {} : { askedOn: before };
}
