import { z } from 'zod';
import type { GroupsRequest, HomeRequest, LeftRequest, MessageRequest } from '../handling.ts';
import { groupId, personId, placeId, stamp, teamId } from './ids.ts';
import type { Incoming } from './incoming.ts';

/** Who the app is in its workspace: its own words are never read. */
export type Self = { readonly botUserId: string; readonly botId: string };

export type IncomingEvent = Incoming<MessageRequest | HomeRequest | LeftRequest | GroupsRequest> & {
  /** One gesture may come as two events; this is the same for both. */
  readonly gesture: string;
};

const said = z.object({
  user: personId,
  text: z.string().default(''),
  ts: stamp,
  thread_ts: stamp.nullish(),
  client_msg_id: z.string().nullish(),
  bot_id: z.string().nullish(),
});

/** What a person says may come with a file, in italics, or from a thread to the whole place as well. */
const spoken = z.enum(['file_share', 'me_message', 'thread_broadcast']).optional();

const directMessage = said.extend({
  type: z.literal('message'),
  subtype: spoken,
  channel_type: z.literal('im'),
  channel: placeId,
});

const changedMessage = z.object({
  type: z.literal('message'),
  subtype: z.literal('message_changed'),
  channel_type: z.literal('im'),
  channel: placeId,
  message: said.extend({ edited: z.object({ ts: stamp }), subtype: spoken }),
  previous_message: z.object({ text: z.string().default('') }).nullish(),
});

const mention = said.extend({ type: z.literal('app_mention'), channel: placeId });

const homeOpened = z.object({
  type: z.literal('app_home_opened'),
  user: personId,
  tab: z.enum(['home', 'messages']),
});

const uninstalled = z.object({ type: z.literal('app_uninstalled') });

const revoked = z.object({
  type: z.literal('tokens_revoked'),
  tokens: z.object({ bot: z.array(z.string()).nullish() }).nullish(),
});

const groupMembers = z.object({
  type: z.literal('subteam_members_changed'),
  subteam_id: groupId,
  removed_users: z.array(personId).nullish(),
});

const group = z.object({ type: z.literal('subteam_updated'), subteam: z.object({ id: groupId }) });

const heard = z.union([
  directMessage,
  changedMessage,
  mention,
  homeOpened,
  uninstalled,
  revoked,
  groupMembers,
  group,
]);

const payload = z.object({
  type: z.literal('event_callback'),
  event_id: z.string(),
  team_id: teamId,
  authorizations: z.array(z.object({ team_id: teamId.nullish() })).nullish(),
  event: heard,
});

type Said = z.infer<typeof said>;

/**
 * The request an event makes, or nothing: the app's own words, other apps', joins, unfurls and
 * everything else that no person said to it.
 */
export function readEvent(body: unknown, self: Self): IncomingEvent | undefined {
  const parsed = payload.safeParse(body);
  if (!parsed.success) return undefined;
  const { event, event_id: eventId, authorizations, team_id: teamId } = parsed.data;
  const studioId = authorizations?.[0]?.team_id ?? teamId;
  const key = `event:${eventId}`;
  if (event.type === 'app_home_opened') {
    const messages = event.tab === 'messages' ? { messages: true as const } : {};
    const request = { kind: 'home', personId: event.user, ...messages } as const;
    return { studioId, key, gesture: key, asker: { personId: event.user }, request };
  }
  if (event.type === 'app_uninstalled' || event.type === 'tokens_revoked') {
    // A person's own token that goes is not the app's.
    const isApp = event.type === 'app_uninstalled' || (event.tokens?.bot ?? []).length > 0;
    return isApp
      ? { studioId, key, gesture: key, asker: { personId: self.botUserId }, request: { kind: 'left' } }
      : undefined;
  }
  if (event.type === 'subteam_members_changed' || event.type === 'subteam_updated') {
    const isMembers = event.type === 'subteam_members_changed';
    const changed = isMembers ? event.subteam_id : event.subteam.id;
    const removed = isMembers ? (event.removed_users ?? []) : [];
    const request = { kind: 'groups', groupId: changed, removed } as const;
    return { studioId, key, gesture: key, asker: { personId: self.botUserId }, request };
  }
  const edited = 'message' in event;
  const words: Said = edited ? event.message : event;
  if (words.bot_id || words.user === self.botUserId) return undefined;
  if (edited && event.previous_message?.text === words.text) return undefined;
  const thread = words.thread_ts ?? undefined;
  const inThread = thread === undefined ? {} : { thread };
  return {
    studioId,
    key,
    gesture: edited
      ? `edit:${event.channel}:${words.ts}:${event.message.edited.ts}`
      : `said:${words.client_msg_id ?? `${event.channel}:${words.ts}`}`,
    asker: { personId: words.user, place: event.channel, ...inThread },
    request: {
      kind: 'message',
      source: event.type === 'app_mention' ? 'mention' : 'direct message',
      personId: words.user,
      place: event.channel,
      stamp: words.ts,
      ...inThread,
      text: event.type === 'app_mention' ? withoutMention(words.text, self) : words.text,
      edited,
      ...(edited ? { editedStamp: event.message.edited.ts } : {}),
      ...(edited && event.previous_message ? { before: event.previous_message.text } : {}),
    },
  };
}

/** The words behind the app's own name, which opens a mention. */
function withoutMention(text: string, self: Self): string {
  const opening = /^\s*<@([A-Z0-9]+)(?:\|[^>]*)?>[ \t:,]*/.exec(text);
  return opening?.[1] === self.botUserId ? text.slice(opening[0].length) : text;
}
