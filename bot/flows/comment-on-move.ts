import { labelsByLine } from '../../domain/plan/labels.ts';
import type { LineId } from '../../domain/plan/plan.ts';
import type { PlanComment } from '../../domain/plan/plan-life.ts';
import { isHeadCoach, mayChangePlan } from '../../domain/who-may.ts';
import { renderComment } from '../blocks/comment-messages.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { whyNotPosted } from './keep-private.ts';
import type { OpenPlan } from './open-plan.ts';
import { postInThread } from './post-draft.ts';
import { tellInReview, updateReview } from './review-plan.ts';

/** What the person is told where nothing was done; undefined where it was. */
type Told = Message | undefined;

/** A head coach's words on one line of a plan, told to its author and kept until they are resolved. */
export async function commentOnMove(
  desk: Desk,
  open: OpenPlan,
  by: string,
  line: LineId,
  said: string,
): Promise<Told> {
  const { words, stores, studioId } = desk;
  if (!isHeadCoach(desk.settings, by))
    return { text: words.refusal({ code: 'not-a-head-coach', facts: {} }) };
  const text = said.trim();
  if (text === '') return { text: words.coach.commentMissing };
  const isPrivate = whyNotPosted(desk, text);
  if (isPrivate !== undefined) return isPrivate;
  const { plan } = open.version;
  if (plan === undefined || !labelsByLine(plan).has(line)) return { text: words.coach.commentLineGone };
  const comment: PlanComment = {
    id: desk.newId(),
    planId: open.record.id,
    line,
    version: open.record.currentVersion,
    text,
    by,
    at: desk.now,
  };
  await stores.comments.add(studioId, comment);
  const message = renderComment(open, comment, desk);
  await postInThread(desk, open, authorKey(comment), message);
  await tellInReview(desk, open, coachKey(comment), message);
  await updateReview(desk, open, `comment:${comment.id}`);
  return undefined;
}

/** The same by its label: `B1`, in the letters of the plan as it stands. */
export async function commentByLabel(
  desk: Desk,
  open: OpenPlan,
  by: string,
  label: string,
  said: string,
): Promise<Told> {
  const { plan } = open.version;
  const labels = plan === undefined ? [] : [...labelsByLine(plan)];
  const found = labels.findLast(([, each]) => each === label.toUpperCase());
  if (found === undefined)
    return { text: desk.words.coach.noSuchLetter(inertText(label), labels.at(-1)?.[1] ?? '') };
  return commentOnMove(desk, open, by, found[0], said);
}

/** Its author or a head coach has done with it; its button goes wherever it stands. */
export async function resolveComment(
  desk: Desk,
  open: OpenPlan,
  commentId: string,
  by: string,
): Promise<Told> {
  const { words, stores, studioId } = desk;
  const comment = await stores.comments.find(studioId, commentId);
  if (comment?.planId !== open.record.id) return { text: words.flow.buttonGone };
  if (comment.resolved !== undefined) return { text: words.coach.resolved(comment.resolved.by) };
  if (!mayChangePlan(desk.settings, open.record, by)) return { text: words.coach.onlyTheirs };
  await stores.comments.resolve(studioId, commentId, by, desk.now);
  const resolved = (await stores.comments.find(studioId, commentId)) ?? comment;
  const payload = renderComment(open, resolved, desk);
  for (const key of [authorKey(comment), coachKey(comment)]) {
    const posted = await stores.notices.find(studioId, key);
    if (posted !== undefined)
      await stores.notices.enqueue(studioId, {
        key: `${key}:resolved`,
        to: posted.to,
        action: { kind: 'update', of: key },
        payload,
        causedAt: desk.now,
      });
  }
  await updateReview(desk, open, `resolved:${commentId}`);
  return undefined;
}

function authorKey({ id, planId }: PlanComment): string {
  return `comment:${planId}:${id}:author`;
}

function coachKey({ id, planId }: PlanComment): string {
  return `comment:${planId}:${id}:review`;
}
