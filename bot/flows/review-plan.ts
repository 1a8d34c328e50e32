import { reportOnPlan } from '../../domain/class-report.ts';
import { decideStep, type PlanStep, type Refusal } from '../../domain/plan/decide-step.ts';
import type { LifeStep, PlanRecord } from '../../domain/plan/plan-life.ts';
import { sizeOfChange } from '../../domain/plan/size-of-change.ts';
import { inertText } from '../blocks/escape.ts';
import { renderLinesFirst } from '../blocks/problem-blocks.ts';
import { renderDifference, renderReview } from '../blocks/review-message.ts';
import type { Desk, Message } from '../handling.ts';
import { askedOn } from './asked-on.ts';
import { whyNotPosted } from './keep-private.ts';
import { contextFor, type OpenPlan, openPlan } from './open-plan.ts';
import { postInThread, refreshCard } from './post-draft.ts';
import { retireAnswer } from './retire-answer.ts';
import { reviewFacts } from './review-facts.ts';

/** What became of a step: done, or refused with words for the person who asked. */
export type Stepped =
  | { readonly kind: 'stepped'; readonly open: OpenPlan }
  | { readonly kind: 'kept'; readonly message: Message };

/** Posts the plan in the review channel; `version` is the one its sender looked at. */
export async function sendForReview(
  desk: Desk,
  open: OpenPlan,
  by: string,
  version = open.record.currentVersion,
): Promise<Stepped> {
  const { words } = desk;
  if (open.version.plan === undefined || open.version.problemCount > 0)
    return { kind: 'kept', message: renderLinesFirst(open, words) };
  const report = reportOnPlan(open.version.plan, {
    ...(await contextFor(desk, open.record.id)),
    sendingForReview: true,
  });
  const openLines = report.findings.filter(({ code }) => code === 'open-line-left');
  if (openLines.length > 0) return kept(words.flow.openLinesLeft);
  const stepped = await step(desk, open, { kind: 'send', by, at: desk.now, version });
  if (stepped.kind === 'kept') return stepped;
  const trusted = await approveByTrust(desk, stepped.open, by);
  await postReview(desk, trusted.open);
  const { draft } = words;
  const text =
    trusted.open.record.state === 'approved'
      ? draft.approvedByTrust(version)
      : draft.sent(version, desk.settings.reviewChannel);
  await postInThread(desk, trusted.open, `told:${open.record.id}:${desk.newId()}`, { text });
  return trusted;
}

/** A trusted instructor's plan in which nothing is found is approved at once; any other waits for a coach. */
async function approveByTrust(
  desk: Desk,
  open: OpenPlan,
  by: string,
): Promise<Extract<Stepped, { readonly kind: 'stepped' }>> {
  const { currentVersion: version } = open.record;
  const findings =
    open.report.kind === 'report'
      ? open.report.findings.filter(({ severity }) => severity !== 'good to know').length
      : 1;
  const note = desk.words.coach.byTrust;
  const wanted = { kind: 'approve by trust', by, at: desk.now, version, findings, note } as const;
  const stepped = await step(desk, open, wanted);
  return stepped.kind === 'stepped' ? stepped : { kind: 'stepped', open };
}

export async function withdraw(desk: Desk, open: OpenPlan, by: string): Promise<Stepped> {
  const stepped = await step(desk, open, { kind: 'withdraw', by, at: desk.now });
  if (stepped.kind === 'kept') return stepped;
  await updateReview(desk, stepped.open, 'withdrawn');
  const text = desk.words.draft.takenBack(open.record.currentVersion);
  await postInThread(desk, stepped.open, `told:${open.record.id}:${desk.newId()}`, { text });
  return stepped;
}

/** The head coach's yes to the version they looked at, with a note where they wrote one. */
export async function approve(
  desk: Desk,
  open: OpenPlan,
  by: string,
  version: number,
  note = '',
): Promise<Stepped> {
  const isPrivate = whyNotPosted(desk, note);
  if (isPrivate !== undefined) return { kind: 'kept', message: isPrivate };
  const stepped = await step(desk, open, { kind: 'approve', by, at: desk.now, version, note });
  if (stepped.kind === 'stepped')
    await tellAuthor(desk, stepped.open, desk.words.review.approvedNote(by, version, inertText(note.trim())));
  return stepped;
}

export async function askChanges(
  desk: Desk,
  open: OpenPlan,
  by: string,
  version: number,
  reason: string,
): Promise<Stepped> {
  const isPrivate = whyNotPosted(desk, reason);
  if (isPrivate !== undefined) return { kind: 'kept', message: isPrivate };
  const stepped = await step(desk, open, { kind: 'ask changes', by, at: desk.now, version, reason });
  if (stepped.kind === 'stepped')
    await tellAuthor(desk, stepped.open, desk.words.review.changesNote(by, version, inertText(reason)));
  return stepped;
}

/** Keeps the review channel true after a plan has changed. */
export async function followUpReview(desk: Desk, before: OpenPlan, after: OpenPlan): Promise<void> {
  const waits = after.record.state === 'in review';
  if (before.record.state === 'approved' && after.record.state === 'approved') {
    await updateReview(desk, after, `v${after.record.currentVersion}`);
    const [was, now] = [before.version.plan, after.version.plan];
    if (was !== undefined && now !== undefined && sizeOfChange(was, now) === 'small')
      await replyInReview(desk, after, before);
    return;
  }
  if (before.record.state === 'in review') {
    await updateReview(desk, after, `v${after.record.currentVersion}`);
    if (waits) await replyInReview(desk, after, before);
  } else if (waits) {
    await postReview(desk, after);
  }
}

async function step(desk: Desk, open: OpenPlan, wanted: PlanStep): Promise<Stepped> {
  const decision = decideStep(open.record, wanted, desk.settings, await stepsOf(desk, open));
  if (decision.kind === 'refused')
    return kept(
      isOwnWithdrawal(decision, wanted) ? desk.words.draft.youTookItBack : desk.words.refusal(decision),
    );
  await desk.stores.plans.update(desk.studioId, decision.record);
  if (decision.lifeStep !== undefined)
    await desk.stores.reviews.add(desk.studioId, decision.record.id, decision.lifeStep);
  const after: OpenPlan = { ...open, record: decision.record };
  await refreshCard(desk, after, `${wanted.kind}:${desk.newId()}`);
  await retireAnswer(desk, after.record.id, after.record.currentVersion);
  return { kind: 'stepped', open: after };
}

/** Taken back a second time by the same person: nobody came first. */
function isOwnWithdrawal(refusal: Refusal, { kind, by }: PlanStep): boolean {
  return (
    kind === 'withdraw' &&
    refusal.code === 'already-decided' &&
    refusal.facts.step === 'withdrawn' &&
    refusal.facts.by === by
  );
}

async function tellAuthor(desk: Desk, open: OpenPlan, text: string): Promise<void> {
  const key = `told:${open.record.id}:${desk.newId()}`;
  await postInThread(desk, open, key, { text });
  await updateReview(desk, open, key);
}

/** One review message a round: sent, or changed after an approval. */
export async function reviewKeyOf(desk: Desk, record: PlanRecord): Promise<string> {
  const steps = await desk.stores.reviews.list(desk.studioId, record.id);
  const rounds = steps.filter(({ kind }) => kind === 'sent' || kind === 'changed after approval').length;
  return `review:${record.id}:${rounds}`;
}

/** Says something under the review's message, once for each key; nothing where none was posted. */
export async function tellInReview(desk: Desk, open: OpenPlan, key: string, payload: Message): Promise<void> {
  const noticeKey = await reviewKeyOf(desk, open.record);
  const posted = await desk.stores.notices.find(desk.studioId, noticeKey);
  if (posted === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to: posted.to,
    action: { kind: 'post', thread: { noticeKey } },
    payload,
    causedAt: desk.now,
  });
}

async function postReview(desk: Desk, open: OpenPlan): Promise<void> {
  if (desk.settings.reviewChannel === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: await reviewKeyOf(desk, open.record),
    to: desk.settings.reviewChannel,
    action: { kind: 'post' },
    payload: await reviewMessage(desk, open),
    causedAt: desk.now,
  });
}

/** Brings the review's message up to date; `cause` tells this update from others. */
export async function updateReview(desk: Desk, open: OpenPlan, cause: string): Promise<void> {
  if (desk.settings.reviewChannel === undefined) return;
  const key = await reviewKeyOf(desk, open.record);
  if ((await desk.stores.notices.find(desk.studioId, key)) === undefined) return;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${key}:${cause}`,
    to: desk.settings.reviewChannel,
    action: { kind: 'update', of: key },
    payload: await reviewMessage(desk, open),
    causedAt: desk.now,
  });
}

/** A plan approved before shows only what changed since. */
async function reviewMessage(desk: Desk, open: OpenPlan): Promise<Message> {
  const { approvedVersion, currentVersion } = open.record;
  const approved =
    approvedVersion === undefined || approvedVersion === currentVersion
      ? undefined
      : await openPlan(desk, open.record.id, approvedVersion);
  const known = { ...(await reviewFacts(desk, open)), ...(await askedOn(desk, open)) };
  return renderReview(open, await stepsOf(desk, open), approved, known, desk);
}

async function replyInReview(desk: Desk, open: OpenPlan, before: OpenPlan): Promise<void> {
  if (desk.settings.reviewChannel === undefined) return;
  const key = await reviewKeyOf(desk, open.record);
  const told = `${key}:difference:v${open.record.currentVersion}`;
  for (const [place, payload] of renderDifference(before, open, desk).entries())
    await desk.stores.notices.enqueue(desk.studioId, {
      key: place === 0 ? told : `${told}:${place + 1}`,
      to: desk.settings.reviewChannel,
      action: { kind: 'post', thread: { noticeKey: key } },
      payload,
      causedAt: desk.now,
    });
}

async function stepsOf(desk: Desk, open: OpenPlan): Promise<readonly LifeStep[]> {
  return desk.stores.reviews.list(desk.studioId, open.record.id);
}

function kept(text: string): Stepped {
  return { kind: 'kept', message: { text } };
}
