import { type Kysely, sql } from 'kysely';
import { z } from 'zod';
import type { ScheduledClass } from '../domain/calendar/scheduled-class.ts';
import { muscles } from '../domain/catalogue/muscles.ts';
import type { ClassStore, MuscleLoad } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { assertUpdated, jsonOf, millisecondsOf, present } from './rows.ts';
import type { Tables } from './tables.ts';

const outcomeSchema = z.strictObject({
  how: z.enum(['as planned', 'with changes', 'not taught', 'as planned, assumed']),
  changes: z.string().exactOptional(),
  effort: z.number().exactOptional(),
  length: z.enum(['short', 'on time', 'over']).exactOptional(),
  saidBy: z.string().exactOptional(),
  saidAt: z.string(),
});

const classRow = z
  .strictObject({
    studio_id: z.string(),
    class_id: z.string(),
    slot_id: z.string().exactOptional(),
    title: z.string().exactOptional(),
    starts_date: z.string(),
    starts_time: z.string(),
    zone: z.string(),
    starts_at: z.string(),
    starts_ms: z.number(),
    slot_seconds: z.number(),
    room: z.string().exactOptional(),
    instructor_id: z.string(),
    people: z.number().exactOptional(),
    plan_id: z.string().exactOptional(),
    state: z.enum(['planned', 'moved', 'cancelled', 'taught', 'not taught']),
    outcome: jsonOf(outcomeSchema).exactOptional(),
    cover_open: z.number(),
    confirmed_by: z.string().exactOptional(),
    confirmed_for: z.string().exactOptional(),
    revision: z.number(),
  })
  .transform(
    ({ slot_id, title, room, people, plan_id, outcome, confirmed_by, ...row }): ScheduledClass => ({
      id: row.class_id,
      ...(slot_id === undefined ? {} : { slotId: slot_id }),
      ...(title === undefined ? {} : { title }),
      startsAt: { date: row.starts_date, time: row.starts_time, zone: row.zone, instant: row.starts_at },
      slotSeconds: row.slot_seconds,
      ...(room === undefined ? {} : { room }),
      instructorId: row.instructor_id,
      ...(people === undefined ? {} : { people }),
      ...(plan_id === undefined ? {} : { planId: plan_id }),
      state: row.state,
      ...(outcome === undefined ? {} : { outcome }),
      ...(row.cover_open === 1 ? { coverOpen: true } : {}),
      ...(confirmed_by === undefined || row.confirmed_for === undefined
        ? {}
        : { confirmed: { by: confirmed_by, startsAt: row.confirmed_for } }),
      ...(row.revision === 0 ? {} : { revision: row.revision }),
    }),
  );

const countedRow = z.strictObject({
  class_id: z.string(),
  sets_by_pattern: jsonOf(z.record(z.string(), z.number())),
});

const loadRow = z
  .strictObject({ muscle: z.enum(muscles), sets: z.number(), tension_seconds: z.number() })
  .transform(
    ({ muscle, sets, tension_seconds }): MuscleLoad => ({ muscle, sets, tensionSeconds: tension_seconds }),
  );

export function createClassStore(access: Access): ClassStore {
  const classes = (studioId: string) =>
    access.tables().selectFrom('classes').selectAll().where('studio_id', '=', studioId);

  return {
    async save(studioId, scheduled) {
      const row = classColumns(scheduled);
      await access
        .tables()
        .insertInto('classes')
        .values({ studio_id: studioId, class_id: scheduled.id, ...row })
        .onConflict((conflict) => conflict.columns(['studio_id', 'class_id']).doUpdateSet(row))
        .execute();
    },

    async find(studioId, classId) {
      const row = await classes(studioId).where('class_id', '=', classId).executeTakeFirst();
      return row && classRow.parse(present(row));
    },

    async findByPlan(studioId, planId) {
      const rows = await classes(studioId)
        .where('plan_id', '=', planId)
        .orderBy('starts_ms')
        .orderBy('class_id')
        .execute();
      return rows.map((row) => classRow.parse(present(row)));
    },

    async listBetween(studioId, fromInstant, toInstant) {
      const rows = await classes(studioId)
        .where('starts_ms', '>=', millisecondsOf(fromInstant))
        .where('starts_ms', '<', millisecondsOf(toInstant))
        .orderBy('starts_ms')
        .orderBy('class_id')
        .execute();
      return rows.map((row) => classRow.parse(present(row)));
    },

    async setState(studioId, classId, state, outcome) {
      const result = await access
        .tables()
        .updateTable('classes')
        .set({ state, outcome: outcome === undefined ? null : JSON.stringify(outcome) })
        .where('studio_id', '=', studioId)
        .where('class_id', '=', classId)
        .executeTakeFirst();
      assertUpdated(result, 'class');
    },

    saveLoad: (studioId, classId, load, setsByPattern) =>
      access.together(async (tables) => {
        await tables
          .deleteFrom('class_counts')
          .where('studio_id', '=', studioId)
          .where('class_id', '=', classId)
          .execute();
        await tables
          .insertInto('class_counts')
          .values({
            studio_id: studioId,
            class_id: classId,
            sets_by_pattern: JSON.stringify(setsByPattern),
          })
          .execute();
        for (const { muscle, sets, tensionSeconds } of load)
          await tables
            .insertInto('class_load')
            .values({ studio_id: studioId, class_id: classId, muscle, sets, tension_seconds: tensionSeconds })
            .execute();
        await noteMovesTaught(tables, studioId, classId);
      }),

    async listLoadBetween(studioId, fromInstant, toInstant) {
      const rows = await access
        .tables()
        .selectFrom('classes')
        .innerJoin('class_counts', (join) =>
          join
            .onRef('class_counts.studio_id', '=', 'classes.studio_id')
            .onRef('class_counts.class_id', '=', 'classes.class_id'),
        )
        .leftJoin('class_load', (join) =>
          join
            .onRef('class_load.studio_id', '=', 'classes.studio_id')
            .onRef('class_load.class_id', '=', 'classes.class_id'),
        )
        .select([
          'classes.class_id',
          'class_counts.sets_by_pattern',
          'class_load.muscle',
          'class_load.sets',
          'class_load.tension_seconds',
        ])
        .where('classes.studio_id', '=', studioId)
        .where('classes.starts_ms', '>=', millisecondsOf(fromInstant))
        .where('classes.starts_ms', '<', millisecondsOf(toInstant))
        .where('classes.state', '=', 'taught')
        .orderBy('classes.starts_ms')
        .orderBy('classes.class_id')
        .orderBy('class_load.sets', 'desc')
        .orderBy('class_load.muscle')
        .execute();
      return readCounted(rows);
    },

    async listMovesTaught(studioId) {
      const rows = await access
        .tables()
        .selectFrom('class_moves')
        .select('move_id')
        .distinct()
        .where('studio_id', '=', studioId)
        .execute();
      return new Set(rows.map(({ move_id }) => move_id));
    },
  };
}

type CountedRow = {
  readonly class_id: string;
  readonly sets_by_pattern: string;
  readonly muscle: string | null;
  readonly sets: number | null;
  readonly tension_seconds: number | null;
};

/** One row a muscle, or one without a muscle where nothing was counted; rows of a class stand together. */
function readCounted(rows: readonly CountedRow[]) {
  const loads = new Map<string, MuscleLoad[]>();
  const counted = rows.flatMap(({ class_id, sets_by_pattern, ...row }) => {
    const known = loads.get(class_id);
    const load = known ?? [];
    if (row.muscle !== null) load.push(loadRow.parse(row));
    if (known !== undefined) return [];
    loads.set(class_id, load);
    return { ...countedRow.parse({ class_id, sets_by_pattern }), load };
  });
  return counted.map((each) => ({
    classId: each.class_id,
    load: each.load,
    setsByPattern: each.sets_by_pattern,
  }));
}

/** The moves that letters and open blocks name, without their easier and harder options. */
async function noteMovesTaught(tables: Kysely<Tables>, studioId: string, classId: string): Promise<void> {
  await sql`
    INSERT INTO class_moves (studio_id, class_id, move_id)
    SELECT DISTINCT classes.studio_id, classes.class_id, node.atom
    FROM classes
    JOIN plans ON plans.studio_id = classes.studio_id AND plans.plan_id = classes.plan_id
    JOIN plan_versions ON plan_versions.studio_id = plans.studio_id
      AND plan_versions.plan_id = plans.plan_id
      AND plan_versions.version = coalesce(plans.approved_version, plans.current_version)
    JOIN json_tree(plan_versions.plan) AS node
    WHERE classes.studio_id = ${studioId} AND classes.class_id = ${classId} AND classes.state = 'taught'
      AND node.key = 'moveId' AND (node.path LIKE '%.choice' OR node.path LIKE '%.what')
  `.execute(tables);
}

function classColumns(scheduled: ScheduledClass) {
  const { startsAt, outcome } = scheduled;
  return {
    slot_id: scheduled.slotId ?? null,
    title: scheduled.title ?? null,
    starts_date: startsAt.date,
    starts_time: startsAt.time,
    zone: startsAt.zone,
    starts_at: startsAt.instant,
    starts_ms: millisecondsOf(startsAt.instant),
    slot_seconds: scheduled.slotSeconds,
    room: scheduled.room ?? null,
    instructor_id: scheduled.instructorId,
    people: scheduled.people ?? null,
    plan_id: scheduled.planId ?? null,
    state: scheduled.state,
    outcome: outcome === undefined ? null : JSON.stringify(outcome),
    cover_open: scheduled.coverOpen === true ? 1 : 0,
    confirmed_by: scheduled.confirmed?.by ?? null,
    confirmed_for: scheduled.confirmed?.startsAt ?? null,
  };
}
