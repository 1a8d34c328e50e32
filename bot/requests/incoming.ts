import { z } from 'zod';
import type { StudioId } from '../../domain/ports.ts';
import { personId, placeId } from './ids.ts';

/** Where the asker is, so that an answer or an error reaches them there. */
export type Asker = {
  readonly personId: string;
  /** The channel or direct message; absent in home and modals. */
  readonly place?: string;
  readonly thread?: string;
  readonly responseUrl?: string;
  /** A submitted form's first block, the one that can carry an error in the ack. */
  readonly formBlock?: string;
};

/** A payload read: whose, under which key it is known again, and the typed request. */
export type Incoming<Request> = {
  readonly studioId: StudioId;
  /** The same for every delivery of one gesture. */
  readonly key: string;
  readonly asker: Asker;
  readonly request: Request;
};

/** A part that is not as it should be counts as left out: the others may still say whom to tell. */
const anyone = z.object({
  user: z
    .union([z.object({ id: personId }), personId])
    .optional()
    .catch(undefined),
  user_id: personId.optional().catch(undefined),
  channel: z.object({ id: placeId }).optional().catch(undefined),
  channel_id: placeId.optional().catch(undefined),
  response_url: z.url().optional().catch(undefined),
});

/** Whom to tell about a payload that could not be read, as far as it says. */
export function readAnyAsker(body: unknown): Asker | undefined {
  const read = anyone.safeParse(body);
  if (!read.success) return undefined;
  const { user, user_id: userId, channel, channel_id: channelId, response_url: responseUrl } = read.data;
  const asker = userId ?? (typeof user === 'string' ? user : user?.id);
  const place = channelId ?? channel?.id;
  if (asker === undefined) return undefined;
  return {
    personId: asker,
    ...(place === undefined ? {} : { place }),
    ...(responseUrl === undefined ? {} : { responseUrl }),
  };
}
