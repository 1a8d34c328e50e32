import { groupRoles } from '../../domain/settings.ts';
import type { Desk, GroupsRead } from '../handling.ts';
import { settingsAsKept } from './settings-as-kept.ts';

/** Tells those named by name, once a day, that a user group gives no role, and what to do. */
export async function tellGroupsAside(desk: Desk, read: GroupsRead): Promise<void> {
  const text = groupsAsideText(desk, read);
  if (text === undefined) return;
  const { headCoaches, admins = [] } = await settingsAsKept(desk);
  for (const person of new Set([...headCoaches, ...admins]))
    await desk.stores.notices.enqueue(desk.studioId, {
      key: `groups:${desk.now.slice(0, 10)}:${person}`,
      to: person,
      action: { kind: 'post' },
      payload: { text },
      causedAt: desk.now,
    });
}

/** Why people of a user group have no role, where that is so; a workspace that is down for a while takes none. */
export function groupsAsideText({ settings, words }: Desk, read: GroupsRead): string | undefined {
  const { roleGroups = {} } = settings;
  if (read.kind === 'not read') return read.stays ? words.settings.groupsNotRead(read.code) : undefined;
  const roles = groupRoles.filter((role) => read.gone.includes(roleGroups[role] ?? ''));
  return roles.length === 0 ? undefined : words.settings.groupsGone(roles);
}
