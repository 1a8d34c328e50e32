import { z } from 'zod';
import type { Delivery, DeliveryStore } from '../domain/ports.ts';
import type { Access } from './access.ts';

const deliveryRow = z
  .strictObject({
    delivery_key: z.string(),
    kind: z.enum(['event', 'interaction']),
    body: z.string(),
    received_at: z.string(),
  })
  .transform(
    ({ delivery_key, kind, body, received_at }): Delivery => ({
      key: delivery_key,
      kind,
      body,
      receivedAt: received_at,
    }),
  );

export function createDeliveryStore(access: Access): DeliveryStore {
  return {
    async receive(studioId, { key, kind, body, receivedAt, doneAt }) {
      const done = doneAt === undefined ? { body } : { body: null, done_at: doneAt };
      const result = await access
        .tables()
        .insertInto('deliveries')
        .values({ studio_id: studioId, delivery_key: key, kind, received_at: receivedAt, ...done })
        .onConflict((conflict) => conflict.columns(['studio_id', 'delivery_key']).doNothing())
        .executeTakeFirst();
      return result.numInsertedOrUpdatedRows === 1n;
    },

    async markDone(studioId, key, at) {
      await access
        .tables()
        .updateTable('deliveries')
        .set({ done_at: at, body: null })
        .where('studio_id', '=', studioId)
        .where('delivery_key', '=', key)
        .where('done_at', 'is', null)
        .execute();
    },

    async listUnfinished(studioId) {
      const rows = await access
        .tables()
        .selectFrom('deliveries')
        .select(['delivery_key', 'kind', 'body', 'received_at'])
        .where('studio_id', '=', studioId)
        .where('done_at', 'is', null)
        .orderBy('sequence')
        .execute();
      return rows.map((row) => deliveryRow.parse(row));
    },
  };
}
