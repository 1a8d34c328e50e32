import type { PersonId } from './calendar/scheduled-class.ts';
import { type GroupRole, groupRoles, type Settings } from './settings.ts';

/** The settings with the people of their user groups beside those named; a group that is not known has none. */
export function withRoleGroups(
  settings: Settings,
  members: ReadonlyMap<string, readonly PersonId[]>,
): Settings {
  const { roleGroups = {} } = settings;
  const holders = (role: GroupRole): readonly PersonId[] => [
    ...new Set([...(settings[role] ?? []), ...(members.get(roleGroups[role] ?? '') ?? [])]),
  ];
  const byGroup = groupRoles.filter((role) => roleGroups[role] !== undefined);
  return { ...settings, ...Object.fromEntries(byGroup.map((role) => [role, holders(role)])) };
}

/** The groups that give a role, each once. */
export function groupsWithRole({ roleGroups = {} }: Settings): readonly string[] {
  return [...new Set(groupRoles.flatMap((role) => roleGroups[role] ?? []))];
}
