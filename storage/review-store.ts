import { z } from 'zod';
import type { LifeStep } from '../domain/plan/plan-life.ts';
import type { ReviewStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { present } from './rows.ts';

const stepRow = z
  .strictObject({
    kind: z.enum(['sent', 'approved', 'changes asked', 'withdrawn', 'changed after approval']),
    version: z.number(),
    done_by: z.string(),
    done_at: z.string(),
    reason: z.string().exactOptional(),
  })
  .transform(
    ({ kind, version, done_by, done_at, reason }): LifeStep => ({
      kind,
      version,
      by: done_by,
      at: done_at,
      ...(reason === undefined ? {} : { reason }),
    }),
  );

export function createReviewStore(access: Access): ReviewStore {
  return {
    async add(studioId, planId, { kind, version, by, at, reason }) {
      await access
        .tables()
        .insertInto('reviews')
        .values({
          studio_id: studioId,
          plan_id: planId,
          kind,
          version,
          done_by: by,
          done_at: at,
          reason: reason ?? null,
        })
        .onConflict((conflict) =>
          conflict.columns(['studio_id', 'plan_id', 'version', 'kind', 'done_by', 'done_at']).doNothing(),
        )
        .execute();
    },

    async list(studioId, planId) {
      const rows = await access
        .tables()
        .selectFrom('reviews')
        .select(['kind', 'version', 'done_by', 'done_at', 'reason'])
        .where('studio_id', '=', studioId)
        .where('plan_id', '=', planId)
        .orderBy('sequence')
        .execute();
      return rows.map((row) => stepRow.parse(present(row)));
    },
  };
}
