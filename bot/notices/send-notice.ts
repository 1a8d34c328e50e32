import type { WebClient } from '@slack/web-api';
import type { Storage, StoredNotice, StudioId } from '../../domain/ports.ts';
import { metadataEventType } from '../ids.ts';
import type { Log } from '../log.ts';
import { readCallFailure } from './call-failure.ts';
import { callWithFallbacks, type FallbackTools } from './call-with-fallbacks.ts';
import type { Pace } from './create-pace.ts';
import { findPosted } from './find-posted.ts';
import { createShowPicture } from './show-picture.ts';
import { uploadFile } from './upload-file.ts';

export type SentTo = { readonly place: string; readonly stamp: string };

type Attempt =
  | { readonly kind: 'sent'; readonly sentTo: SentTo }
  /** What it belongs to is not posted yet. */
  | { readonly kind: 'waits' }
  /** What it belongs to will never be posted. */
  | { readonly kind: 'orphan' };

/** One try to send one notice; rejects with the failed call's error. */
export type SendNotice = (studioId: StudioId, notice: StoredNotice) => Promise<Attempt>;

/** After so many tries a file that won't go gives way to its text. */
const fileAttempts = 3;

type Anchor = Attempt | { readonly kind: 'top' };

export function createSendNotice(parts: {
  readonly storage: Storage;
  readonly client: WebClient;
  readonly now: () => string;
  readonly pace: Pace;
  readonly log: Log;
  /** On real time. */
  readonly wait: (ms: number) => Promise<void>;
}): SendNotice {
  const { storage, client, pace, log } = parts;
  const showPicture = createShowPicture(client, log);
  const directPlaces = new Map<string, string>();

  /** The channel itself, or the direct message of a person. */
  const placeOf = async (to: string): Promise<string> => {
    if (!/^[UW]/.test(to)) return to;
    const known = directPlaces.get(to);
    if (known !== undefined) return known;
    const place = (await client.conversations.open({ users: to })).channel?.id;
    if (place === undefined) throw new Error('The workspace opened no direct message.');
    directPlaces.set(to, place);
    return place;
  };

  const whereIs = async (studioId: StudioId, key: string): Promise<Attempt> => {
    const notice = await storage.notices.find(studioId, key);
    if (notice === undefined || notice.state === 'dead') return { kind: 'orphan' };
    return notice.sentTo === undefined ? { kind: 'waits' } : { kind: 'sent', sentTo: notice.sentTo };
  };

  const anchorOf = async (studioId: StudioId, { to, action }: StoredNotice): Promise<Anchor> => {
    if (action.kind === 'update') return whereIs(studioId, action.of);
    const { thread } = action;
    if (thread === undefined) return { kind: 'top' };
    if ('noticeKey' in thread) return whereIs(studioId, thread.noticeKey);
    return { kind: 'sent', sentTo: { place: to, stamp: thread.stamp } };
  };

  /** When the place is free for a call; the row says *sending* before it is made. */
  const inTurn = <Answer>(
    studioId: StudioId,
    { key }: StoredNotice,
    place: string,
    call: () => Promise<Answer>,
  ): Promise<Answer> =>
    pace(place, async () => {
      await storage.notices.markSending(studioId, key, parts.now());
      return call();
    });

  /** What goes into a thread goes where the thread is, whatever channel is set by now. */
  const post = async (studioId: StudioId, notice: StoredNotice, under: SentTo | undefined) => {
    const place = await placeOf(under?.place ?? notice.to);
    const thread = under?.stamp;
    if (notice.state === 'sending') {
      const stamp = await lookUp(notice, place, thread);
      if (stamp !== undefined) return { place, stamp };
    }
    return inTurn(studioId, notice, place, () => postIn(place, thread, notice));
  };

  const postIn = async (place: string, thread: string | undefined, notice: StoredNotice): Promise<SentTo> => {
    if (await isPostedAsFile(notice, place, thread)) return { place, stamp: thread ?? notice.key };
    const inThread = thread === undefined ? {} : { thread_ts: thread };
    const answer = await callWithFallbacks(
      notice.payload,
      (content) =>
        client.chat.postMessage({
          channel: place,
          ...content,
          ...inThread,
          metadata: metadataOf(notice.key),
          parse: 'none',
          unfurl_links: false,
          unfurl_media: false,
        }),
      toolsFor(notice.key),
    );
    if (answer.ts === undefined) throw new Error('The workspace gave no stamp.');
    return { place: answer.channel ?? place, stamp: answer.ts };
  };

  /**
   * False where the notice is no file, or its file can't be posted: the text stands in its place then. What
   * may pass is tried again first. A posted file has no stamp of its own to be known by: its thread's stands
   * for it.
   */
  const isPostedAsFile = async (
    notice: StoredNotice,
    place: string,
    thread: string | undefined,
  ): Promise<boolean> => {
    const { key, payload, attempts } = notice;
    if (payload.file === undefined) return false;
    const { name, title, content } = payload.file;
    try {
      const file = { name, title, bytes: Buffer.from(content, 'utf8') };
      await uploadFile(client, file, { place, comment: title, ...(thread === undefined ? {} : { thread }) });
      return true;
    } catch (error) {
      const failure = readCallFailure(error);
      const mayPass = failure.kind === 'rate limited' || failure.kind === 'unclear';
      if (mayPass && attempts < fileAttempts) throw error;
      if (mayPass && (await lookUp(notice, place, thread)) !== undefined) return true;
      log.warn('file not posted, sending text', { noticeKey: key, code: failure.code });
      return false;
    }
  };

  const toolsFor = (noticeKey: string): FallbackTools => ({
    showPicture,
    wait: parts.wait,
    onRefusal: (code) => log.warn('blocks refused, sending plainer ones', { noticeKey, code }),
  });

  /** Where the history may not be read, the post is made again and the doubt is logged. */
  const lookUp = async ({ key, payload }: StoredNotice, place: string, thread: string | undefined) => {
    try {
      const stamp = await findPosted(client, { key, fileName: payload.file?.name }, place, thread);
      log.info('looked for a post whose answer was lost', { noticeKey: key, found: stamp !== undefined });
      return stamp;
    } catch (error) {
      const failure = readCallFailure(error);
      if (failure.kind !== 'refused' && failure.code !== 'missing_scope') throw error;
      log.warn('may be posted twice: its place cannot be read', { noticeKey: key, code: failure.code });
      return undefined;
    }
  };

  const update = async (studioId: StudioId, notice: StoredNotice, { place, stamp }: SentTo) => {
    const posted = notice.action.kind === 'update' ? notice.action.of : notice.key;
    await inTurn(studioId, notice, place, () =>
      callWithFallbacks(
        notice.payload,
        (content) =>
          client.chat.update({
            channel: place,
            ts: stamp,
            ...content,
            metadata: metadataOf(posted),
            parse: 'none',
          }),
        toolsFor(notice.key),
      ),
    );
  };

  return async (studioId, notice) => {
    const anchor = await anchorOf(studioId, notice);
    if (anchor.kind === 'waits' || anchor.kind === 'orphan') return anchor;
    if (notice.action.kind === 'update') {
      if (anchor.kind === 'top') return { kind: 'orphan' };
      await update(studioId, notice, anchor.sentTo);
      return { kind: 'sent', sentTo: anchor.sentTo };
    }
    const sentTo = await post(studioId, notice, anchor.kind === 'top' ? undefined : anchor.sentTo);
    return { kind: 'sent', sentTo };
  };
}

function metadataOf(key: string) {
  return { event_type: metadataEventType, event_payload: { key } };
}
