import { isDeepStrictEqual } from 'node:util';
import { sql } from 'kysely';
import { z } from 'zod';
import { muscles } from '../domain/catalogue/muscles.ts';
import { planShape } from '../domain/plan/plan.ts';
import type { PlanRecord } from '../domain/plan/plan-life.ts';
import type { PlanStore, PlanVersion } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { planSchema } from './plan-schema.ts';
import { assertUpdated, jsonOf, millisecondsOf, present } from './rows.ts';

const recordRow = z
  .strictObject({
    studio_id: z.string(),
    plan_id: z.string(),
    author_id: z.string(),
    state: z.enum(['draft', 'in review', 'approved']),
    current_version: z.number(),
    approved_version: z.number().exactOptional(),
    home_place: z.string().exactOptional(),
    home_thread: z.string().exactOptional(),
    created_at: z.string(),
    created_ms: z.number(),
  })
  .transform(
    ({ approved_version, home_place, home_thread, ...row }): PlanRecord => ({
      id: row.plan_id,
      authorId: row.author_id,
      state: row.state,
      currentVersion: row.current_version,
      ...(approved_version === undefined ? {} : { approvedVersion: approved_version }),
      ...(home_place === undefined || home_thread === undefined
        ? {}
        : { home: { place: home_place, thread: home_thread } }),
      createdAt: row.created_at,
    }),
  );

const causeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('written'), editedStamp: z.string().exactOptional() }),
  z.strictObject({ kind: z.literal('edit'), words: z.string() }),
  z.strictObject({ kind: z.literal('undo'), restores: z.number() }),
  z.strictObject({ kind: z.literal('redo'), restores: z.number() }),
]);

const loadSchema = z.array(
  z.strictObject({ muscle: z.enum(muscles), sets: z.number(), tensionSeconds: z.number() }),
);

const versionRow = z
  .strictObject({
    studio_id: z.string(),
    plan_id: z.string(),
    version: z.number(),
    text: z.string(),
    plan_shape: z.literal(planShape).exactOptional(),
    plan: jsonOf(planSchema).exactOptional(),
    problem_count: z.number(),
    catalogue_edition: z.string(),
    total_seconds: z.number(),
    load: jsonOf(loadSchema),
    sets_by_pattern: jsonOf(z.record(z.string(), z.number())),
    finding_codes: jsonOf(z.array(z.string())),
    made_by: z.string(),
    made_at: z.string(),
    cause: jsonOf(causeSchema),
  })
  .transform(
    ({ plan, ...row }): PlanVersion => ({
      planId: row.plan_id,
      version: row.version,
      text: row.text,
      ...(plan === undefined ? {} : { plan }),
      problemCount: row.problem_count,
      catalogueEdition: row.catalogue_edition,
      totalSeconds: row.total_seconds,
      load: row.load,
      setsByPattern: row.sets_by_pattern,
      findingCodes: row.finding_codes,
      madeBy: row.made_by,
      madeAt: row.made_at,
      cause: row.cause,
    }),
  );

export function createPlanStore(access: Access): PlanStore {
  const records = (studioId: string) =>
    access.tables().selectFrom('plans').selectAll().where('studio_id', '=', studioId);

  const versions = (studioId: string, planId: string) =>
    access
      .tables()
      .selectFrom('plan_versions')
      .selectAll()
      .where('studio_id', '=', studioId)
      .where('plan_id', '=', planId);

  return {
    async create(studioId, record) {
      await access
        .tables()
        .insertInto('plans')
        .values({ studio_id: studioId, plan_id: record.id, ...recordColumns(record) })
        .onConflict((conflict) => conflict.columns(['studio_id', 'plan_id']).doNothing())
        .execute();
    },

    async update(studioId, record) {
      const result = await access
        .tables()
        .updateTable('plans')
        .set(recordColumns(record))
        .where('studio_id', '=', studioId)
        .where('plan_id', '=', record.id)
        .executeTakeFirst();
      assertUpdated(result, 'plan');
    },

    async find(studioId, planId) {
      const row = await records(studioId).where('plan_id', '=', planId).executeTakeFirst();
      return row && recordRow.parse(present(row));
    },

    async findByHome(studioId, { place, thread }) {
      const row = await records(studioId)
        .where('home_place', '=', place)
        .where('home_thread', '=', thread)
        .executeTakeFirst();
      return row && recordRow.parse(present(row));
    },

    async listByAuthor(studioId, authorId, limit) {
      const rows = await records(studioId)
        .where('author_id', '=', authorId)
        .orderBy('created_ms', 'desc')
        .orderBy(sql`rowid`, 'desc')
        .limit(limit)
        .execute();
      return rows.map((row) => recordRow.parse(present(row)));
    },

    async listByState(studioId, state) {
      const rows = await records(studioId)
        .where('state', '=', state)
        .orderBy('created_ms')
        .orderBy(sql`rowid`)
        .execute();
      return rows.map((row) => recordRow.parse(present(row)));
    },

    addVersion: (studioId, version) =>
      access.together(async (tables) => {
        const row = versionColumns(studioId, version);
        const result = await tables
          .insertInto('plan_versions')
          .values(row)
          .onConflict((conflict) => conflict.columns(['studio_id', 'plan_id', 'version']).doNothing())
          .executeTakeFirst();
        if (result.numInsertedOrUpdatedRows !== 0n) return;
        const kept = await tables
          .selectFrom('plan_versions')
          .selectAll()
          .where('studio_id', '=', studioId)
          .where('plan_id', '=', version.planId)
          .where('version', '=', version.version)
          .executeTakeFirstOrThrow();
        if (!isDeepStrictEqual({ ...kept }, row))
          throw new Error(`Version ${version.version} of this plan stands already, with other content.`);
      }),

    async findVersion(studioId, planId, version) {
      const row = await versions(studioId, planId).where('version', '=', version).executeTakeFirst();
      return row && versionRow.parse(present(row));
    },

    async listVersions(studioId, planId) {
      const rows = await versions(studioId, planId).orderBy('version').execute();
      return rows.map((row) => versionRow.parse(present(row)));
    },

    async dismissFinding(studioId, planId, code, by, reason, at) {
      await access
        .tables()
        .insertInto('dismissed_findings')
        .values({
          studio_id: studioId,
          plan_id: planId,
          code,
          dismissed_by: by,
          reason,
          dismissed_at: at,
        })
        .onConflict((conflict) => conflict.columns(['studio_id', 'plan_id', 'code']).doNothing())
        .execute();
    },

    async listDismissed(studioId, planId) {
      const rows = await access
        .tables()
        .selectFrom('dismissed_findings')
        .select('code')
        .where('studio_id', '=', studioId)
        .where('plan_id', '=', planId)
        .orderBy('sequence')
        .execute();
      return rows.map(({ code }) => code);
    },
  };
}

function recordColumns(record: PlanRecord) {
  return {
    author_id: record.authorId,
    state: record.state,
    current_version: record.currentVersion,
    approved_version: record.approvedVersion ?? null,
    home_place: record.home?.place ?? null,
    home_thread: record.home?.thread ?? null,
    created_at: record.createdAt,
    created_ms: millisecondsOf(record.createdAt),
  };
}

function versionColumns(studioId: string, version: PlanVersion) {
  const { plan } = version;
  return {
    studio_id: studioId,
    plan_id: version.planId,
    version: version.version,
    text: version.text,
    plan_shape: plan === undefined ? null : planShape,
    plan: plan === undefined ? null : JSON.stringify(plan),
    problem_count: version.problemCount,
    catalogue_edition: version.catalogueEdition,
    total_seconds: version.totalSeconds,
    load: JSON.stringify(version.load),
    sets_by_pattern: JSON.stringify(version.setsByPattern),
    finding_codes: JSON.stringify(version.findingCodes),
    made_by: version.madeBy,
    made_at: version.madeAt,
    cause: JSON.stringify(version.cause),
  };
}
