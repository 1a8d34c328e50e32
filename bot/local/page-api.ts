import { DateTime } from 'luxon';
import { z } from 'zod';
import { type Deliveries, type GestureResult, noticeAuthorId } from './deliveries-to-app.ts';
import type { LocalClock } from './local-clock.ts';
import type { PageState, ShownClock, ShownMessage, ShownModal } from './page-answers.ts';
import type { Traffic } from './traffic.ts';
import { decodeTyped, encodeTyped } from './typed-text.ts';
import { directPlaceId, type Message, type Workspace } from './workspace.ts';

/** What the page may ask for, each request parsed; the answer is JSON. */
export type PageApi = {
  readonly get: (path: string, query: URLSearchParams) => Promise<unknown>;
  readonly post: (path: string, body: unknown) => Promise<unknown>;
};

const typedMost = 12_000;
const fieldValue = z.union([z.string(), z.array(z.string())]);
const formValues = z.record(z.string(), z.record(z.string(), fieldValue));

const requests = {
  send: z.strictObject({
    as: z.string(),
    place: z.string(),
    text: z.string(),
    threadTs: z.string().optional(),
  }),
  edit: z.strictObject({ as: z.string(), place: z.string(), ts: z.string(), text: z.string() }),
  act: z.strictObject({
    as: z.string(),
    on: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('message'), place: z.string(), ts: z.string() }),
      z.strictObject({ kind: z.literal('view'), id: z.string() }),
    ]),
    blockId: z.string(),
    actionId: z.string(),
    value: fieldValue.optional(),
    values: formValues,
  }),
  submit: z.strictObject({ as: z.string(), view: z.string(), values: formValues }),
  close: z.strictObject({ as: z.string(), view: z.string() }),
  shortcut: z.strictObject({ as: z.string(), place: z.string(), ts: z.string(), callbackId: z.string() }),
  read: z.strictObject({ as: z.string(), place: z.string(), threadTs: z.string().optional() }),
  'open-app': z.strictObject({ as: z.string(), tab: z.enum(['home', 'messages']) }),
  group: z.strictObject({ group: z.string(), members: z.array(z.string()) }),
  clock: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('minutes'),
      minutes: z
        .int()
        .min(1)
        .max(60 * 24 * 366),
    }),
    z.strictObject({ kind: z.literal('next-due') }),
    z.strictObject({ kind: z.literal('monday-seven') }),
    z.strictObject({
      kind: z.literal('wall-time'),
      wallTime: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/),
    }),
  ]),
} as const;

const done: GestureResult = { kind: 'done' };
const failed = (message: string): GestureResult => ({ kind: 'failed', message });
const gone = failed('That message is gone.');

/** The page's side of the workspace: what one person sees, and what that person does. */
export const createPageApi = (parts: {
  readonly workspace: Workspace;
  readonly deliveries: Deliveries;
  readonly traffic: Traffic;
  readonly clock: LocalClock | undefined;
  readonly timeZone: string;
  readonly isAppConnected: () => boolean;
  /** Undefined while there is no way back to the start. */
  readonly reset: () => (() => Promise<void>) | undefined;
}): PageApi => {
  const { workspace, deliveries, clock, timeZone } = parts;
  const { app } = workspace;

  const seenMessage = (userId: string, placeId: string, ts: string): Message | undefined =>
    workspace.visibleTo(userId, placeId).find((message) => message.ts === ts);
  const placeOf = (userId: string, placeId: string) =>
    workspace.placesOf(userId).find(({ id }) => id === placeId);

  const showMessages = (userId: string, placeId: string): readonly ShownMessage[] => {
    const newReplies = workspace.newRepliesByThread(userId, placeId);
    return workspace
      .visibleTo(userId, placeId)
      .map((message) => showMessage(message, userId, newReplies.get(message.ts) ?? 0));
  };

  const showMessage = (message: Message, userId: string, newReplies: number): ShownMessage => {
    const person = workspace.findPerson(message.authorId);
    const isMine = message.authorId === userId;
    return {
      ts: message.ts,
      ...(message.threadTs === undefined ? {} : { threadTs: message.threadTs }),
      authorId: message.authorId,
      authorName: person?.name ?? (message.authorId === noticeAuthorId ? 'Workspace' : app.name),
      authorKind:
        person === undefined ? (message.authorId === noticeAuthorId ? 'workspace' : 'app') : 'person',
      isMine,
      isOnlyForMe: message.onlyFor !== undefined,
      isEdited: message.editedTs !== undefined,
      text: message.text,
      ...(isMine ? { typed: decodeTyped(message.text, workspace) } : {}),
      ...(message.blocks === undefined ? {} : { blocks: message.blocks }),
      files: (message.fileIds ?? []).flatMap((id) => workspace.findFile(id) ?? []),
      reactions: Object.entries(message.reactions).map(([name, users]) => ({ name, count: users.length })),
      newReplies,
    };
  };

  const showClock = async (): Promise<ShownClock | undefined> => {
    if (clock === undefined) return undefined;
    const nextDueAt = await clock.nextDueAt();
    return { now: clock.now(), timeZone, ...(nextDueAt === undefined ? {} : { nextDueAt }) };
  };

  const showModal = (userId: string): ShownModal | undefined => {
    const stack = workspace.modalsOf(userId);
    const top = stack.at(-1);
    if (top === undefined || top.content.type !== 'modal') return undefined;
    const { title, submit, close, blocks } = top.content;
    return {
      id: top.id,
      hash: top.hash,
      blocks,
      title: title.text,
      ...(submit === undefined ? {} : { submit: submit.text }),
      close: close?.text ?? (stack.length > 1 ? 'Back' : 'Cancel'),
      depth: stack.length,
    };
  };

  const showState = async (userId: string): Promise<PageState | undefined> => {
    const unreadOf = (personId: string) =>
      workspace.placesOf(personId).reduce((sum, place) => sum + workspace.unreadCount(personId, place.id), 0);
    const people = workspace.people.map(({ id, name, role }) => ({ id, name, role, unread: unreadOf(id) }));
    const me = people.find(({ id }) => id === userId) ?? people[0];
    if (me === undefined) return undefined;
    const home = workspace.homeOf(me.id);
    const modal = showModal(me.id);
    const shownClock = await showClock();
    return {
      teamName: workspace.team.name,
      appName: app.name,
      appUserId: app.botUserId,
      isAppConnected: parts.isAppConnected(),
      canReset: parts.reset() !== undefined,
      me,
      people,
      places: workspace.placesOf(me.id).map((place) => ({
        id: place.id,
        kind: place.kind,
        name: place.kind === 'channel' ? place.channel.name : app.name,
        purpose: place.kind === 'channel' ? place.channel.purpose : `Between you and ${app.name}`,
        unread: workspace.unreadCount(me.id, place.id),
      })),
      groups: workspace.listUserGroups(),
      hasHome: app.hasHome,
      ...(home === undefined ? {} : { home: { id: home.id, hash: home.hash, blocks: home.content.blocks } }),
      ...(modal === undefined ? {} : { modal }),
      commands: app.commands,
      messageShortcuts: app.shortcuts.filter(({ kind }) => kind === 'message'),
      ...(shownClock === undefined ? {} : { clock: shownClock }),
    };
  };

  const send = (asked: z.infer<typeof requests.send>): Promise<GestureResult> | GestureResult => {
    const place = placeOf(asked.as, asked.place);
    if (place === undefined) return failed('You are not in this place.');
    const text = asked.text.trim();
    if (text === '') return failed('There is nothing to send.');
    if (text.length > typedMost)
      return failed(`One message takes ${typedMost} characters; this has ${text.length}. Send it in parts.`);
    const command = /^(\/[\w-]+)(?:\s+([\s\S]*))?$/.exec(text);
    if (command !== null) {
      if (asked.threadTs !== undefined)
        return failed('Commands do not work in threads. Use a button here, or the command in the main line.');
      const declared = app.commands.find((each) => each.command === command[1]);
      const words = command[2] ?? '';
      return deliveries.runCommand({
        userId: asked.as,
        place,
        command: command[1] ?? '',
        text:
          declared?.shouldEscape === true
            ? encodeTyped(words, workspace)
            : encodeTyped(words, { people: [], channels: [], app }),
      });
    }
    if (place.kind === 'direct' && !app.acceptsDirectMessages)
      return failed(`${app.name} takes no direct messages: its manifest has the messages tab off.`);
    workspace.post({
      placeId: place.id,
      authorId: asked.as,
      text: encodeTyped(text, workspace),
      clientMessageId: crypto.randomUUID(),
      ...(asked.threadTs === undefined ? {} : { threadTs: asked.threadTs }),
    });
    workspace.markRead(asked.as, place.id);
    return done;
  };

  const edit = (asked: z.infer<typeof requests.edit>): GestureResult => {
    const message = seenMessage(asked.as, asked.place, asked.ts);
    if (message === undefined) return gone;
    if (message.authorId !== asked.as) return failed('Only its author can edit a message.');
    const text = asked.text.trim();
    if (text === '') return failed('A message needs a text.');
    workspace.changeMessage(message, { text: encodeTyped(text, workspace), isEdit: true });
    return done;
  };

  const act = (asked: z.infer<typeof requests.act>): Promise<GestureResult> | GestureResult => {
    const gesture = {
      userId: asked.as,
      blockId: asked.blockId,
      actionId: asked.actionId,
      value: asked.value,
      values: asked.values,
    };
    if (asked.on.kind === 'message') {
      const message = seenMessage(asked.as, asked.on.place, asked.on.ts);
      return message === undefined ? gone : deliveries.actOnMessage(message, gesture);
    }
    const view = workspace.findView(asked.on.id);
    return view?.userId === asked.as ? deliveries.actOnView(view, gesture) : failed('This form is closed.');
  };

  const ownView = (userId: string, viewId: string) => {
    const view = workspace.modalsOf(userId).at(-1);
    return view?.id === viewId ? view : undefined;
  };

  const moveClock = async (asked: z.infer<typeof requests.clock>): Promise<GestureResult> => {
    if (clock === undefined) return failed('This workspace runs on real time.');
    const now = DateTime.fromISO(clock.now(), { zone: timeZone });
    const target = await clockTarget(asked, now, clock);
    if (target === undefined) return failed('Nothing is due.');
    if (target <= now.toMillis()) return failed('The clock moves forward only. Reset starts again.');
    await clock.moveTo(new Date(target).toISOString());
    await deliveries.idle();
    return done;
  };

  const perform = async (path: string, body: unknown): Promise<GestureResult | undefined> => {
    switch (path) {
      case 'send':
        return send(requests.send.parse(body));
      case 'edit':
        return edit(requests.edit.parse(body));
      case 'act':
        return act(requests.act.parse(body));
      case 'submit': {
        const asked = requests.submit.parse(body);
        const view = ownView(asked.as, asked.view);
        return view === undefined
          ? failed('This form is closed.')
          : deliveries.submitView(view, asked.values);
      }
      case 'close': {
        const asked = requests.close.parse(body);
        const view = ownView(asked.as, asked.view);
        return view === undefined ? done : deliveries.closeView(view);
      }
      case 'shortcut': {
        const asked = requests.shortcut.parse(body);
        const message = seenMessage(asked.as, asked.place, asked.ts);
        return message === undefined || message.onlyFor !== undefined
          ? gone
          : deliveries.runMessageShortcut(message, asked.as, asked.callbackId);
      }
      case 'read': {
        const asked = requests.read.parse(body);
        if (placeOf(asked.as, asked.place) !== undefined)
          workspace.markRead(asked.as, asked.place, asked.threadTs);
        return done;
      }
      case 'open-app': {
        const asked = requests['open-app'].parse(body);
        if (workspace.findPerson(asked.as) === undefined) return failed('Nobody here has that name.');
        deliveries.openApp(asked.as, directPlaceId(asked.as), asked.tab);
        return done;
      }
      case 'group': {
        const asked = requests.group.parse(body);
        const known = asked.members.every((id) => workspace.findPerson(id) !== undefined);
        if (!known || !workspace.setUserGroup(asked.group, asked.members))
          return failed('There is no such group or person.');
        await deliveries.idle();
        return done;
      }
      case 'clock':
        return moveClock(requests.clock.parse(body));
      case 'reset': {
        const reset = parts.reset();
        if (reset === undefined)
          return failed(`${app.name} keeps its data here: there is no way back to the start.`);
        await reset();
        return done;
      }
      default:
        return undefined;
    }
  };

  return {
    get: async (path, query) => {
      const userId = query.get('as') ?? '';
      switch (path) {
        case 'state':
          return showState(userId);
        case 'messages': {
          const placeId = query.get('place') ?? '';
          return placeOf(userId, placeId) === undefined ? undefined : showMessages(userId, placeId);
        }
        case 'traffic':
          return parts.traffic.list().map(({ sent: _sent, answered: _answered, ...line }) => line);
        case 'exchange':
          return parts.traffic.list().find(({ id }) => String(id) === query.get('id'));
        default:
          return undefined;
      }
    },
    post: perform,
  };
};

const clockTarget = async (
  asked: z.infer<typeof requests.clock>,
  now: DateTime,
  clock: LocalClock,
): Promise<number | undefined> => {
  switch (asked.kind) {
    case 'minutes':
      return now.plus({ minutes: asked.minutes }).toMillis();
    case 'next-due': {
      const due = await clock.nextDueAt();
      return due === undefined ? undefined : Date.parse(due);
    }
    case 'monday-seven': {
      const thisWeek = now.startOf('week').set({ hour: 7 });
      return (thisWeek > now ? thisWeek : thisWeek.plus({ weeks: 1 })).toMillis();
    }
    case 'wall-time': {
      const [first] = DateTime.fromISO(asked.wallTime, { zone: now.zone }).getPossibleOffsets();
      return first?.toMillis();
    }
  }
};
