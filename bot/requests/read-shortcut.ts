import { z } from 'zod';
import type { ShortcutRequest } from '../handling.ts';
import { placeId, stamp, triggerId } from './ids.ts';
import type { Incoming } from './incoming.ts';
import { interactor, teamOf } from './team-of.ts';

const payload = z.object({
  type: z.enum(['message_action', 'shortcut']),
  ...interactor,
  callback_id: z.string(),
  trigger_id: triggerId,
  response_url: z.url().nullish(),
  channel: z.object({ id: placeId }).nullish(),
  message: z.object({ ts: stamp, thread_ts: stamp.nullish(), text: z.string().default('') }).nullish(),
});

/** Throws on a payload that is no shortcut. */
export function readShortcut(body: unknown): Incoming<ShortcutRequest> {
  const read = payload.parse(body);
  const place = read.channel?.id;
  const thread = read.message?.thread_ts ?? undefined;
  return {
    studioId: teamOf(read),
    key: `shortcut:${read.trigger_id}`,
    asker: {
      personId: read.user.id,
      ...(place === undefined ? {} : { place }),
      ...(thread === undefined ? {} : { thread }),
      ...(read.response_url ? { responseUrl: read.response_url } : {}),
    },
    request: {
      kind: 'shortcut',
      callbackId: read.callback_id,
      personId: read.user.id,
      triggerId: read.trigger_id,
      ...(place === undefined || !read.message
        ? {}
        : { message: { place, stamp: read.message.ts, text: read.message.text } }),
    },
  };
}
