import type { Storage } from '../domain/ports.ts';
import { groupsWithRole } from '../domain/with-role-groups.ts';
import { tellGroupsAside } from './flows/tell-groups-aside.ts';
import type { MakeDesk } from './make-desk.ts';
import type { ReadUserGroups } from './read-user-groups.ts';
import type { RealTime } from './real-time.ts';

const hourMs = 3_600_000;

/**
 * Reads the user groups that give a role at the first call and once an hour from then on, whatever event may
 * have been missed; whoever is named by name is told where they can't be read. Call it as often as you like.
 */
export function createKeepUserGroups(parts: {
  readonly storage: Storage;
  readonly makeDesk: MakeDesk;
  readonly realTime: RealTime;
  readonly readUserGroups: ReadUserGroups;
}): () => Promise<void> {
  const { storage, makeDesk, realTime, readUserGroups } = parts;
  let readAtMs = Number.NEGATIVE_INFINITY;

  const keepOf = async (studioId: string): Promise<void> => {
    const stored = await storage.settings.find(studioId);
    if (stored === undefined || groupsWithRole(stored.settings).length === 0) return;
    const read = await readUserGroups(studioId);
    await storage.inTransaction(async (stores) => tellGroupsAside(await makeDesk(studioId, stores), read));
  };

  return async () => {
    if (realTime.nowMs() - readAtMs < hourMs) return;
    readAtMs = realTime.nowMs();
    for (const { id } of await storage.studios.list()) await keepOf(id);
  };
}
