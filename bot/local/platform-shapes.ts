import type { Message, OpenView, Place, UserGroup, Workspace } from './workspace.ts';

/** The platform's JSON for what the workspace keeps; `null` stands where the platform sends one. */
type Json = Readonly<Record<string, unknown>>;

const fileShape = (id: string, workspace: Workspace): readonly Json[] => {
  const file = workspace.findFile(id);
  return file === undefined ? [] : [{ id, name: file.name, title: file.name }];
};

export const messageShape = (message: Message, workspace: Workspace, withMetadata = false): Json => {
  const { app, team } = workspace;
  const isBot = message.authorId === app.botUserId;
  const replies = workspace
    .listMessages(message.placeId)
    .filter(({ threadTs, ts }) => threadTs === message.ts && ts !== message.ts);
  return {
    type: 'message',
    user: message.authorId,
    text: message.text,
    ts: message.ts,
    team: team.id,
    ...(isBot
      ? { bot_id: app.botId, app_id: app.id, bot_profile: { id: app.botId, app_id: app.id, name: app.name } }
      : {}),
    ...(message.clientMessageId === undefined ? {} : { client_msg_id: message.clientMessageId }),
    ...(message.blocks === undefined ? {} : { blocks: message.blocks }),
    ...(message.fileIds === undefined
      ? {}
      : { files: message.fileIds.flatMap((id) => fileShape(id, workspace)) }),
    ...(message.editedTs === undefined ? {} : { edited: { user: message.authorId, ts: message.editedTs } }),
    ...(message.threadTs === undefined ? {} : { thread_ts: message.threadTs }),
    ...(replies.length === 0
      ? {}
      : { thread_ts: message.ts, reply_count: replies.length, latest_reply: replies.at(-1)?.ts }),
    ...(withMetadata && message.metadata !== undefined ? { metadata: message.metadata } : {}),
    ...(Object.keys(message.reactions).length === 0
      ? {}
      : {
          reactions: Object.entries(message.reactions).map(([name, users]) => ({
            name,
            users,
            count: users.length,
          })),
        }),
  };
};

export const viewShape = (view: OpenView, workspace: Workspace, values: Json = {}): Json => {
  const { app, team } = workspace;
  const { content } = view;
  return {
    id: view.id,
    team_id: team.id,
    type: content.type,
    blocks: content.blocks,
    private_metadata: content.private_metadata,
    callback_id: content.callback_id,
    external_id: content.external_id,
    state: { values },
    hash: view.hash,
    ...(content.type === 'modal'
      ? {
          title: content.title,
          submit: content.submit ?? null,
          close: content.close ?? null,
          clear_on_close: content.clear_on_close,
          notify_on_close: content.notify_on_close,
        }
      : { title: { type: 'plain_text', text: 'View Title' }, submit: null, close: null }),
    previous_view_id: view.previousId ?? null,
    root_view_id: view.rootId,
    app_id: app.id,
    app_installed_team_id: team.id,
    bot_id: app.botId,
  };
};

export const placeName = (place: Place): string =>
  place.kind === 'channel' ? place.channel.name : 'directmessage';

export const placeShape = (place: Place, workspace: Workspace): Json =>
  place.kind === 'channel'
    ? {
        id: place.id,
        name: place.channel.name,
        is_channel: !place.channel.isPrivate,
        is_group: place.channel.isPrivate,
        is_private: place.channel.isPrivate,
        is_im: false,
        is_archived: false,
        is_member: workspace.isMember(place, workspace.app.botUserId),
        purpose: { value: place.channel.purpose },
      }
    : { id: place.id, is_im: true, is_channel: false, is_archived: false, user: place.personId };

export const groupShape = ({ id, handle }: UserGroup, { team }: Workspace): Json => ({
  id,
  team_id: team.id,
  is_usergroup: true,
  is_subteam: true,
  name: handle,
  handle,
  description: '',
  is_external: false,
  date_delete: 0,
});
