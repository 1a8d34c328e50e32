import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import { type CareStore, forgottenPerson, noticeKinds } from '../domain/ports.ts';
import type { RetentionSettings } from '../domain/settings.ts';
import type { Access } from './access.ts';
import { deletePlans, forgetPerson, withoutTrigger } from './forget-person.ts';
import { type Forgotten, personMark } from './forgotten.ts';
import { present } from './rows.ts';
import type { Tables } from './tables.ts';

type Db = Kysely<Tables>;

/** What the storage does once a transaction that deleted something has ended. */
export type Traces = { left: boolean };

const choiceRow = z.strictObject({ kind: z.enum(noticeKinds) });
const careRow = z
  .strictObject({ cared_at: z.string().exactOptional(), left_at: z.string().exactOptional() })
  .transform(({ cared_at, left_at }) => ({
    ...(cared_at === undefined ? {} : { caredAt: cared_at }),
    ...(left_at === undefined ? {} : { leftAt: left_at }),
  }));
const planRow = z
  .strictObject({ state: z.enum(['draft', 'in review', 'approved']), title: z.string().exactOptional() })
  .transform(({ state, title }) => ({ state, ...(title === undefined ? {} : { title }) }));
const countRow = z.strictObject({ count: z.number() });
const idRow = z.strictObject({ plan_id: z.string() });
const nameRow = z.strictObject({ name: z.string() });

export function createCareStore(access: Access, forgotten: Forgotten, traces: Traces): CareStore {
  const count = async (query: ReturnType<typeof sql>): Promise<number> => {
    const { rows } = await query.execute(access.tables());
    return countRow.parse(rows[0]).count;
  };

  return {
    async listSwitchedOff(studioId, personId) {
      const rows = await access
        .tables()
        .selectFrom('notice_choices')
        .select('kind')
        .where('studio_id', '=', studioId)
        .where('person_id', '=', personId)
        .execute();
      return new Set(rows.map((row) => choiceRow.parse(row).kind));
    },

    switchOff: (studioId, personId, kinds) =>
      access.together(async (db) => {
        await db
          .deleteFrom('notice_choices')
          .where('studio_id', '=', studioId)
          .where('person_id', '=', personId)
          .execute();
        for (const kind of new Set(kinds))
          await db
            .insertInto('notice_choices')
            .values({ studio_id: studioId, person_id: personId, kind })
            .execute();
      }),

    async collectPerson(studioId, personId) {
      const { rows } = await sql`
        SELECT plans.state, json_extract(plan_versions.plan, '$.facts.title') AS title
        FROM plans LEFT JOIN plan_versions ON plan_versions.studio_id = plans.studio_id
          AND plan_versions.plan_id = plans.plan_id AND plan_versions.version = plans.current_version
        WHERE plans.studio_id = ${studioId} AND plans.author_id = ${personId}
        ORDER BY plans.created_ms DESC`.execute(access.tables());
      const at = sql`studio_id = ${studioId}`;
      return {
        plans: rows.map((row) => planRow.parse(present(z.record(z.string(), z.unknown()).parse(row)))),
        versions: await count(
          sql`SELECT count(*) AS count FROM plan_versions WHERE ${at} AND made_by = ${personId}`,
        ),
        steps: await count(sql`SELECT count(*) AS count FROM reviews WHERE ${at} AND done_by = ${personId}`),
        comments:
          await count(sql`SELECT (SELECT count(*) FROM reviews WHERE ${at} AND done_by = ${personId} AND reason IS NOT NULL)
          + (SELECT count(*) FROM dismissed_findings WHERE ${at} AND dismissed_by = ${personId} AND reason <> '')
          + (SELECT count(*) FROM plan_comments WHERE ${at} AND said_by = ${personId})
          + (SELECT count(*) FROM classes WHERE ${at} AND json_extract(outcome, '$.changes') IS NOT NULL
              AND json_extract(outcome, '$.saidBy') = ${personId}) AS count`),
        classes: await count(
          sql`SELECT count(*) AS count FROM classes WHERE ${at} AND instructor_id = ${personId}`,
        ),
        notices: await count(
          sql`SELECT count(*) AS count FROM notices WHERE ${at} AND goes_to = ${personId}`,
        ),
      };
    },

    forgetPerson: (studioId, personId, places, at) =>
      access.together(async (db) => {
        const mark = personMark(studioId, personId);
        forgotten.note({ mark, at });
        await forgetPerson(db, studioId, personId, places, at);
        await db
          .insertInto('forgotten_marks')
          .values({ studio_id: studioId, mark, forgotten_at: at })
          .onConflict((conflict) => conflict.doNothing())
          .execute();
        traces.left = true;
      }),

    retain: (studioId, limits, now) =>
      access.together(async (db) => {
        await retain(db, studioId, limits, now);
        traces.left = true;
      }),

    async findCare(studioId) {
      const row = await access
        .tables()
        .selectFrom('studio_care')
        .select(['cared_at', 'left_at'])
        .where('studio_id', '=', studioId)
        .executeTakeFirst();
      return row === undefined ? {} : careRow.parse(present(row));
    },

    async markCared(studioId, at) {
      await access
        .tables()
        .insertInto('studio_care')
        .values({ studio_id: studioId, cared_at: at })
        .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ cared_at: at }))
        .execute();
    },

    markLeft: (studioId, at) =>
      access.together(async (db) => {
        const leftAt = at ?? null;
        await db
          .insertInto('studio_care')
          .values({ studio_id: studioId, left_at: leftAt })
          .onConflict((conflict) => conflict.column('studio_id').doUpdateSet({ left_at: leftAt }))
          .execute();
        if (at === undefined) return;
        await db
          .updateTable('notices')
          .set({ state: 'dead', retry_at: null, finished_at: at, last_error: 'the studio has left' })
          .where('studio_id', '=', studioId)
          .where('finished_at', 'is', null)
          .execute();
      }),

    deleteStudio: (studioId) =>
      access.together(async (db) => {
        await deleteStudio(db, studioId);
        traces.left = true;
      }),

    async exportStudio(studioId) {
      const db = access.tables();
      const exported: Record<string, readonly unknown[]> = {};
      for (const table of await tablesOfStudios(db)) {
        const { rows } = await sql`SELECT * FROM ${sql.table(table)} WHERE studio_id = ${studioId}`.execute(
          db,
        );
        exported[table] = rows.map(withDataForJson);
      }
      return exported;
    },
  };
}

async function tablesOfStudios(db: Db): Promise<readonly string[]> {
  const { rows } = await sql`SELECT name FROM pragma_table_list AS list
    WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%'
      AND EXISTS (SELECT 1 FROM pragma_table_info(list.name) AS info WHERE info.name = 'studio_id')
    ORDER BY name`.execute(db);
  return rows.map((row) => nameRow.parse(row).name);
}

function withDataForJson(row: unknown): unknown {
  return Object.fromEntries(
    Object.entries(z.record(z.string(), z.unknown()).parse(row)).map(([name, value]) => [
      name,
      typeof value === 'string' && /^[[{]/.test(value) ? dataOrText(value) : value,
    ]),
  );
}

/** What begins like JSON and is none was typed by a person. */
function dataOrText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

const secondsOfDay = 86_400;

/** A look back goes over fourteen days. */
const missedToldDays = 30;

async function retain(db: Db, studioId: string, limits: RetentionSettings, now: string): Promise<void> {
  const before = (days: number) => sql`unixepoch(${now}) - ${Math.round(days * secondsOfDay)}`;
  const at = sql`studio_id = ${studioId}`;
  await sql`DELETE FROM deliveries WHERE ${at} AND unixepoch(done_at) < ${before(limits.deliveryKeyDays)}`.execute(
    db,
  );
  await sql`UPDATE notices SET payload = '{"text":""}', last_error = NULL
    WHERE ${at} AND unixepoch(finished_at) < ${before(limits.sentPayloadDays)} AND payload <> '{"text":""}'`.execute(
    db,
  );
  await sql`DELETE FROM missed_told WHERE ${at} AND unixepoch(told_at) < ${before(missedToldDays)}`.execute(
    db,
  );
  const unsent = await sql`SELECT plan_id FROM plans WHERE ${at} AND state = 'draft'
    AND approved_version IS NULL
    AND NOT EXISTS (SELECT 1 FROM reviews WHERE reviews.studio_id = plans.studio_id AND reviews.plan_id = plans.plan_id)
    AND (SELECT max(unixepoch(made_at)) FROM plan_versions WHERE plan_versions.studio_id = plans.studio_id
      AND plan_versions.plan_id = plans.plan_id) < ${before(limits.unsentDraftDays)}`.execute(db);
  await deletePlans(
    db,
    studioId,
    unsent.rows.map((row) => idRow.parse(row).plan_id),
  );
  const comments = before(limits.commentDays);
  await sql`UPDATE reviews SET reason = NULL WHERE ${at} AND reason IS NOT NULL AND unixepoch(done_at) < ${comments}`.execute(
    db,
  );
  await sql`DELETE FROM plan_comments WHERE ${at} AND unixepoch(said_at) < ${comments}`.execute(db);
  await sql`UPDATE dismissed_findings SET reason = '' WHERE ${at} AND unixepoch(dismissed_at) < ${comments}`.execute(
    db,
  );
  await sql`UPDATE classes SET outcome = json_remove(outcome, '$.changes') WHERE ${at}
    AND json_extract(outcome, '$.changes') IS NOT NULL AND starts_ms / 1000 < ${comments}`.execute(db);
  await letGoOfPeople(db, studioId, before(limits.planDays));
}

/** Old plans stay without the people who wrote, sent and approved them. */
async function letGoOfPeople(db: Db, studioId: string, before: ReturnType<typeof sql>): Promise<void> {
  const { rows } = await sql`SELECT plan_id FROM plans WHERE studio_id = ${studioId}
    AND author_id <> ${forgottenPerson}
    AND (SELECT max(unixepoch(made_at)) FROM plan_versions WHERE plan_versions.studio_id = plans.studio_id
      AND plan_versions.plan_id = plans.plan_id) < ${before}`.execute(db);
  const old = rows.map((row) => idRow.parse(row).plan_id);
  if (old.length === 0) return;
  await withoutTrigger(db, async () => {
    for (const planId of old) {
      const at = sql`studio_id = ${studioId} AND plan_id = ${planId}`;
      await sql`UPDATE plans SET author_id = ${forgottenPerson}, home_place = NULL, home_thread = NULL WHERE ${at}`.execute(
        db,
      );
      await sql`UPDATE plan_versions SET made_by = ${forgottenPerson} WHERE ${at}`.execute(db);
      await sql`UPDATE OR REPLACE reviews SET done_by = ${forgottenPerson} WHERE ${at}`.execute(db);
      await sql`DELETE FROM plan_comments WHERE ${at}`.execute(db);
      await sql`UPDATE dismissed_findings SET dismissed_by = ${forgottenPerson} WHERE ${at}`.execute(db);
    }
  });
}

/** Child tables go with their parents; the id and the mark of leaving stay. */
async function deleteStudio(db: Db, studioId: string): Promise<void> {
  const first = ['plan_comments', 'classes', 'plans'];
  const tables = await tablesOfStudios(db);
  const later = tables.filter(
    (name) => !first.includes(name) && name !== 'studios' && name !== 'studio_care',
  );
  const own = later.filter((name) => name !== 'plan_versions');
  for (const table of [...first, ...own])
    await sql`DELETE FROM ${sql.table(table)} WHERE studio_id = ${studioId}`.execute(db);
  await sql`UPDATE studios SET name = studio_id WHERE studio_id = ${studioId}`.execute(db);
}
