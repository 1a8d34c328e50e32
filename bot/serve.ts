import type { Storage, StudioId } from '../domain/ports.ts';
import type { CarryOut } from './answers.ts';
import type { Decided, Deliveries } from './deliveries.ts';
import type { Desk, Reaction, ViewAck } from './handling.ts';
import { errorFacts, type Log } from './log.ts';
import type { OnError } from './on-error.ts';
import type { RealTime } from './real-time.ts';
import type { Asker, Incoming } from './requests/incoming.ts';
import type { IncomingEvent } from './requests/read-event.ts';

type Work = (desk: Desk) => Promise<Reaction>;

/** An open answer to a gesture: a form's may carry more than *received*. */
export type Ack = (viewAck?: ViewAck) => Promise<void>;

const eventRetryMs = [100, 400] as const;

/**
 * What follows an ack costs more time than the ack itself, and a small machine gives the core to whoever has
 * it: it is let go for a moment, in which the ack leaves.
 */
const ackLeavesMs = 1;

/** The way of one request: decide and save, ack, answer; a failure at any step is told to the person. */
export function createServe(parts: {
  readonly storage: Pick<Storage, 'isFault'>;
  readonly deliveries: Deliveries;
  readonly carryOut: CarryOut;
  readonly onError: OnError;
  readonly log: Log;
  readonly realTime: RealTime;
  /** After each commit: there may be something to send. */
  readonly afterChange: () => void;
}) {
  const { storage, deliveries, carryOut, onError, log, realTime, afterChange } = parts;
  const toldOnce = new Set<string>();

  const answer = async (decided: Decided, incoming: Incoming<unknown>): Promise<void> => {
    if (decided.kind === 'repeated') return;
    afterChange();
    await carryOut(incoming.studioId, incoming.asker, decided.reaction.answers);
  };

  const ackOrLog = async (ack: Ack, viewAck?: ViewAck): Promise<void> => {
    try {
      await ack(viewAck);
    } catch (error) {
      log.warn('ack failed', errorFacts(error));
    }
  };

  const gesture = async (what: string, incoming: Incoming<unknown>, work: Work, ack: Ack): Promise<void> => {
    const { asker, key } = incoming;
    let decided: Decided;
    try {
      decided = await deliveries.decide(incoming, work);
    } catch (error) {
      const trouble = { error, what, asker, event: 'none' } as const;
      if (asker.formBlock !== undefined)
        return onError({ ...trouble, ackErrors: (byBlock) => ack({ kind: 'errors', byBlock }) });
      await ackOrLog(ack);
      return onError(trouble);
    }
    await ackOrLog(ack, decided.kind === 'decided' ? decided.reaction.ack : undefined);
    await realTime.wait(ackLeavesMs);
    log.info('served', { what, deliveryKey: key, outcome: decided.kind });
    await answer(decided, incoming);
  };

  const decideEvent = async (incoming: IncomingEvent, work: Work): Promise<Decided> => {
    for (const ms of eventRetryMs) {
      try {
        return await deliveries.decideEvent(incoming, work);
      } catch (error) {
        if (!storage.isFault(error)) throw error;
        await realTime.wait(ms);
      }
    }
    return deliveries.decideEvent(incoming, work);
  };

  const giveUp = (studioId: StudioId, key: string) =>
    deliveries.giveUp(studioId, key).catch((error) => log.error('event stays unfinished', errorFacts(error)));

  /** An acked event. False where it is to be run again: it is kept, and was told once. */
  const event = async (incoming: IncomingEvent, work: Work): Promise<boolean> => {
    const { key, asker, studioId } = incoming;
    const what = incoming.request.kind;
    await realTime.wait(ackLeavesMs);
    let decided: Decided;
    try {
      decided = await decideEvent(incoming, work);
    } catch (error) {
      const isKept = storage.isFault(error);
      if (!isKept) await giveUp(studioId, key);
      if (!isKept || !toldOnce.has(key))
        await onError({ error, what, asker, event: isKept ? 'kept' : 'none' });
      if (isKept) toldOnce.add(key);
      return !isKept;
    }
    toldOnce.delete(key);
    log.info('served', { what, deliveryKey: key, outcome: decided.kind });
    await answer(decided, incoming);
    return true;
  };

  /** An event that could not even be written; the workspace delivers it again, so it is told once. */
  const notKept = async (incoming: IncomingEvent, error: unknown): Promise<void> => {
    const { key, asker } = incoming;
    if (toldOnce.has(key)) return;
    toldOnce.add(key);
    await onError({ error, what: incoming.request.kind, asker, event: 'not kept' });
  };

  /** A payload nothing could be read from. */
  const unreadable = async (what: string, error: unknown, asker: Asker | undefined): Promise<void> => {
    if (asker !== undefined) await onError({ error, what, asker, event: 'none' });
    else log.error('payload not read', { what, ...errorFacts(error) });
  };

  return { gesture, event, notKept, unreadable };
}
