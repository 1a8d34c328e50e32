import { z } from 'zod';
import { acceptHome, acceptModal } from './accepted-blocks.ts';
import { groupShape, messageShape, placeShape, viewShape } from './platform-shapes.ts';
import {
  type ApiAnswer,
  type Failure,
  fail,
  flag,
  isFailure,
  readContent,
  structured,
  threadOf,
} from './read-content.ts';
import { directPlaceId, type Message, type Place, type Workspace } from './workspace.ts';

const updateTextMost = 4_000;
const viewBytesMost = 250_000;

const count = z.coerce.number().int().min(1).max(1000).optional();

const contentArguments = { text: z.string().optional(), blocks: structured, metadata: structured };

/** A place the app may post to: its channels, a direct message, or a person, whose direct message opens. */
const findTarget = (channel: string, workspace: Workspace): Place | Failure => {
  const person = workspace.findPerson(channel);
  const place = workspace.findPlace(person === undefined ? channel : directPlaceId(person.id));
  if (place === undefined) return fail('channel_not_found');
  if (workspace.isMember(place, workspace.app.botUserId)) return place;
  return fail(place.kind === 'channel' && place.channel.isPrivate ? 'channel_not_found' : 'not_in_channel');
};

const historyScope = (place: Place): string => {
  if (place.kind === 'direct') return 'im:history';
  return place.channel.isPrivate ? 'groups:history' : 'channels:history';
};
const readScope = (place: Place): string => {
  if (place.kind === 'direct') return 'im:read';
  return place.channel.isPrivate ? 'groups:read' : 'channels:read';
};

const missingScope = (needed: string, workspace: Workspace): Failure | undefined =>
  workspace.app.scopes.includes(needed)
    ? undefined
    : { ok: false, error: 'missing_scope', needed, provided: workspace.app.scopes.join(',') };

const ownMessage = (
  place: Place,
  ts: string,
  refusal: 'cant_update_message' | 'cant_delete_message',
  workspace: Workspace,
): Message | Failure => {
  const message = workspace.findMessage(place.id, ts);
  if (message === undefined || message.onlyFor !== undefined) return fail('message_not_found');
  return message.authorId === workspace.app.botUserId ? message : fail(refusal);
};

const page = (
  messages: readonly Message[],
  asked: { readonly limit?: number | undefined; readonly cursor?: string | undefined },
): { readonly items: readonly Message[]; readonly next: string } => {
  const from = asked.cursor === undefined || asked.cursor === '' ? 0 : Number(asked.cursor);
  const to = from + (asked.limit ?? 100);
  return { items: messages.slice(from, to), next: to < messages.length ? String(to) : '' };
};

const within = (asked: {
  readonly oldest?: string | undefined;
  readonly latest?: string | undefined;
  readonly inclusive?: boolean | undefined;
}) => {
  const oldest = Number(asked.oldest ?? 0);
  const latest = Number(asked.latest ?? Number.POSITIVE_INFINITY);
  return ({ ts }: Message) =>
    asked.inclusive === true
      ? Number(ts) >= oldest && Number(ts) <= latest
      : Number(ts) > oldest && Number(ts) < latest;
};

const readModal = (value: unknown) => {
  if (Buffer.byteLength(JSON.stringify(value ?? '')) > viewBytesMost) return fail('view_too_large');
  const accepted = acceptModal(value);
  return accepted.kind === 'refused' ? fail('invalid_arguments', ...accepted.messages) : accepted;
};

type Method = {
  readonly scope?: string;
  readonly run: (args: unknown, workspace: Workspace, baseUrl: string) => ApiAnswer;
};

const method = <T>(
  scope: string | undefined,
  schema: z.ZodType<T>,
  run: (args: T, workspace: Workspace, baseUrl: string) => ApiAnswer,
): Method => ({
  ...(scope === undefined ? {} : { scope }),
  run: (args, workspace, baseUrl) => {
    const parsed = schema.safeParse(args);
    if (parsed.success) return run(parsed.data, workspace, baseUrl);
    return fail(
      'invalid_arguments',
      ...parsed.error.issues.map(
        ({ message, path }) => `[ERROR] ${message} [json-pointer:/${path.join('/')}]`,
      ),
    );
  },
});

const messageAddress = z.object({ channel: z.string(), ts: z.string() });
const historyArguments = {
  channel: z.string(),
  oldest: z.string().optional(),
  latest: z.string().optional(),
  inclusive: flag,
  limit: count,
  cursor: z.string().optional(),
  include_all_metadata: flag,
};

const methods: Readonly<Record<string, Method>> = {
  'auth.test': method(undefined, z.object({}), (_args, workspace, baseUrl) => ({
    ok: true,
    url: `${baseUrl}/`,
    team: workspace.team.name,
    team_id: workspace.team.id,
    user: workspace.app.name.toLowerCase(),
    user_id: workspace.app.botUserId,
    bot_id: workspace.app.botId,
    is_enterprise_install: false,
  })),

  'chat.postMessage': method(
    'chat:write',
    z.object({ channel: z.string(), thread_ts: z.string().optional(), ...contentArguments }),
    (args, workspace) => {
      const place = findTarget(args.channel, workspace);
      if (isFailure(place)) return place;
      const content = readContent(args, workspace);
      if (isFailure(content)) return content;
      const thread = threadOf(place, args.thread_ts, workspace);
      if (isFailure(thread)) return thread;
      const message = workspace.post({
        placeId: place.id,
        authorId: workspace.app.botUserId,
        ...content,
        ...thread,
      });
      return {
        ok: true,
        channel: place.id,
        ts: message.ts,
        message: messageShape(message, workspace, true),
      };
    },
  ),

  'chat.postEphemeral': method(
    'chat:write',
    z.object({
      channel: z.string(),
      user: z.string(),
      thread_ts: z.string().optional(),
      text: z.string().optional(),
      blocks: structured,
    }),
    (args, workspace) => {
      const place = findTarget(args.channel, workspace);
      if (isFailure(place)) return place;
      if (workspace.findPerson(args.user) === undefined || !workspace.isMember(place, args.user))
        return fail('user_not_in_channel');
      const content = readContent(args, workspace);
      if (isFailure(content)) return content;
      const thread = threadOf(place, args.thread_ts, workspace);
      if (isFailure(thread)) return thread;
      const message = workspace.post({
        placeId: place.id,
        authorId: workspace.app.botUserId,
        onlyFor: args.user,
        ...content,
        ...thread,
      });
      return { ok: true, message_ts: message.ts };
    },
  ),

  'chat.update': method('chat:write', messageAddress.extend(contentArguments), (args, workspace) => {
    const place = findTarget(args.channel, workspace);
    if (isFailure(place)) return place;
    const message = ownMessage(place, args.ts, 'cant_update_message', workspace);
    if (isFailure(message)) return message;
    const content = readContent(args, workspace, updateTextMost);
    if (isFailure(content)) return content;
    const changed = workspace.changeMessage(message, { ...content, isEdit: false });
    return {
      ok: true,
      channel: place.id,
      ts: changed.ts,
      text: changed.text,
      message: messageShape(changed, workspace, true),
    };
  }),

  'chat.delete': method('chat:write', messageAddress, (args, workspace) => {
    const place = findTarget(args.channel, workspace);
    if (isFailure(place)) return place;
    const message = ownMessage(place, args.ts, 'cant_delete_message', workspace);
    if (isFailure(message)) return message;
    workspace.removeMessage(message);
    return { ok: true, channel: place.id, ts: message.ts };
  }),

  'chat.getPermalink': method(
    undefined,
    z.object({ channel: z.string(), message_ts: z.string() }),
    (args, workspace, baseUrl) => {
      const place = findTarget(args.channel, workspace);
      if (isFailure(place)) return place;
      const message = workspace.findMessage(place.id, args.message_ts);
      if (message === undefined || message.onlyFor !== undefined) return fail('message_not_found');
      return { ok: true, channel: place.id, permalink: permalinkOf(message, baseUrl) };
    },
  ),

  'conversations.open': method('im:write', z.object({ users: z.string() }), (args, workspace) => {
    const person = workspace.findPerson(args.users);
    return person === undefined
      ? fail('user_not_found')
      : { ok: true, channel: { id: directPlaceId(person.id) } };
  }),

  'conversations.info': method(undefined, z.object({ channel: z.string() }), (args, workspace) => {
    const place = workspace.findPlace(args.channel);
    if (place === undefined) return fail('channel_not_found');
    return missingScope(readScope(place), workspace) ?? { ok: true, channel: placeShape(place, workspace) };
  }),

  'conversations.history': method(undefined, z.object(historyArguments), (args, workspace) => {
    const place = findTarget(args.channel, workspace);
    if (isFailure(place)) return place;
    const lacking = missingScope(historyScope(place), workspace);
    if (lacking !== undefined) return lacking;
    const all = workspace
      .listMessages(place.id)
      .filter(({ onlyFor, threadTs, ts }) => onlyFor === undefined && (threadTs ?? ts) === ts)
      .filter(within(args))
      .reverse();
    const { items, next } = page(all, args);
    return {
      ok: true,
      messages: items.map((each) => messageShape(each, workspace, args.include_all_metadata === true)),
      has_more: next !== '',
      response_metadata: { next_cursor: next },
    };
  }),

  'conversations.replies': method(
    undefined,
    z.object({ ...historyArguments, ts: z.string() }),
    (args, workspace) => {
      const place = findTarget(args.channel, workspace);
      if (isFailure(place)) return place;
      const lacking = missingScope(historyScope(place), workspace);
      if (lacking !== undefined) return lacking;
      const asked = workspace.findMessage(place.id, args.ts);
      if (asked === undefined || asked.onlyFor !== undefined) return fail('thread_not_found');
      const parentTs = asked.threadTs ?? asked.ts;
      const inThread = workspace
        .listMessages(place.id)
        .filter(({ onlyFor, threadTs, ts }) => onlyFor === undefined && (threadTs ?? ts) === parentTs)
        .filter((each) => each.ts === parentTs || within(args)(each));
      const { items, next } = page(inThread, args);
      return {
        ok: true,
        messages: items.map((each) => messageShape(each, workspace, args.include_all_metadata === true)),
        has_more: next !== '',
        response_metadata: { next_cursor: next },
      };
    },
  ),

  'usergroups.list': method(
    'usergroups:read',
    z.object({ include_count: flag, include_disabled: flag, include_users: flag }),
    (args, workspace) => ({
      ok: true,
      usergroups: workspace.listUserGroups().map((group) => ({
        ...groupShape(group, workspace),
        ...(args.include_count === true ? { user_count: group.memberIds.length } : {}),
        ...(args.include_users === true ? { users: group.memberIds } : {}),
      })),
    }),
  ),

  'usergroups.users.list': method(
    'usergroups:read',
    z.object({ usergroup: z.string() }),
    (args, workspace) => {
      const group = workspace.findUserGroup(args.usergroup);
      return group === undefined ? fail('no_such_subteam') : { ok: true, users: group.memberIds };
    },
  ),

  'reactions.add': method(
    'reactions:write',
    z.object({ channel: z.string(), timestamp: z.string(), name: z.string() }),
    (args, workspace) => {
      const place = findTarget(args.channel, workspace);
      if (isFailure(place)) return place;
      const message = workspace.findMessage(place.id, args.timestamp);
      if (message === undefined || message.onlyFor !== undefined) return fail('message_not_found');
      if (!/^[a-z0-9_+'-]+$/.test(args.name)) return fail('invalid_name');
      return workspace.react(message, args.name, workspace.app.botUserId)
        ? { ok: true }
        : fail('already_reacted');
    },
  ),

  'views.open': method(
    undefined,
    z.object({ trigger_id: z.string(), view: structured }),
    (args, workspace) => {
      const modal = readModal(args.view);
      if (isFailure(modal)) return modal;
      const trigger = workspace.exchangeTrigger(args.trigger_id);
      if (trigger.kind === 'refused') return fail(trigger.error);
      return {
        ok: true,
        view: viewShape(workspace.openModal(trigger.userId, modal.value), workspace),
      };
    },
  ),

  'views.push': method(
    undefined,
    z.object({ trigger_id: z.string(), view: structured }),
    (args, workspace) => {
      const modal = readModal(args.view);
      if (isFailure(modal)) return modal;
      const trigger = workspace.exchangeTrigger(args.trigger_id);
      if (trigger.kind === 'refused') return fail(trigger.error);
      const pushed = workspace.pushModal(trigger.userId, modal.value);
      return pushed === undefined
        ? fail('push_limit_reached')
        : { ok: true, view: viewShape(pushed, workspace) };
    },
  ),

  'views.update': method(
    undefined,
    z.object({
      view_id: z.string().optional(),
      external_id: z.string().optional(),
      hash: z.string().optional(),
      view: structured,
    }),
    (args, workspace) => {
      const modal = readModal(args.view);
      if (isFailure(modal)) return modal;
      const view =
        args.view_id === undefined
          ? workspace.findViewByExternalId(args.external_id ?? '')
          : workspace.findView(args.view_id);
      if (view === undefined || view.content.type !== 'modal') return fail('not_found');
      if (args.hash !== undefined && args.hash !== view.hash) return fail('hash_conflict');
      return { ok: true, view: viewShape(workspace.changeView(view, modal.value), workspace) };
    },
  ),

  'views.publish': method(
    undefined,
    z.object({ user_id: z.string(), hash: z.string().optional(), view: structured }),
    (args, workspace) => {
      if (Buffer.byteLength(JSON.stringify(args.view ?? '')) > viewBytesMost) return fail('view_too_large');
      const home = acceptHome(args.view);
      if (home.kind === 'refused') return fail('invalid_arguments', ...home.messages);
      if (workspace.findPerson(args.user_id) === undefined) return fail('user_not_found');
      if (!workspace.app.hasHome) return fail('not_enabled');
      const standing = workspace.homeOf(args.user_id);
      if (args.hash !== undefined && standing !== undefined && args.hash !== standing.hash)
        return fail('hash_conflict');
      return { ok: true, view: viewShape(workspace.publishHome(args.user_id, home.value), workspace) };
    },
  ),

  'files.getUploadURLExternal': method(
    'files:write',
    z.object({ filename: z.string().min(1), length: z.coerce.number().int().min(1) }),
    (args, workspace, baseUrl) => {
      const file = workspace.addFile(args.filename);
      return { ok: true, file_id: file.id, upload_url: `${baseUrl}/upload/${file.id}` };
    },
  ),

  'files.completeUploadExternal': method(
    'files:write',
    z.object({
      files: structured,
      channel_id: z.string().optional(),
      thread_ts: z.string().optional(),
      initial_comment: z.string().optional(),
    }),
    (args, workspace) => {
      const asked = z
        .array(z.looseObject({ id: z.string() }))
        .min(1)
        .safeParse(args.files);
      if (!asked.success) return fail('invalid_arguments');
      const found = asked.data.flatMap(({ id }) => workspace.findFile(id) ?? []);
      if (found.length !== asked.data.length) return fail('file_not_found');
      if (found.some(({ bytes }) => bytes === undefined)) return fail('file_not_uploaded');
      const place = args.channel_id === undefined ? undefined : findTarget(args.channel_id, workspace);
      if (place !== undefined && isFailure(place)) return place;
      const thread = place === undefined ? {} : threadOf(place, args.thread_ts, workspace);
      if (isFailure(thread)) return thread;
      for (const file of found) workspace.changeFile({ ...file, isComplete: true });
      if (place !== undefined)
        workspace.post({
          placeId: place.id,
          authorId: workspace.app.botUserId,
          text: args.initial_comment ?? '',
          fileIds: found.map(({ id }) => id),
          ...thread,
        });
      return { ok: true, files: found.map(({ id, name }) => ({ id, title: name })) };
    },
  ),
};

/** The address of a message, which the page opens at that message. */
const permalinkOf = (message: Message, baseUrl: string): string => {
  const address = `${baseUrl}/archives/${message.placeId}/p${message.ts.replace('.', '')}`;
  return message.threadTs === undefined || message.threadTs === message.ts
    ? address
    : `${address}?thread_ts=${message.threadTs}&cid=${message.placeId}`;
};

/**
 * Answers one Web API call. `args` is the decoded body without its token; structured arguments may be JSON
 * strings. The answer is the platform's JSON, errors by the platform's names.
 */
export const answerApiCall = (
  call: { readonly method: string; readonly args: unknown; readonly token: string | undefined },
  workspace: Workspace,
  baseUrl: string,
): ApiAnswer => {
  const found = Object.hasOwn(methods, call.method) ? methods[call.method] : undefined;
  if (found === undefined) return { ok: false, error: 'unknown_method', req_method: call.method };
  if (call.token === undefined || call.token === '') return fail('not_authed');
  if (call.token !== workspace.app.botToken) return fail('invalid_auth');
  const lacking = found.scope === undefined ? undefined : missingScope(found.scope, workspace);
  return lacking ?? found.run(call.args, workspace, baseUrl);
};
