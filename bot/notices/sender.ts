import type { WebClient } from '@slack/web-api';
import { forgottenPerson, type Storage, type StoredNotice, type StudioId } from '../../domain/ports.ts';
import type { Counters } from '../counters.ts';
import { errorFacts, type Log } from '../log.ts';
import type { MakeDesk } from '../make-desk.ts';
import type { RealTime } from '../real-time.ts';
import type { Words } from '../words/words.ts';
import { type BackOff, backOffMs } from './back-off.ts';
import { type CallFailure, readCallFailure } from './call-failure.ts';
import { createPace } from './create-pace.ts';
import { sayForgotten } from './say-forgotten.ts';
import { createSendNotice, type SendNotice, type SentTo } from './send-notice.ts';

export type Sender = {
  /** Starts on what is due; call it after each commit. */
  readonly kick: () => void;
  /** Where a notice landed; nothing where it is dead, or not sent within the time. */
  readonly whenSent: (studioId: StudioId, key: string, mostMs: number) => Promise<SentTo | undefined>;
  /** Resolves when nothing is left to send. */
  readonly idle: () => Promise<void>;
  /** Lets calls under way end and starts no other. */
  readonly stop: () => Promise<void>;
};

type Next =
  | { readonly kind: 'go on' }
  | { readonly kind: 'waits' }
  | { readonly kind: 'again'; readonly atMs: number };

const mostUnfinished = 1_000;
const goOn: Next = { kind: 'go on' };

/**
 * The one sender. Each destination has its own line, sent in order; a line stands while its first notice is
 * tried again, and no line waits for another but for a thread or message that one opens.
 */
export function createSender(parts: {
  readonly storage: Storage;
  readonly client: WebClient;
  readonly makeDesk: MakeDesk;
  readonly words: Words;
  readonly now: () => string;
  readonly realTime: RealTime;
  readonly chance: () => number;
  readonly pacingMs: number;
  readonly backOff: BackOff;
  readonly counters: Counters;
  readonly log: Log;
}): Sender {
  const { storage, makeDesk, words, now, realTime, chance, backOff, counters, log } = parts;
  const pace = createPace(realTime, parts.pacingMs);
  const sendNotice = createSendNotice({ storage, client: parts.client, now, pace, log, wait: realTime.wait });
  const send: SendNotice = (studioId, notice) =>
    sendNotice(studioId, sayForgotten(notice, words.person(forgottenPerson)));
  const lines = new Map<string, Promise<void>>();
  /** Tries whose outcome is unknown: their rows stay *sending*, so that the key is looked up before the next. */
  const unclear = new Map<string, { readonly attempts: number; readonly atMs: number }>();
  const watchers = new Map<string, Set<(sentTo: SentTo | undefined) => void>>();
  const stopping = new AbortController();
  let kicked: Promise<void> = Promise.resolve();
  let isKicked = false;
  /** Counts what may let a standing line go on, so that none ends on an outdated look. */
  let changes = 0;

  const idOf = (studioId: StudioId, key: string) => JSON.stringify([studioId, key]);
  const settled = (studioId: StudioId, key: string, sentTo: SentTo | undefined) => {
    const id = idOf(studioId, key);
    changes += 1;
    unclear.delete(id);
    for (const tell of watchers.get(id) ?? []) tell(sentTo);
    watchers.delete(id);
  };

  const markSent = async (studioId: StudioId, key: string, sentTo: SentTo) => {
    await storage.notices.markSent(studioId, key, sentTo, now());
    settled(studioId, key, sentTo);
  };

  const markDead = async (studioId: StudioId, notice: StoredNotice, code: string, tell: boolean) => {
    log.error('notice is dead', { noticeKey: notice.key, code, attempts: notice.attempts });
    await storage.inTransaction(async (stores) => {
      await stores.notices.markDead(studioId, notice.key, code, now());
      if (!tell || notice.key.startsWith('dead:')) return;
      const { settings } = await makeDesk(studioId, stores);
      const text = words.faults
        .noticeNotPosted(
          /^[UW]/.test(notice.to) ? words.person(notice.to) : `<#${notice.to}>`,
          code,
          notice.payload.text,
        )
        .slice(0, 3_900);
      for (const coach of settings.headCoaches)
        await stores.notices.enqueue(studioId, {
          key: `dead:${notice.key}:${coach}`,
          to: coach,
          action: { kind: 'post' },
          payload: { text },
          causedAt: now(),
        });
    });
    counters.add('dead notices');
    settled(studioId, notice.key, undefined);
  };

  /** Tries so far, the unclear ones of this process among them. */
  const triesOf = (studioId: StudioId, { key, attempts }: StoredNotice) =>
    Math.max(attempts, unclear.get(idOf(studioId, key))?.attempts ?? 0);

  const failed = async (studioId: StudioId, notice: StoredNotice, failure: CallFailure): Promise<Next> => {
    const id = idOf(studioId, notice.key);
    const attempts = triesOf(studioId, notice) + 1;
    log.warn('notice not sent', { noticeKey: notice.key, kind: failure.kind, code: failure.code, attempts });
    const isFinal = failure.kind === 'refused' || failure.kind === 'blocks refused';
    if (isFinal || attempts >= backOff.mostAttempts) {
      await markDead(studioId, notice, failure.code, true);
      return goOn;
    }
    const waitMs =
      failure.kind === 'rate limited' ? failure.seconds * 1_000 : backOffMs(backOff, attempts, chance());
    const atMs = realTime.nowMs() + waitMs;
    unclear.set(id, { attempts, atMs });
    if (failure.kind !== 'unclear')
      await storage.notices.markRetry(studioId, notice.key, new Date(atMs).toISOString(), failure.code);
    return { kind: 'again', atMs };
  };

  const attempt = async (
    studioId: StudioId,
    notice: StoredNotice,
    before: readonly StoredNotice[],
  ): Promise<Next> => {
    const atMs = Math.max(
      unclear.get(idOf(studioId, notice.key))?.atMs ?? 0,
      notice.retryAt === undefined ? 0 : Date.parse(notice.retryAt),
    );
    if (atMs > realTime.nowMs()) return { kind: 'again', atMs };
    if (triesOf(studioId, notice) > 0) counters.add('retries');
    try {
      const outcome = await send(studioId, notice);
      if (outcome.kind === 'waits') return outcome;
      if (outcome.kind === 'orphan') {
        await markDead(studioId, notice, 'its message was not posted', false);
        return goOn;
      }
      await markSent(studioId, notice.key, outcome.sentTo);
      counters.add('posts');
      for (const { key } of before) await markSent(studioId, key, outcome.sentTo);
      return goOn;
    } catch (error) {
      return failed(studioId, notice, readCallFailure(error));
    }
  };

  const step = async (studioId: StudioId, to: string): Promise<Next | undefined> => {
    const unfinished = await storage.notices.listUnfinished(studioId, mostUnfinished);
    const mine = unfinished.filter((notice) => notice.to === to);
    const [first] = mine;
    if (first === undefined) return undefined;
    const of = first.action.kind === 'update' ? first.action.of : undefined;
    const sameMessage = mine.filter(
      ({ action }) => of !== undefined && action.kind === 'update' && action.of === of,
    );
    const newest = sameMessage.at(-1) ?? first;
    return attempt(studioId, newest, sameMessage.slice(0, -1));
  };

  const runLine = async (studioId: StudioId, to: string, line: string): Promise<void> => {
    let troubles = 0;
    const stepOrTrouble = async (): Promise<Next | undefined> => {
      try {
        const next = await step(studioId, to);
        troubles = 0;
        return next;
      } catch (error) {
        troubles += 1;
        log.error('outbox not reached', errorFacts(error));
        return { kind: 'again', atMs: realTime.nowMs() + backOffMs(backOff, troubles, chance()) };
      }
    };
    while (!stopping.signal.aborted) {
      const seen = changes;
      const next = await stepOrTrouble();
      const isOver = next === undefined || next.kind === 'waits';
      if (isOver && seen === changes) break;
      if (isOver) continue;
      if (next.kind === 'again')
        await realTime.wait(Math.max(1, next.atMs - realTime.nowMs()), stopping.signal);
      else await startLines().catch((error: unknown) => log.error('outbox not reached', errorFacts(error)));
    }
    lines.delete(line);
  };

  const startLines = async (): Promise<void> => {
    for (const { id: studioId } of await storage.studios.list()) {
      const unfinished = await storage.notices.listUnfinished(studioId, mostUnfinished);
      for (const to of new Set(unfinished.map((notice) => notice.to))) {
        const line = idOf(studioId, to);
        if (lines.has(line) || stopping.signal.aborted) continue;
        lines.set(line, runLine(studioId, to, line));
      }
    }
  };

  const kick = () => {
    changes += 1;
    if (isKicked) return;
    isKicked = true;
    kicked = kicked
      .then(() => {
        isKicked = false;
        return startLines();
      })
      .catch((error: unknown) => log.error('outbox not reached', errorFacts(error)));
  };

  const hasUnfinished = async (): Promise<boolean> => {
    for (const { id } of await storage.studios.list())
      if ((await storage.notices.listUnfinished(id, 1)).length > 0) return true;
    return false;
  };

  return {
    kick,
    whenSent: async (studioId, key, mostMs) => {
      const id = idOf(studioId, key);
      const enough = new AbortController();
      const watched = new Promise<SentTo | undefined>((resolve) => {
        const those = watchers.get(id) ?? new Set();
        watchers.set(id, those.add(resolve));
        void realTime.wait(mostMs, enough.signal).then(() => {
          those.delete(resolve);
          resolve(undefined);
        });
      });
      const stored = await storage.notices.find(studioId, key);
      const isOver = stored === undefined || stored.state === 'sent' || stored.state === 'dead';
      const sentTo = isOver ? stored?.sentTo : await watched;
      enough.abort();
      return sentTo;
    },
    idle: async () => {
      while (!stopping.signal.aborted) {
        await kicked;
        if (lines.size > 0) await Promise.all(lines.values());
        else if (await hasUnfinished()) kick();
        else return;
      }
    },
    stop: async () => {
      stopping.abort();
      await kicked;
      await Promise.all(lines.values());
      for (const those of watchers.values()) for (const tell of those) tell(undefined);
    },
  };
}

/** A mention that notifies nobody new: the coach sees the name of the place or person. */
