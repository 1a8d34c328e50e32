import { groupsWithRole } from '../../domain/with-role-groups.ts';
import { type GroupsRequest, type Handler, noReaction } from '../handling.ts';

/** Whoever went out of a group has lost its role with this; who came in has it once the group is read. */
export const onGroups: Handler<GroupsRequest> = async ({ groupId, removed }, desk) => {
  if (!groupsWithRole(desk.settings).includes(groupId)) return noReaction;
  await desk.stores.userGroups.removeMembers(desk.studioId, groupId, removed);
  return { answers: [{ kind: 'read groups', next: () => [] }] };
};
