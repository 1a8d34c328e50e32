import type { Delivery, Storage, StudioId } from '../domain/ports.ts';
import type { Desk, Reaction } from './handling.ts';
import type { MakeDesk } from './make-desk.ts';
import type { Incoming } from './requests/incoming.ts';
import type { IncomingEvent } from './requests/read-event.ts';

export type Decided =
  | { readonly kind: 'decided'; readonly reaction: Reaction }
  /** This gesture has come before and is decided. */
  | { readonly kind: 'repeated' };

type Work = (desk: Desk) => Promise<Reaction>;

export type Deliveries = ReturnType<typeof createDeliveries>;

/** Decides each delivery once: its key and the change it causes are written in one transaction. */
export function createDeliveries(storage: Storage, makeDesk: MakeDesk) {
  return {
    /** A command, click, form or shortcut: nothing of it stays where the work throws. */
    decide: (incoming: Incoming<unknown>, work: Work): Promise<Decided> =>
      storage.inTransaction(async (stores) => {
        const { studioId, key } = incoming;
        const desk = await makeDesk(studioId, stores);
        const delivery = { key, kind: 'interaction', body: '', receivedAt: desk.now } as const;
        const isNew = await stores.deliveries.receive(studioId, { ...delivery, doneAt: desk.now });
        return isNew ? { kind: 'decided', reaction: await work(desk) } : { kind: 'repeated' };
      }),

    /** Writes an event before it is acked; false where it was written before. */
    keepEvent: (incoming: IncomingEvent, body: unknown): Promise<boolean> =>
      storage.inTransaction(async (stores) => {
        const { studioId, key } = incoming;
        const { now } = await makeDesk(studioId, stores);
        const kept = { key, kind: 'event', body: JSON.stringify(body), receivedAt: now } as const;
        return stores.deliveries.receive(studioId, kept);
      }),

    /** A kept event; it stays unfinished where the work throws. */
    decideEvent: (incoming: IncomingEvent, work: Work): Promise<Decided> =>
      storage.inTransaction(async (stores) => {
        const { studioId, key, gesture } = incoming;
        const desk = await makeDesk(studioId, stores);
        const first =
          gesture === key ||
          (await stores.deliveries.receive(studioId, {
            key: gesture,
            kind: 'interaction',
            body: '',
            receivedAt: desk.now,
          }));
        const reaction = first ? await work(desk) : undefined;
        for (const each of new Set([key, gesture]))
          await stores.deliveries.markDone(studioId, each, desk.now);
        return reaction === undefined ? { kind: 'repeated' } : { kind: 'decided', reaction };
      }),

    /** For an event that can't be decided at all: it is not run again. */
    giveUp: (studioId: StudioId, key: string): Promise<void> =>
      storage.inTransaction(async (stores) => {
        const { now } = await makeDesk(studioId, stores);
        await stores.deliveries.markDone(studioId, key, now);
      }),

    listUnfinishedEvents: async (): Promise<readonly Delivery[]> => {
      const studios = await storage.studios.list();
      const unfinished = await Promise.all(studios.map(({ id }) => storage.deliveries.listUnfinished(id)));
      return unfinished.flat().filter(({ kind }) => kind === 'event');
    },
  };
}
