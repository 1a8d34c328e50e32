import { z } from 'zod';
import { forgottenPerson, type NoticeState, type NoticeStore, type StoredNotice } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { jsonOf, present } from './rows.ts';

const threadSchema = z.union([
  z.strictObject({ stamp: z.string() }),
  z.strictObject({ noticeKey: z.string() }),
]);

const actionSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('post'), thread: threadSchema.exactOptional() }),
  z.strictObject({ kind: z.literal('update'), of: z.string() }),
]);

const payloadSchema = z.strictObject({
  text: z.string(),
  blocks: z.array(z.unknown()).exactOptional(),
  fallbackBlocks: z.array(z.unknown()).exactOptional(),
  picture: z.strictObject({ name: z.string(), svg: z.string(), altText: z.string() }).exactOptional(),
  file: z.strictObject({ name: z.string(), title: z.string(), content: z.string() }).exactOptional(),
});

const noticeRow = z
  .strictObject({
    studio_id: z.string(),
    notice_key: z.string(),
    sequence: z.number(),
    goes_to: z.string(),
    action: jsonOf(actionSchema),
    payload: jsonOf(payloadSchema),
    caused_at: z.string(),
    state: z.enum(['pending', 'sending', 'sent', 'dead']),
    attempts: z.number(),
    retry_at: z.string().exactOptional(),
    sending_at: z.string().exactOptional(),
    finished_at: z.string().exactOptional(),
    sent_place: z.string().exactOptional(),
    sent_stamp: z.string().exactOptional(),
    last_error: z.string().exactOptional(),
  })
  .transform(
    ({ retry_at, sent_place, sent_stamp, last_error, ...row }): StoredNotice => ({
      key: row.notice_key,
      to: row.goes_to,
      action: row.action,
      payload: row.payload,
      causedAt: row.caused_at,
      sequence: row.sequence,
      state: row.state,
      attempts: row.attempts,
      ...(retry_at === undefined ? {} : { retryAt: retry_at }),
      ...(sent_place === undefined || sent_stamp === undefined
        ? {}
        : { sentTo: { place: sent_place, stamp: sent_stamp } }),
      ...(last_error === undefined ? {} : { lastError: last_error }),
    }),
  );

const measuredRow = z
  .strictObject({ count: z.int().min(1), oldest: z.string() })
  .transform(({ count, oldest }) => ({ count, oldestCausedAt: oldest }));

export function createNoticeStore(access: Access): NoticeStore {
  const notices = (studioId: string) =>
    access.tables().selectFrom('notices').selectAll().where('studio_id', '=', studioId);

  const unfinished = (studioId: string, key: string) =>
    access
      .tables()
      .updateTable('notices')
      .where('studio_id', '=', studioId)
      .where('notice_key', '=', key)
      .where('finished_at', 'is', null);

  /** A mark on a finished notice is a repetition where it would end in the same state; else it is a bug. */
  async function assertMarked(
    studioId: string,
    key: string,
    state: NoticeState,
    { numUpdatedRows }: { readonly numUpdatedRows: bigint },
  ): Promise<void> {
    if (numUpdatedRows > 0n) return;
    const row = await notices(studioId).where('notice_key', '=', key).executeTakeFirst();
    if (row?.state !== state) throw new Error(`No unfinished notice of this key to mark ${state}: ${key}`);
  }

  return {
    async enqueue(studioId, { key, to, action, payload, causedAt }) {
      if (to === forgottenPerson) return false;
      const result = await access
        .tables()
        .insertInto('notices')
        .values({
          studio_id: studioId,
          notice_key: key,
          goes_to: to,
          action: JSON.stringify(action),
          payload: JSON.stringify(payload),
          caused_at: causedAt,
          state: 'pending',
          attempts: 0,
        })
        .onConflict((conflict) => conflict.columns(['studio_id', 'notice_key']).doNothing())
        .executeTakeFirst();
      return result.numInsertedOrUpdatedRows === 1n;
    },

    async find(studioId, key) {
      const row = await notices(studioId).where('notice_key', '=', key).executeTakeFirst();
      return row && noticeRow.parse(present(row));
    },

    async findBySentTo(studioId, place, stamp) {
      const row = await notices(studioId)
        .where('sent_place', '=', place)
        .where('sent_stamp', '=', stamp)
        .orderBy('sequence')
        .executeTakeFirst();
      return row && noticeRow.parse(present(row));
    },

    async listUnfinished(studioId, limit) {
      const rows = await notices(studioId)
        .where('finished_at', 'is', null)
        .orderBy('sequence')
        .limit(limit)
        .execute();
      return rows.map((row) => noticeRow.parse(present(row)));
    },

    async measureUnfinished(studioId) {
      const row = await access
        .tables()
        .selectFrom('notices')
        .select(({ fn }) => [fn.countAll<number>().as('count'), fn.min('caused_at').as('oldest')])
        .where('studio_id', '=', studioId)
        .where('finished_at', 'is', null)
        .executeTakeFirst();
      return row === undefined || row.count === 0 ? undefined : measuredRow.parse(row);
    },

    async markSending(studioId, key, at) {
      const result = await unfinished(studioId, key)
        .set(({ eb }) => ({
          state: 'sending',
          attempts: eb('attempts', '+', 1),
          retry_at: null,
          sending_at: at,
        }))
        .executeTakeFirst();
      await assertMarked(studioId, key, 'sending', result);
    },

    async markSent(studioId, key, { place, stamp }, at) {
      const result = await unfinished(studioId, key)
        .set({ state: 'sent', retry_at: null, sent_place: place, sent_stamp: stamp, finished_at: at })
        .executeTakeFirst();
      await assertMarked(studioId, key, 'sent', result);
    },

    async markRetry(studioId, key, retryAt, error) {
      const result = await unfinished(studioId, key)
        .set({ state: 'pending', retry_at: retryAt, last_error: error })
        .executeTakeFirst();
      await assertMarked(studioId, key, 'pending', result);
    },

    async markDead(studioId, key, error, at) {
      const result = await unfinished(studioId, key)
        .set({ state: 'dead', retry_at: null, last_error: error, finished_at: at })
        .executeTakeFirst();
      await assertMarked(studioId, key, 'dead', result);
    },
  };
}
