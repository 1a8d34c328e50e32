import { z } from 'zod';
import type { PlanComment } from '../domain/plan/plan-life.ts';
import type { CommentStore } from '../domain/ports.ts';
import type { Access } from './access.ts';
import { present } from './rows.ts';

const commentRow = z
  .strictObject({
    comment_id: z.string(),
    plan_id: z.string(),
    line_id: z.string(),
    version: z.number(),
    said: z.string(),
    said_by: z.string(),
    said_at: z.string(),
    resolved_by: z.string().exactOptional(),
    resolved_at: z.string().exactOptional(),
  })
  .transform(
    ({
      comment_id,
      plan_id,
      line_id,
      version,
      said,
      said_by,
      said_at,
      resolved_by,
      resolved_at,
    }): PlanComment => ({
      id: comment_id,
      planId: plan_id,
      line: line_id,
      version,
      text: said,
      by: said_by,
      at: said_at,
      ...(resolved_by === undefined || resolved_at === undefined
        ? {}
        : { resolved: { by: resolved_by, at: resolved_at } }),
    }),
  );

const columns = [
  'comment_id',
  'plan_id',
  'line_id',
  'version',
  'said',
  'said_by',
  'said_at',
  'resolved_by',
  'resolved_at',
] as const;

export function createCommentStore(access: Access): CommentStore {
  const comments = (studioId: string) =>
    access.tables().selectFrom('plan_comments').select(columns).where('studio_id', '=', studioId);

  return {
    async add(studioId, comment) {
      await access
        .tables()
        .insertInto('plan_comments')
        .values({
          studio_id: studioId,
          plan_id: comment.planId,
          comment_id: comment.id,
          line_id: comment.line,
          version: comment.version,
          said: comment.text,
          said_by: comment.by,
          said_at: comment.at,
          resolved_by: comment.resolved?.by ?? null,
          resolved_at: comment.resolved?.at ?? null,
        })
        .onConflict((conflict) => conflict.columns(['studio_id', 'comment_id']).doNothing())
        .execute();
    },

    async find(studioId, commentId) {
      const row = await comments(studioId).where('comment_id', '=', commentId).executeTakeFirst();
      return row && commentRow.parse(present(row));
    },

    async list(studioId, planId) {
      const rows = await comments(studioId).where('plan_id', '=', planId).orderBy('sequence').execute();
      return rows.map((row) => commentRow.parse(present(row)));
    },

    async resolve(studioId, commentId, by, at) {
      await access
        .tables()
        .updateTable('plan_comments')
        .set({ resolved_by: by, resolved_at: at })
        .where('studio_id', '=', studioId)
        .where('comment_id', '=', commentId)
        .where('resolved_by', 'is', null)
        .execute();
    },
  };
}
