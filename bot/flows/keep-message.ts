import type { NoticePayload, StoredNotice } from '../../domain/ports.ts';
import type { Desk, Message } from '../handling.ts';

/** What a kept message says; `at` is the instant as of which it says it. */
type Says = (at: string) => Message;

/** The newest content of the message that the notice of this key posts; undefined where none was posted. */
export async function newestOf(desk: Desk, key: string): Promise<StoredNotice | undefined> {
  let newest = await desk.stores.notices.find(desk.studioId, key);
  for (let change = 1; newest !== undefined; change += 1) {
    const next = await desk.stores.notices.find(desk.studioId, changeKey(key, change));
    if (next === undefined) return newest;
    newest = next;
  }
  return undefined;
}

/**
 * Keeps a posted message true: where it would have said something else at the time it last spoke, as things
 * stand now, it is changed; `isDue`: its time has come to speak anew.
 */
export async function keepTrue(desk: Desk, newest: StoredNotice, says: Says, isDue = false): Promise<void> {
  if (!isDue && isSame(newest.payload, says(newest.causedAt))) return;
  await changeMessage(desk, newest, says(desk.now));
}

/** Puts other content into a posted message, after the newest it has; safe to repeat. */
export async function changeMessage(desk: Desk, newest: StoredNotice, message: NoticePayload): Promise<void> {
  if (isSame(newest.payload, message)) return;
  const key = newest.action.kind === 'update' ? newest.action.of : newest.key;
  const change = newest.action.kind === 'update' ? Number(newest.key.slice(key.length + 1)) + 1 : 1;
  await desk.stores.notices.enqueue(desk.studioId, {
    key: changeKey(key, change),
    to: newest.to,
    action: { kind: 'update', of: key },
    payload: message,
    causedAt: desk.now,
  });
}

function changeKey(key: string, change: number): string {
  return `${key}#${change}`;
}

function isSame(a: NoticePayload, b: NoticePayload): boolean {
  return JSON.stringify(contentOf(a)) === JSON.stringify(contentOf(b));
}

function contentOf({ text, blocks }: NoticePayload) {
  return [text, blocks ?? []];
}
