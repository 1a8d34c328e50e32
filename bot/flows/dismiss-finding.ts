import { mayChangePlan } from '../../domain/who-may.ts';
import { findingLine } from '../blocks/draft-card.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { whyNotPosted } from './keep-private.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';
import { postInThread, refreshCard } from './post-draft.ts';
import { tellInReview, updateReview } from './review-plan.ts';

export type Dismissed =
  | { readonly kind: 'dismissed'; readonly open: OpenPlan }
  | { readonly kind: 'kept'; readonly message: Message };

/** Leaves a finding out for this plan, with a word of reason that both threads see. What must be fixed stays. */
export async function dismissFinding(
  desk: Desk,
  open: OpenPlan,
  by: string,
  code: string,
  said: string,
): Promise<Dismissed> {
  const { words, stores, studioId } = desk;
  const { record, report } = open;
  const kept = (text: string): Dismissed => ({ kind: 'kept', message: { text } });
  if (!mayChangePlan(desk.settings, record, by))
    return kept(words.refusal({ code: 'not-your-plan', facts: { authorId: record.authorId } }));
  const reason = said.trim();
  if (reason === '') return kept(words.dismiss.reasonMissing);
  const isPrivate = whyNotPosted(desk, reason);
  if (isPrivate !== undefined) return { kind: 'kept', message: isPrivate };
  const finding = report.kind === 'report' ? report.findings.find((each) => each.code === code) : undefined;
  if (finding === undefined || report.kind !== 'report') return kept(words.dismiss.gone);
  if (finding.severity === 'must fix') return kept(words.dismiss.mustFix);
  await stores.plans.dismissFinding(studioId, record.id, code, by, reason, desk.now);
  const after = (await openPlan(desk, record.id)) ?? open;
  const line = findingLine(finding, report.plan, desk).replaceAll('*', '');
  const told = { text: words.dismiss.done(by, line, inertText(reason)) };
  await refreshCard(desk, after, `dismissed:${code}`);
  await postInThread(desk, after, `dismissed:${record.id}:${code}`, told);
  if (record.state === 'in review') {
    await updateReview(desk, after, `dismissed:${code}`);
    await tellInReview(desk, after, `dismissed:${record.id}:${code}:review`, told);
  }
  return { kind: 'dismissed', open: after };
}
