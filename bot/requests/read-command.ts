import { z } from 'zod';
import type { CommandRequest } from '../handling.ts';
import { personId, placeId, teamId, triggerId } from './ids.ts';
import type { Incoming } from './incoming.ts';

const payload = z.object({
  command: z.string(),
  text: z.string().default(''),
  team_id: teamId,
  user_id: personId,
  channel_id: placeId,
  trigger_id: triggerId,
  response_url: z.url(),
});

/** Throws on a payload that is no command. `command` is the name to look the handler up by. */
export function readCommand(body: unknown): Incoming<CommandRequest> & { readonly command: string } {
  const read = payload.parse(body);
  return {
    studioId: read.team_id,
    key: `command:${read.trigger_id}`,
    asker: { personId: read.user_id, place: read.channel_id, responseUrl: read.response_url },
    command: read.command,
    request: {
      kind: 'command',
      personId: read.user_id,
      place: read.channel_id,
      text: read.text,
      triggerId: read.trigger_id,
    },
  };
}
