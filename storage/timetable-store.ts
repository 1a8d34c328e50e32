import type { TimetableStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { millisecondsOf } from './rows.ts';

export function createTimetableStore(access: Access): TimetableStore {
  async function findLookedAt(studioId: string): Promise<string | undefined> {
    const row = await access
      .tables()
      .selectFrom('due_marks')
      .select('looked_at')
      .where('studio_id', '=', studioId)
      .executeTakeFirst();
    return row?.looked_at;
  }

  return {
    findLookedAt,

    async keepLookedAt(studioId, at) {
      const standing = await findLookedAt(studioId);
      if (standing !== undefined && millisecondsOf(standing) >= millisecondsOf(at)) return;
      await access
        .tables()
        .insertInto('due_marks')
        .values({ studio_id: studioId, looked_at: at })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ looked_at: at }))
        .execute();
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
