import type { SettingsStore, StudioId } from '../domain/ports.ts';
import type { Settings } from '../domain/settings.ts';
import type { Access } from './access.ts';
import { jsonOf } from './rows.ts';
import { settingsSchema } from './settings-schema.ts';

const settingsText = jsonOf(settingsSchema);

export type ReadSettings = (studioId: StudioId, text: string) => Settings;

/** Every request reads the settings and few change them, so a text is parsed once. */
export function createReadSettings(): ReadSettings {
  const kept = new Map<StudioId, { readonly text: string; readonly settings: Settings }>();
  return (studioId, text) => {
    const known = kept.get(studioId);
    if (known?.text === text) return known.settings;
    const settings = settingsText.parse(text);
    kept.set(studioId, { text, settings });
    return settings;
  };
}

export function createSettingsStore(access: Access, readSettings: ReadSettings): SettingsStore {
  return {
    async save(studioId, settings, fingerprint, at) {
      const text = JSON.stringify(settings);
      // What could not be read back would shut the studio out.
      settingsText.parse(text);
      const row = { settings: text, fingerprint, saved_at: at };
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
      if (row === undefined) return undefined;
      return { settings: readSettings(studioId, row.settings), fingerprint: row.fingerprint };
    },
  };
}
