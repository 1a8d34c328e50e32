import type { PersonId } from './calendar/scheduled-class.ts';
import type { Settings } from './settings.ts';

/** Head coaches and admins change settings; until one is named, whoever sets the studio up. */
export function maySet({ headCoaches, admins = [], roleGroups = {} }: Settings, personId: PersonId): boolean {
  const named = [...headCoaches, ...admins];
  const isOpen =
    named.length === 0 && roleGroups.headCoaches === undefined && roleGroups.admins === undefined;
  return isOpen || named.includes(personId);
}
