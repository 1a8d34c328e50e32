import { z } from 'zod';
import type { ActionRequest } from '../handling.ts';
import { chosenIn, elementValue, formState, readFormValues } from './form-values.ts';
import { placeId, stamp, triggerId } from './ids.ts';
import type { Incoming } from './incoming.ts';
import { interactor, teamOf } from './team-of.ts';

const payload = z.object({
  type: z.literal('block_actions'),
  ...interactor,
  trigger_id: triggerId,
  response_url: z.url().nullish(),
  channel: z.object({ id: placeId }).nullish(),
  message: z.object({ ts: stamp, thread_ts: stamp.nullish() }).nullish(),
  container: z
    .object({
      channel_id: placeId.nullish(),
      message_ts: stamp.nullish(),
      thread_ts: stamp.nullish(),
    })
    .nullish(),
  view: z
    .object({ id: z.string(), private_metadata: z.string().default(''), state: formState.nullish() })
    .nullish(),
  actions: z.array(elementValue.extend({ action_id: z.string() })).min(1),
});

type Payload = z.infer<typeof payload>;

/** Throws on a payload that is no click or choice in blocks. */
export function readAction(body: unknown): Incoming<ActionRequest> {
  const read = payload.parse(body);
  const [action] = read.actions;
  if (action === undefined) throw new Error('The payload has no action.');
  const value = chosenIn(action) ?? '';
  const message = messageOf(read);
  return {
    studioId: teamOf(read),
    key: `action:${read.trigger_id}`,
    asker: {
      personId: read.user.id,
      ...(message === undefined ? {} : { place: message.place }),
      ...(message?.thread === undefined ? {} : { thread: message.thread }),
      ...(read.response_url ? { responseUrl: read.response_url } : {}),
    },
    request: {
      kind: 'action',
      actionId: action.action_id,
      value: typeof value === 'string' ? value : value.join(','),
      personId: read.user.id,
      ...(message === undefined ? {} : { message }),
      ...(read.view
        ? {
            view: {
              id: read.view.id,
              metadata: read.view.private_metadata,
              values: readFormValues(read.view.state ?? undefined),
            },
          }
        : {}),
      triggerId: read.trigger_id,
    },
  };
}

function messageOf(read: Payload): ActionRequest['message'] {
  const place = read.channel?.id ?? read.container?.channel_id ?? undefined;
  const standing = read.message?.ts ?? read.container?.message_ts ?? undefined;
  const thread = read.message?.thread_ts ?? read.container?.thread_ts ?? undefined;
  if (place === undefined || standing === undefined) return undefined;
  return { place, stamp: standing, ...(thread === undefined ? {} : { thread }) };
}
