import { z } from 'zod';
import type { SettingsStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { jsonOf } from './rows.ts';
import { settingsSchema } from './settings-schema.ts';

const settingsRow = z.strictObject({ settings: jsonOf(settingsSchema), fingerprint: z.string() });

export function createSettingsStore(access: Access): SettingsStore {
  return {
    async save(studioId, settings, fingerprint, at) {
      const row = { settings: JSON.stringify(settings), fingerprint, saved_at: at };
      await access
        .tables()
        .insertInto('settings')
        .values({ studio_id: studioId, ...row })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet(row))
        .execute();
    },

    async find(studioId) {
      const row = await access
        .tables()
        .selectFrom('settings')
        .select(['settings', 'fingerprint'])
        .where('studio_id', '=', studioId)
        .executeTakeFirst();
      return row && settingsRow.parse(row);
    },
  };
}
