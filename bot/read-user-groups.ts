import type { WebClient } from '@slack/web-api';
import type { Storage, StudioId } from '../domain/ports.ts';
import { groupsWithRole } from '../domain/with-role-groups.ts';
import type { GroupsRead, UserGroup } from './handling.ts';
import { codeOf, errorFacts, type Log } from './log.ts';

/** Asks the workspace for its user groups and keeps who is in those that give a role. */
export type ReadUserGroups = (studioId: StudioId) => Promise<GroupsRead>;

/** Refusals that stay until someone acts: no one can tell who is in the group then, so it gives no role. */
const staying: ReadonlySet<string> = new Set([
  'missing_scope',
  'no_such_subteam',
  'plan_upgrade_required',
  'paid_teams_only',
  'access_denied',
]);

/** One reading at a time a studio: an earlier answer never takes the place of a later one. */
export function createReadUserGroups(parts: {
  readonly client: WebClient;
  readonly storage: Storage;
  readonly log: Log;
}): ReadUserGroups {
  const { client, storage, log } = parts;
  const last = new Map<StudioId, Promise<unknown>>();

  const listGroups = async (): Promise<readonly UserGroup[]> => {
    const { usergroups = [] } = await client.usergroups.list({ include_count: true });
    return usergroups
      .flatMap(({ id, handle, name, user_count: count }) =>
        id === undefined ? [] : [{ id, handle: handle ?? name ?? id, people: Number(count ?? 0) }],
      )
      .toSorted((one, other) => one.handle.localeCompare(other.handle, 'en'));
  };

  const membersOf = async (groupId: string): Promise<readonly string[]> => {
    const { users = [] } = await client.usergroups.users.list({ usergroup: groupId });
    return users;
  };

  const keep = (studioId: StudioId, members: ReadonlyMap<string, readonly string[]>): Promise<void> =>
    storage.inTransaction(async ({ userGroups }) => {
      await userGroups.keepOnly(studioId, [...members.keys()]);
      for (const [groupId, people] of members) await userGroups.saveMembers(studioId, groupId, people);
    });

  const read = async (studioId: StudioId): Promise<GroupsRead> => {
    const stored = await storage.settings.find(studioId);
    const wanted = stored === undefined ? [] : groupsWithRole(stored.settings);
    try {
      const groups = await listGroups();
      // A group that was disabled is not in the list, and gives no role.
      const found = wanted.filter((id) => groups.some((group) => group.id === id));
      const members = new Map<string, readonly string[]>();
      for (const id of found) members.set(id, await membersOf(id));
      await keep(studioId, members);
      return { kind: 'read', groups, gone: wanted.filter((id) => !found.includes(id)) };
    } catch (error) {
      log.warn('user groups not read', errorFacts(error));
      const code = codeOf(error) ?? 'unknown';
      const stays = staying.has(code);
      if (stays) await keep(studioId, new Map());
      return { kind: 'not read', code, stays };
    }
  };

  return (studioId) => {
    const next = (last.get(studioId) ?? Promise.resolve()).then(() => read(studioId));
    last.set(
      studioId,
      next.catch(() => {}),
    );
    return next;
  };
}
