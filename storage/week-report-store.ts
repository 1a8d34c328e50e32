import { z } from 'zod';
import type { WeekReportStore } from '../domain/ports.ts';
import type { SayingDecision } from '../domain/week/sayings.ts';
import type { Access } from './access.ts';
import { jsonOf } from './rows.ts';

const slotNames = z.array(z.string());

const toldSchema = z.strictObject({
  trust: z.strictObject({
    classes: z.number(),
    withPlan: z.number(),
    assumed: z.number(),
    patternsOnly: z.number(),
    cancelled: z.number(),
    notTaught: z.number(),
  }),
  said: z.array(z.strictObject({ saying: z.string(), amount: z.number() })),
  exceptions: z.strictObject({
    ranOver: slotNames,
    cutShort: slotNames,
    cancelled: slotNames,
    notTaught: slotNames,
    covered: slotNames,
  }),
});

const reportRow = z.strictObject({ week: z.string(), told: jsonOf(toldSchema) });

const decisionRow = z
  .strictObject({ saying: z.string(), goes_on: z.union([z.literal(0), z.literal(1)]), week: z.string() })
  .transform(({ goes_on, ...row }): SayingDecision => ({ ...row, goesOn: goes_on === 1 }));

export function createWeekReportStore(access: Access): WeekReportStore {
  const reports = (studioId: string) =>
    access.tables().selectFrom('week_reports').select(['week', 'told']).where('studio_id', '=', studioId);

  return {
    async save(studioId, week, told, at) {
      const row = { told: JSON.stringify(told), told_at: at };
      await access
        .tables()
        .insertInto('week_reports')
        .values({ studio_id: studioId, week, ...row })
        .onConflict((conflict) => conflict.columns(['studio_id', 'week']).doUpdateSet(row))
        .execute();
    },

    async find(studioId, week) {
      const row = await reports(studioId).where('week', '=', week).executeTakeFirst();
      return row && reportRow.parse(row).told;
    },

    async listBefore(studioId, week, limit) {
      const rows = await reports(studioId)
        .where('week', '<', week)
        .orderBy('week', 'desc')
        .limit(limit)
        .execute();
      return rows
        .map((row) => reportRow.parse(row))
        .map((row) => ({ week: row.week, sayings: row.told.said.map(({ saying }) => saying) }));
    },

    async decide(studioId, { saying, goesOn, week }, at) {
      const row = { goes_on: goesOn ? 1 : 0, week, decided_at: at };
      await access
        .tables()
        .insertInto('saying_decisions')
        .values({ studio_id: studioId, saying, ...row })
        .onConflict((conflict) => conflict.columns(['studio_id', 'saying']).doUpdateSet(row))
        .execute();
    },

    async listDecisions(studioId) {
      const rows = await access
        .tables()
        .selectFrom('saying_decisions')
        .select(['saying', 'goes_on', 'week'])
        .where('studio_id', '=', studioId)
        .orderBy('saying')
        .execute();
      return rows.map((row) => decisionRow.parse(row));
    },
  };
}
