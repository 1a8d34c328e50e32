import { readClassRequest } from '../../domain/calendar/read-class-request.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { labelsByLine } from '../../domain/plan/labels.ts';
import { looksLikeEdit } from '../../domain/shorthand/edit-words.ts';
import { readMoveOrder } from '../../domain/shorthand/read-move-order.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { renderMoveWhat } from '../blocks/change-button.ts';
import { titleOf } from '../blocks/draft-card.ts';
import { linked } from '../blocks/elements.ts';
import { renderHelp, renderWholeHelp } from '../blocks/help-message.ts';
import { addsLines, withLines } from '../flows/adds-lines.ts';
import { rewrite } from '../flows/change-plan.ts';
import { commentByLabel } from '../flows/comment-on-move.ts';
import { sayOfData } from '../flows/data-of-person.ts';
import { whyNotKept } from '../flows/keep-private.ts';
import { linkToDraft } from '../flows/link-to.ts';
import { meaningOf } from '../flows/meaning-of.ts';
import { contextFor, findPlanInThread, type OpenPlan, openPlan } from '../flows/open-plan.ts';
import { carryOutOrder } from '../flows/own-moves.ts';
import { classInThread } from '../flows/recount-kit.ts';
import { reviewsFor } from '../flows/reviews-at-once.ts';
import { sayOfClass } from '../flows/say-of-class.ts';
import { sayTaught } from '../flows/say-taught.ts';
import { readAgain, startAgain } from '../flows/start-again.ts';
import { startDraft } from '../flows/start-draft.ts';
import { textOfEdit } from '../flows/text-of-edit.ts';
import { weekForAsker } from '../flows/week-for-asker.ts';
import {
  type Desk,
  type Handler,
  type Message,
  type MessageRequest,
  noReaction,
  type Reaction,
} from '../handling.ts';
import { belongsInThread, sayInThread } from './say-in-thread.ts';

/** Lines that follow a draft within this time belong to it. */
const followMilliseconds = 300_000;

/** A direct message to Evenset, an edit of one, or a mention in a thread. */
export const onMessage: Handler<MessageRequest> = async (request, desk) => {
  if (request.edited) return onEdited(request, desk);
  if (request.thread !== undefined) return onReply(request, request.thread, desk);
  return onTopLevel(request, desk);
};

/** The original message put right is a new version of its draft. Edits may come in any order: the latest stands. */
async function onEdited(request: MessageRequest, desk: Desk): Promise<Reaction> {
  const open = await openPlanIn(desk, request.place, request.stamp);
  if (open === undefined) return (await lineFromEdited(request, desk)) ?? draftFromEdited(request, desk);
  const { before, text: said, editedStamp } = request;
  const text = (await textOfEdit(desk, open.record.id, before, said)) ?? said;
  if (open.version.text === text || (await isOvertaken(desk, open, request))) return noReaction;
  const changed = await rewrite(
    desk,
    open,
    request.personId,
    text,
    editedStamp === undefined ? {} : { editedStamp },
  );
  return changed.kind === 'kept' ? reply(request, desk, changed.message) : noReaction;
}

/** A later edit of the same message is known already. */
async function isOvertaken(desk: Desk, { record }: OpenPlan, { editedStamp }: MessageRequest) {
  const versions = await desk.stores.plans.listVersions(desk.studioId, record.id);
  return versions.some(
    ({ cause }) =>
      cause.kind === 'written' &&
      cause.editedStamp !== undefined &&
      editedStamp !== undefined &&
      cause.editedStamp > editedStamp,
  );
}

/** One of the messages that followed a draft, put right; undefined where it is none. */
async function lineFromEdited(request: MessageRequest, desk: Desk): Promise<Reaction | undefined> {
  const { personId, before, text: said, thread } = request;
  const [latest] = await desk.stores.plans.listByAuthor(desk.studioId, personId, 1);
  if (latest === undefined || latest.state !== 'draft' || thread !== undefined) return undefined;
  const text = await textOfEdit(desk, latest.id, before, said);
  const open = text === undefined ? undefined : await openPlan(desk, latest.id);
  if (text === undefined || open === undefined) return undefined;
  const changed = await rewrite(desk, open, personId, text, { adds: 'where lines follow' });
  return changed.kind === 'kept' ? reply(request, desk, changed.message) : noReaction;
}

/** A class that was not kept as it stood, or whose own message is still on its way, is drafted as put right. */
async function draftFromEdited(request: MessageRequest, desk: Desk): Promise<Reaction> {
  const { place, stamp, personId, text, thread, editedStamp } = request;
  if (thread !== undefined) return noReaction;
  const reading = readPlan(text, await contextFor(desk));
  const recent = await draftJustWritten(desk, personId);
  if (meaningOf(text, reading, recent !== undefined) !== 'opens a class') return noReaction;
  const isPrivate = whyNotKept(desk, text);
  if (isPrivate !== undefined) return reply(request, desk, isPrivate);
  await startDraft(desk, {
    personId,
    text,
    home: { place, thread: stamp },
    ...(editedStamp === undefined ? {} : { editedStamp }),
  });
  return noReaction;
}

async function onReply(request: MessageRequest, thread: string, desk: Desk): Promise<Reaction> {
  const { place, personId, text } = request;
  if (desk.words.draft.isSmallTalk(text)) return reply(request, desk, { text: desk.words.draft.gladly });
  const taught = await sayTaught(desk, text, personId, { place, thread });
  if (taught !== undefined) return reply(request, desk, taught);
  const open = await openPlanIn(desk, request.place, thread);
  const comment = open && (await commentInReview(desk, open, request));
  if (comment !== undefined) return reply(request, desk, ...comment);
  const scheduled = open?.scheduled ?? (await classInThread(desk, request.place, thread));
  if (open?.version.plan !== undefined && text.trim().toLowerCase() === 'move')
    return reply(request, desk, renderMoveWhat(open.version.plan, scheduled, desk.words));
  const isEdit = open !== undefined && isOfPlan(open, scheduled, text);
  const ofClass = isEdit ? undefined : await sayOfClass(desk, request.text, request.personId, scheduled);
  if (ofClass !== undefined) return reply(request, desk, ofClass);
  if (open === undefined) return reply(request, desk, renderHelp(desk.words));
  return reply(request, desk, ...(await sayInThread(desk, open, request.personId, request.text)));
}

/**
 * Words that a plan and a class both know are for the plan where it has no class; `12 now` is also while no
 * version is approved that a class could be counted from.
 */
function isOfPlan({ record }: OpenPlan, scheduled: ScheduledClass | undefined, text: string): boolean {
  if (scheduled === undefined) return looksLikeEdit(text);
  return record.approvedVersion === undefined && readClassRequest(text)?.kind === 'people now';
}

/** `B1: slower`, or a head coach's `B1 slower please`, in a review's thread is a comment on that move. */
async function commentInReview(
  desk: Desk,
  open: OpenPlan,
  { place, personId, text }: MessageRequest,
): Promise<readonly Message[] | undefined> {
  if (place !== desk.settings.reviewChannel) return undefined;
  const [, label, said] =
    /^\s*([a-z]{1,2}\d?)\s*:\s*(\S[\s\S]*)$/iu.exec(text) ?? plainComment(desk, open, personId, text);
  if (label === undefined || said === undefined) return undefined;
  const told = await commentByLabel(desk, open, personId, label, said);
  return told === undefined ? [] : [told];
}

/** Without the colon the letter must stand in the plan, and `I` is a word. */
function plainComment(desk: Desk, { version }: OpenPlan, personId: string, text: string): readonly string[] {
  const found = /^\s*([A-Z]{1,2}\d?)\s+(\S+\s+\S[\s\S]*)$/u.exec(text) ?? [];
  const labels = version.plan === undefined ? [] : [...labelsByLine(version.plan).values()];
  const isCoach = isHeadCoach(desk.settings, personId);
  return isCoach && found[1] !== 'I' && labels.includes(found[1] ?? '') ? found : [];
}

async function onTopLevel(request: MessageRequest, desk: Desk): Promise<Reaction> {
  const { text, place, stamp, personId } = request;
  // Its edit came first, and is drafted.
  if ((await findPlanInThread(desk, place, stamp)) !== undefined) return noReaction;
  if (desk.words.draft.isSmallTalk(text)) return reply(request, desk, { text: desk.words.draft.gladly });
  const [word = '', argument, ...more] = text.trim().split(/\s+/);
  if (word.toLowerCase() === 'help' && argument === undefined)
    return reply(request, desk, renderWholeHelp(desk));
  if (word.toLowerCase() === 'week' && more.length === 0)
    return reply(request, desk, await weekForAsker(desk, personId, argument));
  if (word.toLowerCase() === 'reviews' && argument === undefined)
    return reply(request, desk, await reviewsFor(desk, personId));
  const again = readAgain(text);
  if (again !== undefined) {
    const started = await startAgain(desk, personId, again, { place, thread: stamp });
    return started.kind === 'started' ? noReaction : reply(request, desk, started.message);
  }
  const taught = await sayTaught(desk, text, personId);
  if (taught !== undefined) return reply(request, desk, taught);
  const ofClass = await sayOfClass(desk, text, personId);
  if (ofClass !== undefined) return reply(request, desk, ofClass);
  const ofData = await sayOfData(desk, personId, text);
  if (ofData !== undefined) return reply(request, desk, ofData);
  const order = readMoveOrder(text);
  if (order !== undefined) return reply(request, desk, { text: await carryOutOrder(desk, personId, order) });
  const context = await contextFor(desk);
  const reading = readPlan(text, context);
  const recent = await draftJustWritten(desk, personId);
  switch (meaningOf(text, reading, recent !== undefined)) {
    case 'opens a class': {
      const isPrivate = whyNotKept(desk, text);
      if (isPrivate !== undefined) return reply(request, desk, isPrivate);
      await startDraft(desk, { personId, text, home: { place, thread: stamp } });
      return noReaction;
    }
    case 'more lines': {
      if (recent === undefined || !addsLines(recent.version.text, text, context))
        return notRead(request, desk);
      const lines = withLines(recent.version.text, text);
      const changed = await rewrite(desk, recent, personId, lines, { adds: 'a line' });
      return changed.kind === 'kept' ? reply(request, desk, changed.message) : noReaction;
    }
    case 'unclear':
      return notRead(request, desk);
  }
}

/** Words for a class go to its thread; all others get the help. */
async function notRead(request: MessageRequest, desk: Desk): Promise<Reaction> {
  const { plans } = desk.stores;
  const [latest] = await plans.listByAuthor(desk.studioId, request.personId, 1);
  if (latest === undefined || !belongsInThread(request.text))
    return reply(request, desk, renderHelp(desk.words));
  const version = await plans.findVersion(desk.studioId, latest.id, latest.currentVersion);
  const title = linked(titleOf(version?.plan, desk.words), await linkToDraft(desk, latest));
  return reply(request, desk, { text: desk.words.draft.inItsThread(title) });
}

async function openPlanIn(desk: Desk, place: string, thread: string): Promise<OpenPlan | undefined> {
  const planId = await findPlanInThread(desk, place, thread);
  return planId === undefined ? undefined : openPlan(desk, planId);
}

async function draftJustWritten(desk: Desk, personId: string): Promise<OpenPlan | undefined> {
  const [latest] = await desk.stores.plans.listByAuthor(desk.studioId, personId, 1);
  if (latest === undefined || latest.state !== 'draft') return undefined;
  const open = await openPlan(desk, latest.id);
  if (open === undefined || open.version.cause.kind !== 'written') return undefined;
  return Date.parse(desk.now) - Date.parse(open.version.madeAt) <= followMilliseconds ? open : undefined;
}

/** Answers in the same thread or direct message, kept until they are posted. */
async function reply(
  request: MessageRequest,
  desk: Desk,
  ...messages: readonly Message[]
): Promise<Reaction> {
  const key = request.edited ? `${replyKey(request)}:${desk.newId()}` : replyKey(request);
  for (const [place, payload] of messages.entries())
    await desk.stores.notices.enqueue(desk.studioId, {
      key: place === 0 ? key : `${key}:${place + 1}`,
      to: request.place,
      action:
        request.thread === undefined ? { kind: 'post' } : { kind: 'post', thread: { stamp: request.thread } },
      payload,
      causedAt: desk.now,
    });
  return noReaction;
}

function replyKey({ place, stamp }: MessageRequest): string {
  return `reply:${place}:${stamp}`;
}
