import { z } from 'zod';
import type { StudioStore } from '../domain/ports.ts';
import type { Access } from './access.ts';

const studioRow = z
  .strictObject({ studio_id: z.string(), name: z.string(), created_at: z.string() })
  .transform((row) => ({ id: row.studio_id, name: row.name, createdAt: row.created_at }));

export function createStudioStore(access: Access): StudioStore {
  return {
    async save({ id, name, createdAt }) {
      await access
        .tables()
        .insertInto('studios')
        .values({ studio_id: id, name, created_at: createdAt })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ name, created_at: createdAt }))
        .execute();
    },

    async find(studioId) {
      const row = await access
        .tables()
        .selectFrom('studios')
        .selectAll()
        .where('studio_id', '=', studioId)
        .executeTakeFirst();
      return row && studioRow.parse(row);
    },

    async list() {
      const rows = await access.tables().selectFrom('studios').selectAll().orderBy('studio_id').execute();
      return rows.map((row) => studioRow.parse(row));
    },
  };
}
