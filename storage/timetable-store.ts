import type { TimetableStore } from '../domain/ports.ts';
import type { Access } from './access.ts';

export function createTimetableStore(access: Access): TimetableStore {
  return {
    async findLookedAt(studioId) {
      const row = await access
        .tables()
        .selectFrom('due_marks')
        .select('looked_at')
        .where('studio_id', '=', studioId)
        .executeTakeFirst();
      return row?.looked_at;
    },

    async keepLookedAt(studioId, at) {
      await access
        .tables()
        .insertInto('due_marks')
        .values({ studio_id: studioId, looked_at: at })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ looked_at: at }))
        .execute();
    },

    async keepMissedTold(studioId, missed, at) {
      if (missed.length === 0) return [];
      const kept = await access
        .tables()
        .insertInto('missed_told')
        .values(missed.map((each) => ({ studio_id: studioId, missed: each, told_at: at })))
        .onConflict((conflict) => conflict.doNothing())
        .returning('missed')
        .execute();
      return kept.map((row) => row.missed);
    },

    async saveFeedToken(studioId, token, at) {
      await access
        .tables()
        .insertInto('calendar_feeds')
        .values({ studio_id: studioId, token, made_at: at })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ token, made_at: at }))
        .execute();
    },

    async findFeedToken(studioId) {
      const row = await access
        .tables()
        .selectFrom('calendar_feeds')
        .select('token')
        .where('studio_id', '=', studioId)
        .executeTakeFirst();
      return row?.token;
    },

    async findStudioOfFeed(token) {
      const row = await access
        .tables()
        .selectFrom('calendar_feeds')
        .select('studio_id')
        .where('token', '=', token)
        .executeTakeFirst();
      return row?.studio_id;
    },
  };
}
