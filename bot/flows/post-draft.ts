import type { ThreadRef } from '../../domain/ports.ts';
import { renderCardPages, renderDraftCard } from '../blocks/draft-card.ts';
import type { Desk, Message } from '../handling.ts';
import { changeMessage, newestOf } from './keep-message.ts';
import type { OpenPlan } from './open-plan.ts';

export function cardKey(planId: string): string {
  return `card:${planId}`;
}

export function textKey(planId: string): string {
  return `text:${planId}`;
}

/** The thread a draft lives in: under the person's own message, or under the text Evenset posted. */
function threadOf(open: OpenPlan): { readonly to: string; readonly thread: ThreadRef } {
  const { home, id, authorId } = open.record;
  return home === undefined
    ? { to: authorId, thread: { noticeKey: textKey(id) } }
    : { to: home.place, thread: { stamp: home.thread } };
}

/** Puts the card into the draft's thread. */
export async function postCard(desk: Desk, open: OpenPlan): Promise<void> {
  await postInThread(desk, open, cardKey(open.record.id), renderDraftCard(open, desk));
  await keepPages(desk, open);
}

/** Brings the card up to date; `cause` tells this update from others of the same version. */
export async function refreshCard(desk: Desk, open: OpenPlan, cause: string): Promise<void> {
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${cardKey(open.record.id)}:${cause}`,
    to: threadOf(open).to,
    action: { kind: 'update', of: cardKey(open.record.id) },
    payload: renderDraftCard(open, desk),
    causedAt: desk.now,
  });
  await keepPages(desk, open);
}

/** The messages under the card that a long class goes on in: posted once each, and kept true. */
async function keepPages(desk: Desk, open: OpenPlan): Promise<void> {
  const pages = renderCardPages(open, desk);
  for (let place = 0; ; place += 1) {
    const key = `page:${open.record.id}:${place + 2}`;
    const standing = await newestOf(desk, key);
    const page = pages[place];
    if (page === undefined && standing === undefined) return;
    if (standing !== undefined)
      await changeMessage(desk, standing, page ?? { text: desk.words.card.pageGone });
    else if (page !== undefined) await postInThread(desk, open, key, page);
  }
}

/** Says something in the draft's thread, once for each key. */
export async function postInThread(desk: Desk, open: OpenPlan, key: string, message: Message): Promise<void> {
  const { to, thread } = threadOf(open);
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to,
    action: { kind: 'post', thread },
    payload: message,
    causedAt: desk.now,
  });
}

export function answerKey(planId: string, version: number): string {
  return `answer:${planId}:v${version}`;
}

/** Of the message that tells where a draft stands while its lines follow, from this version on. */
export function linesKey(planId: string, version: number): string {
  return `lines:${planId}:v${version}`;
}
