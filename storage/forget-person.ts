import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import { forgottenMention, forgottenPerson } from '../domain/ports.ts';
import type { Tables } from './tables.ts';

type Db = Kysely<Tables>;

const triggerName = 'plan_versions_stay';

/**
 * Deletes a person within one transaction: drafts, comments and messages go, `forgottenPerson` stands in their
 * place elsewhere, numbers stay. Versions of plans are let through for this alone.
 */
export async function forgetPerson(
  db: Db,
  studioId: string,
  personId: string,
  places: readonly string[],
  at: string,
): Promise<void> {
  await withoutTrigger(db, async () => {
    const own = [personId, ...places, ...(await placesOf(db, studioId, personId))];
    await deleteMessages(db, studioId, personId, own);
    await deleteDrafts(db, studioId, personId);
    await deleteComments(db, studioId, personId);
    await db
      .deleteFrom('people')
      .where('studio_id', '=', studioId)
      .where('person_id', '=', personId)
      .execute();
    await db
      .deleteFrom('notice_choices')
      .where('studio_id', '=', studioId)
      .where('person_id', '=', personId)
      .execute();
    await db
      .deleteFrom('user_group_members')
      .where('studio_id', '=', studioId)
      .where('person_id', '=', personId)
      .execute();
    await leaveSettings(db, studioId, personId);
    await openCover(db, studioId, personId, at);
    for (const word of new Set(own)) await replaceEverywhere(db, studioId, word);
  });
}

/** The person's direct messages with the app. */
async function placesOf(db: Db, studioId: string, personId: string): Promise<readonly string[]> {
  const homes = await db
    .selectFrom('plans')
    .select('home_place as place')
    .where('studio_id', '=', studioId)
    .where('author_id', '=', personId)
    .where('home_place', 'like', 'D%')
    .execute();
  const sent = await db
    .selectFrom('notices')
    .select('sent_place as place')
    .where('studio_id', '=', studioId)
    .where('goes_to', '=', personId)
    .where('sent_place', 'is not', null)
    .execute();
  return [...new Set([...homes, ...sent].flatMap(({ place }) => place ?? []))];
}

async function deleteMessages(
  db: Db,
  studioId: string,
  personId: string,
  places: readonly string[],
): Promise<void> {
  await db
    .deleteFrom('notices')
    .where('studio_id', '=', studioId)
    .where(({ eb, or }) =>
      or([
        eb('goes_to', 'in', places),
        eb('sent_place', 'in', places),
        eb('notice_key', 'like', `%${personId}%`),
      ]),
    )
    .execute();
  await db
    .deleteFrom('deliveries')
    .where('studio_id', '=', studioId)
    .where(sql<boolean>`instr(coalesce(body, ''), ${personId}) > 0`)
    .execute();
}

/** Plans of theirs that were never approved; a class then stands without a plan. */
async function deleteDrafts(db: Db, studioId: string, personId: string): Promise<void> {
  const drafts = await db
    .selectFrom('plans')
    .select('plan_id')
    .where('studio_id', '=', studioId)
    .where('author_id', '=', personId)
    .where('approved_version', 'is', null)
    .execute();
  await deletePlans(
    db,
    studioId,
    drafts.map(({ plan_id }) => plan_id),
  );
}

/** Their versions, steps and dismissals go with them; classes let go of them first. */
export async function deletePlans(db: Db, studioId: string, planIds: readonly string[]): Promise<void> {
  for (const planId of planIds) {
    await db
      .updateTable('classes')
      .set({ plan_id: null })
      .where('studio_id', '=', studioId)
      .where('plan_id', '=', planId)
      .execute();
    await db
      .deleteFrom('notices')
      .where('studio_id', '=', studioId)
      .where('notice_key', 'like', `%:${planId}%`)
      .execute();
    for (const table of ['plan_comments', 'plans'] as const)
      await db.deleteFrom(table).where('studio_id', '=', studioId).where('plan_id', '=', planId).execute();
  }
}

async function deleteComments(db: Db, studioId: string, personId: string): Promise<void> {
  await db
    .deleteFrom('plan_comments')
    .where('studio_id', '=', studioId)
    .where('said_by', '=', personId)
    .execute();
  await db
    .updateTable('reviews')
    .set({ reason: null })
    .where('studio_id', '=', studioId)
    .where('done_by', '=', personId)
    .execute();
  await db
    .updateTable('dismissed_findings')
    .set({ reason: '' })
    .where('studio_id', '=', studioId)
    .where('dismissed_by', '=', personId)
    .execute();
  await sql`UPDATE classes SET outcome = json_remove(outcome, '$.changes', '$.saidBy')
    WHERE studio_id = ${studioId} AND outcome IS NOT NULL
      AND (instructor_id = ${personId} OR json_extract(outcome, '$.saidBy') = ${personId})`.execute(db);
  await db
    .updateTable('plans')
    .set({ home_place: null, home_thread: null })
    .where('studio_id', '=', studioId)
    .where('author_id', '=', personId)
    .execute();
}

const peopleInSettings = z.looseObject({
  headCoaches: z.array(z.string()).default([]),
  admins: z.array(z.string()).exactOptional(),
  trustedInstructors: z.array(z.string()).exactOptional(),
  slots: z.array(z.looseObject({ instructorId: z.string().exactOptional() })).default([]),
});

/** Roles end, and slots stand without an instructor. */
async function leaveSettings(db: Db, studioId: string, personId: string): Promise<void> {
  const row = await db
    .selectFrom('settings')
    .select('settings')
    .where('studio_id', '=', studioId)
    .executeTakeFirst();
  if (row === undefined) return;
  const settings = peopleInSettings.parse(JSON.parse(row.settings));
  const without = (ids: readonly string[]) => ids.filter((id) => id !== personId);
  const left = {
    ...settings,
    headCoaches: without(settings.headCoaches),
    ...(settings.admins === undefined ? {} : { admins: without(settings.admins) }),
    ...(settings.trustedInstructors === undefined
      ? {}
      : { trustedInstructors: without(settings.trustedInstructors) }),
    slots: settings.slots.map(({ instructorId, ...slot }) =>
      instructorId === undefined || instructorId === personId ? slot : { ...slot, instructorId },
    ),
  };
  await db
    .updateTable('settings')
    .set({ settings: JSON.stringify(left) })
    .where('studio_id', '=', studioId)
    .execute();
}

/** Somebody has to teach what is still to come. */
async function openCover(db: Db, studioId: string, personId: string, at: string): Promise<void> {
  await sql`UPDATE classes SET cover_open = 1, confirmed_by = NULL, confirmed_for = NULL
    WHERE studio_id = ${studioId} AND instructor_id = ${personId} AND starts_ms > unixepoch(${at}) * 1000
      AND state NOT IN ('cancelled', 'taught', 'not taught')`.execute(db);
}

const columnRow = z.strictObject({ table: z.string(), column: z.string() });
const foundRow = z.strictObject({ row: z.number(), value: z.string() });

/** Every text column of every table that has rows of studios. */
async function textColumns(db: Db): Promise<readonly z.infer<typeof columnRow>[]> {
  const { rows } = await sql`
    SELECT list.name AS "table", info.name AS "column"
    FROM pragma_table_list AS list, pragma_table_info(list.name) AS info
    WHERE list.schema = 'main' AND list.type = 'table' AND list.wr = 0 AND list.name NOT LIKE 'sqlite_%'
      AND info.type = 'TEXT' AND info.name <> 'studio_id'
      AND EXISTS (SELECT 1 FROM pragma_table_info(list.name) AS other WHERE other.name = 'studio_id')`.execute(
    db,
  );
  return rows.map((row) => columnRow.parse(row));
}

/**
 * The id where it stands by itself, in columns, in JSON and in text. A mention goes whole, with the name that
 * may stand in it.
 */
async function replaceEverywhere(db: Db, studioId: string, word: string): Promise<void> {
  const literal = word.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const mention = new RegExp(`(?:<|&lt;)@${literal}(?:\\|[^<>&]*)?(?:>|&gt;)`, 'g');
  const alone = new RegExp(`(?<![A-Za-z0-9])${literal}(?![A-Za-z0-9])`, 'g');
  for (const { table, column } of await textColumns(db)) {
    const [from, name] = [sql.table(table), sql.ref(column)];
    const { rows } = await sql`SELECT rowid AS row, ${name} AS value FROM ${from}
      WHERE studio_id = ${studioId} AND instr(${name}, ${word}) > 0`.execute(db);
    for (const found of rows.map((row) => foundRow.parse(row))) {
      const value = found.value.replaceAll(mention, forgottenMention).replaceAll(alone, forgottenPerson);
      if (value === found.value) continue;
      await sql`UPDATE OR REPLACE ${from} SET ${name} = ${value} WHERE rowid = ${found.row}`.execute(db);
    }
  }
}

const triggerRow = z.strictObject({ sql: z.string() });

/** Runs `work` with the guard of plan versions away, and puts it back as it was. */
export async function withoutTrigger(db: Db, work: () => Promise<void>): Promise<void> {
  const { rows } =
    await sql`SELECT sql FROM sqlite_master WHERE type = 'trigger' AND name = ${triggerName}`.execute(db);
  const guard = triggerRow.parse(rows[0]);
  await sql`DROP TRIGGER ${sql.ref(triggerName)}`.execute(db);
  await work();
  await sql.raw(guard.sql).execute(db);
}

const personRow = z.strictObject({ person: z.string() });

/** Everyone the tables of a studio name. */
export async function peopleOf(db: Db, studioId: string): Promise<readonly string[]> {
  const at = sql`studio_id = ${studioId}`;
  const { rows } = await sql`
    SELECT author_id AS person FROM plans WHERE ${at}
    UNION SELECT made_by FROM plan_versions WHERE ${at}
    UNION SELECT done_by FROM reviews WHERE ${at}
    UNION SELECT dismissed_by FROM dismissed_findings WHERE ${at}
    UNION SELECT said_by FROM plan_comments WHERE ${at}
    UNION SELECT resolved_by FROM plan_comments WHERE ${at} AND resolved_by IS NOT NULL
    UNION SELECT instructor_id FROM classes WHERE ${at}
    UNION SELECT confirmed_by FROM classes WHERE ${at} AND confirmed_by IS NOT NULL
    UNION SELECT json_extract(outcome, '$.saidBy') FROM classes
      WHERE ${at} AND json_extract(outcome, '$.saidBy') IS NOT NULL
    UNION SELECT person_id FROM people WHERE ${at}
    UNION SELECT person_id FROM notice_choices WHERE ${at}
    UNION SELECT goes_to FROM notices WHERE ${at}
    UNION SELECT value FROM settings, json_each(settings, '$.headCoaches') WHERE ${at}
    UNION SELECT person_id FROM user_group_members WHERE ${at}
    UNION SELECT value FROM settings, json_each(settings, '$.admins') WHERE ${at}
    UNION SELECT value FROM settings, json_each(settings, '$.trustedInstructors') WHERE ${at}
    UNION SELECT json_extract(value, '$.instructorId') FROM settings, json_each(settings, '$.slots')
      WHERE ${at} AND json_extract(value, '$.instructorId') IS NOT NULL`.execute(db);
  return rows.map((row) => personRow.parse(row).person);
}
