import { extendCatalogue } from '../../domain/catalogue/extend-catalogue.ts';
import type { Settings } from '../../domain/settings.ts';
import { withRoleGroups } from '../../domain/with-role-groups.ts';
import type { Desk } from '../handling.ts';
import { settingsAsKept } from './settings-as-kept.ts';

/**
 * Changes the settings as they are kept and returns a desk that knows it. The fingerprint of the settings file
 * stays: the file is applied again only when it changes.
 */
export async function keepSettings(desk: Desk, change: (kept: Settings) => Settings): Promise<Desk> {
  const { stores, studioId } = desk;
  const stored = await stores.settings.find(studioId);
  const next = change(await settingsAsKept(desk));
  await stores.settings.save(studioId, next, stored?.fingerprint ?? '', desk.now);
  const settings = withRoleGroups(next, await stores.userGroups.listMembers(studioId));
  const ownNames = new Map(Object.entries(settings.ownNames));
  return { ...desk, settings, catalogue: extendCatalogue(desk.catalogue, settings.ownMoves, ownNames) };
}
