import { z } from 'zod';
import { type ApiAnswer, fail, flag, isFailure, readContent, structured, threadOf } from './read-content.ts';
import type { ResponseGrant, Workspace } from './workspace.ts';

const responseShape = z.looseObject({
  response_type: z.enum(['ephemeral', 'in_channel']).optional(),
  replace_original: flag,
  delete_original: flag,
  thread_ts: z.string().optional(),
  text: z.string().optional(),
  blocks: structured,
});

/** Posts what an app sent to a response address, or as the body of a command's ack. */
export const answerInPlace = (grant: ResponseGrant, body: unknown, workspace: Workspace): ApiAnswer => {
  const parsed = responseShape.safeParse(body);
  if (!parsed.success) return fail('invalid_payload');
  const asked = parsed.data;
  const original =
    grant.messageTs === undefined ? undefined : workspace.findMessage(grant.placeId, grant.messageTs);
  if (asked.delete_original === true) {
    if (original === undefined) return fail('message_not_found');
    workspace.removeMessage(original);
    return { ok: true };
  }
  const content = readContent(asked, workspace);
  if (isFailure(content)) return content;
  if (asked.replace_original === true) {
    if (original === undefined) return fail('message_not_found');
    workspace.changeMessage(original, { ...content, isEdit: false });
    return { ok: true };
  }
  const place = workspace.findPlace(grant.placeId);
  if (place === undefined) return fail('channel_not_found');
  const thread = threadOf(place, asked.thread_ts, workspace);
  if (isFailure(thread)) return thread;
  workspace.post({
    placeId: grant.placeId,
    authorId: workspace.app.botUserId,
    ...(asked.response_type === 'in_channel' ? {} : { onlyFor: grant.userId }),
    ...content,
    ...thread,
  });
  return { ok: true };
};
