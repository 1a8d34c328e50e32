import { z } from 'zod';
import type { PeopleStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { jsonOf } from './rows.ts';

const personRow = z
  .strictObject({
    person_id: z.string(),
    roles: jsonOf(z.array(z.enum(['head coach', 'instructor', 'admin']))),
  })
  .transform(({ person_id, roles }) => ({ id: person_id, roles }));

export function createPeopleStore(access: Access): PeopleStore {
  const people = (studioId: string) =>
    access.tables().selectFrom('people').select(['person_id', 'roles']).where('studio_id', '=', studioId);

  return {
    async save(studioId, person) {
      const roles = JSON.stringify(person.roles);
      await access
        .tables()
        .insertInto('people')
        .values({ studio_id: studioId, person_id: person.id, roles })
        .onConflict((conflict) => conflict.columns(['studio_id', 'person_id']).doUpdateSet({ roles }))
        .execute();
    },

    async find(studioId, personId) {
      const row = await people(studioId).where('person_id', '=', personId).executeTakeFirst();
      return row && personRow.parse(row);
    },

    async list(studioId) {
      const rows = await people(studioId).orderBy('person_id').execute();
      return rows.map((row) => personRow.parse(row));
    },
  };
}
