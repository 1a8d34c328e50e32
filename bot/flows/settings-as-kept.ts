import { defaultSettings, type Settings } from '../../domain/settings.ts';
import type { Desk } from '../handling.ts';

/** The settings as they were set, with the people named alone; the desk's have those of user groups too. */
export async function settingsAsKept({ stores, studioId }: Desk): Promise<Settings> {
  return (await stores.settings.find(studioId))?.settings ?? defaultSettings;
}
