import type { Catalogue } from '../domain/catalogue/catalogue.ts';
import { extendCatalogue } from '../domain/catalogue/extend-catalogue.ts';
import type { Stores, StudioId } from '../domain/ports.ts';
import { defaultSettings, type Settings } from '../domain/settings.ts';
import { groupsWithRole, withRoleGroups } from '../domain/with-role-groups.ts';
import type { Desk } from './handling.ts';
import type { Words } from './words/words.ts';

export type Clock = {
  /** The domain's now, an ISO 8601 instant in UTC. */
  readonly now: () => string;
};

/** Opens a desk on one transaction's stores; a studio met for the first time is noted. */
export type MakeDesk = (studioId: StudioId, stores: Stores) => Promise<Desk>;

/** Groups are asked for only where one gives a role. */
async function withMembers(studioId: StudioId, stores: Stores, settings: Settings): Promise<Settings> {
  if (groupsWithRole(settings).length === 0) return settings;
  return withRoleGroups(settings, await stores.userGroups.listMembers(studioId));
}

export function createMakeDesk(parts: {
  readonly clock: Clock;
  readonly newId: () => string;
  readonly words: Words;
  readonly catalogue: Catalogue;
  /** Known once the workspace has answered. */
  readonly workspaceUrl?: () => string | undefined;
}): MakeDesk {
  const { clock, newId, words } = parts;
  const extended = new Map<StudioId, { readonly own: string; readonly catalogue: Catalogue }>();

  const catalogueFor = (studioId: StudioId, settings: Settings): Catalogue => {
    const own = JSON.stringify([settings.ownMoves, settings.ownNames]);
    const kept = extended.get(studioId);
    if (kept?.own === own) return kept.catalogue;
    const ownNames = new Map(Object.entries(settings.ownNames));
    const made = extendCatalogue(parts.catalogue, settings.ownMoves, ownNames);
    extended.set(studioId, { own, catalogue: made });
    return made;
  };

  /** Studios are never taken away, so one that was found is not looked up again. */
  const found = new Set<StudioId>();

  const noteStudio = async (studioId: StudioId, stores: Stores, now: string): Promise<void> => {
    if (found.has(studioId)) return;
    if ((await stores.studios.find(studioId)) === undefined)
      await stores.studios.save({ id: studioId, name: studioId, createdAt: now });
    else found.add(studioId);
  };

  return async (studioId, stores) => {
    const now = clock.now();
    await noteStudio(studioId, stores, now);
    const stored = await stores.settings.find(studioId);
    const settings = await withMembers(studioId, stores, stored?.settings ?? defaultSettings);
    const catalogue = stored === undefined ? parts.catalogue : catalogueFor(studioId, settings);
    const workspaceUrl = parts.workspaceUrl?.();
    return {
      studioId,
      stores,
      settings,
      catalogue,
      words,
      now,
      newId,
      ...(workspaceUrl === undefined ? {} : { workspaceUrl }),
    };
  };
}
