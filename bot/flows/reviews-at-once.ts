import { decideStep } from '../../domain/plan/decide-step.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { type Batch, type BatchLine, renderBatch, renderBatchDone } from '../blocks/batch-message.ts';
import { findingLine } from '../blocks/draft-card.ts';
import type { Desk, Message } from '../handling.ts';
import { linkToReview } from './link-to.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';
import { clashesOf } from './review-facts.ts';
import { approve } from './review-plan.ts';

/** All that waits for a coach: the clean ones, which one tap approves, and those to look at. */
export async function reviewsFor(desk: Desk, coach: string): Promise<Message> {
  const { words } = desk;
  if (!isHeadCoach(desk.settings, coach)) return { text: words.coach.onlyCoaches };
  const lines = await waitingForReview(desk, coach);
  if (lines.length === 0) return { text: words.coach.noneWaits };
  const batch: Batch = {
    clean: lines.filter(({ trouble }) => trouble === ''),
    toLookAt: lines.filter(({ trouble }) => trouble !== ''),
  };
  return renderBatch(batch, desk);
}

/**
 * Approves each of these versions that is still clean and waits; what was left out is told. Undefined where
 * none of them is a plan of this studio.
 */
export async function approveClean(
  desk: Desk,
  coach: string,
  wanted: readonly { readonly plan: string; readonly version: number }[],
): Promise<Message | undefined> {
  const { words } = desk;
  if (!isHeadCoach(desk.settings, coach)) return { text: words.coach.onlyCoaches };
  let approved = 0;
  const leftOut: BatchLine[] = [];
  for (const { plan, version } of wanted) {
    const open = await openPlan(desk, plan);
    if (open === undefined) continue;
    const line = await batchLine(desk, open, coach);
    const isClean = open.record.currentVersion === version && line.trouble === '';
    const stepped = isClean ? await approve(desk, open, coach, version) : undefined;
    if (stepped?.kind === 'stepped') approved += 1;
    else leftOut.push(line);
  }
  return approved + leftOut.length === 0 ? undefined : renderBatchDone(approved, leftOut, desk);
}

/** What waits, the oldest first, and why each is looked at. */
export async function waitingForReview(desk: Desk, coach: string): Promise<readonly BatchLine[]> {
  const lines: BatchLine[] = [];
  for (const { id } of await desk.stores.plans.listByState(desk.studioId, 'in review')) {
    const open = await openPlan(desk, id);
    if (open !== undefined) lines.push(await batchLine(desk, open, coach));
  }
  return lines;
}

async function batchLine(desk: Desk, open: OpenPlan, coach: string): Promise<BatchLine> {
  const link = await linkToReview(desk, open.record);
  return {
    open,
    trouble: await troubleOf(desk, open, coach),
    ...(link === undefined ? {} : { link }),
  };
}

/** Why a plan is not approved unseen; empty where it is clean. */
async function troubleOf(desk: Desk, open: OpenPlan, coach: string): Promise<string> {
  const { words, stores, studioId } = desk;
  const { report, record } = open;
  const step = { kind: 'approve', by: coach, at: desk.now, version: record.currentVersion } as const;
  const decision = decideStep(record, step, desk.settings, await stores.reviews.list(studioId, record.id));
  if (decision.kind === 'refused')
    return decision.code === 'own-plan' ? words.coach.batchOwn : words.refusal(decision);
  if (report.kind !== 'report') return words.card.problemsTitle(report.problems.length);
  const comments = (await stores.comments.list(studioId, record.id)).filter(
    ({ resolved }) => resolved === undefined,
  );
  const found = report.findings.filter(({ severity }) => severity !== 'good to know');
  return words.coach.batchTrouble(
    [
      ...(await clashesOf(desk, open)),
      ...found.slice(0, 1).map((finding) => findingLine(finding, report.plan, desk)),
    ],
    Math.max(0, found.length - 1),
    comments.length,
  );
}
