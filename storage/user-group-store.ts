import { z } from 'zod';
import type { UserGroupStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { personMark } from './forgotten.ts';

const memberRow = z.strictObject({ group_id: z.string(), person_id: z.string() });
const markRow = z.strictObject({ mark: z.string() });

export function createUserGroupStore(access: Access): UserGroupStore {
  return {
    saveMembers: (studioId, groupId, members) =>
      access.together(async (db) => {
        const marks = await db
          .selectFrom('forgotten_marks')
          .select('mark')
          .where('studio_id', '=', studioId)
          .execute();
        const forgotten = new Set(marks.map((row) => markRow.parse(row).mark));
        await db
          .deleteFrom('user_group_members')
          .where('studio_id', '=', studioId)
          .where('group_id', '=', groupId)
          .execute();
        for (const personId of new Set(members))
          if (!forgotten.has(personMark(studioId, personId)))
            await db
              .insertInto('user_group_members')
              .values({ studio_id: studioId, group_id: groupId, person_id: personId })
              .execute();
      }),

    async removeMembers(studioId, groupId, members) {
      if (members.length === 0) return;
      await access
        .tables()
        .deleteFrom('user_group_members')
        .where('studio_id', '=', studioId)
        .where('group_id', '=', groupId)
        .where('person_id', 'in', members)
        .execute();
    },

    async listMembers(studioId) {
      const rows = await access
        .tables()
        .selectFrom('user_group_members')
        .select(['group_id', 'person_id'])
        .where('studio_id', '=', studioId)
        .orderBy('group_id')
        .orderBy('person_id')
        .execute();
      const byGroup = new Map<string, readonly string[]>();
      for (const { group_id, person_id } of rows.map((row) => memberRow.parse(row)))
        byGroup.set(group_id, [...(byGroup.get(group_id) ?? []), person_id]);
      return byGroup;
    },

    async keepOnly(studioId, groupIds) {
      const others = access.tables().deleteFrom('user_group_members').where('studio_id', '=', studioId);
      await (groupIds.length === 0 ? others : others.where('group_id', 'not in', groupIds)).execute();
    },
  };
}
