import { randomBytes } from 'node:crypto';
import type { AcceptedBlock, AcceptedHome, AcceptedModal } from './accepted-blocks.ts';
import type { LocalApp } from './local-app.ts';

type Person = {
  readonly id: string;
  readonly name: string;
  /** What the person does in the studio, shown beside the name. */
  readonly role: string;
  readonly timeZone: string;
};

type Channel = {
  readonly id: string;
  readonly name: string;
  readonly purpose: string;
  readonly memberIds: readonly string[];
  readonly isPrivate: boolean;
};

export type UserGroup = {
  readonly id: string;
  readonly handle: string;
  readonly memberIds: readonly string[];
};

/** A channel, or the direct message between one person and the app. */
export type Place =
  | { readonly kind: 'channel'; readonly id: string; readonly channel: Channel }
  | { readonly kind: 'direct'; readonly id: string; readonly personId: string };

export type MessageMetadata = {
  readonly event_type: string;
  readonly event_payload: Readonly<Record<string, unknown>>;
};

export type Message = {
  readonly placeId: string;
  readonly ts: string;
  readonly threadTs?: string;
  readonly authorId: string;
  readonly text: string;
  readonly blocks?: readonly AcceptedBlock[];
  readonly metadata?: MessageMetadata;
  readonly editedTs?: string;
  readonly clientMessageId?: string;
  readonly fileIds?: readonly string[];
  /** An ephemeral message's one reader. */
  readonly onlyFor?: string;
  readonly reactions: Readonly<Record<string, readonly string[]>>;
};

export type OpenView = {
  readonly id: string;
  readonly userId: string;
  readonly rootId: string;
  readonly previousId?: string;
  readonly hash: string;
  readonly content: AcceptedModal | AcceptedHome;
};

export type StoredFile = {
  readonly id: string;
  readonly name: string;
  readonly bytes?: Buffer;
  readonly isComplete: boolean;
};

export type ResponseGrant = {
  readonly userId: string;
  readonly placeId: string;
  /** The message a click came from; a command has none. */
  readonly messageTs?: string;
};

export type Change =
  | { readonly kind: 'message-posted'; readonly message: Message }
  | { readonly kind: 'message-changed'; readonly before: Message; readonly after: Message }
  | { readonly kind: 'message-deleted'; readonly message: Message }
  | { readonly kind: 'group-changed'; readonly before: UserGroup; readonly after: UserGroup }
  | { readonly kind: 'other' };

export type WorkspaceConfig = {
  readonly team: { readonly id: string; readonly name: string; readonly domain: string };
  readonly people: readonly Person[];
  readonly channels: readonly Channel[];
  readonly userGroups?: readonly UserGroup[];
  readonly app: LocalApp;
  /** The domain's now, ISO in UTC: message stamps come from it. */
  readonly now: () => string;
  /** Real milliseconds: triggers and response addresses expire by it. */
  readonly realNow?: () => number;
};

export type Workspace = ReturnType<typeof createWorkspace>;

const triggerLifeMs = 3_000;
const responseLifeMs = 30 * 60_000;
const responseUses = 5;
const viewsInAStack = 3;

const token = (bytes: number) => randomBytes(bytes).toString('hex');

/** The place of a person's direct messages with the app. */
export const directPlaceId = (personId: string): string => `D${personId.slice(1)}`;

/** The workspace in memory: people, places, messages, views, triggers and files. */
export const createWorkspace = (config: WorkspaceConfig) => {
  const { team, people, channels, app, now } = config;
  const realNow = config.realNow ?? Date.now;
  const listeners: ((change: Change) => void)[] = [];
  const messages = new Map<string, Map<string, Message>>();
  const modals = new Map<string, readonly OpenView[]>();
  const homes = new Map<string, OpenView>();
  const triggers = new Map<string, { readonly userId: string; readonly atMs: number; used: boolean }>();
  const responses = new Map<string, { readonly grant: ResponseGrant; readonly atMs: number; uses: number }>();
  const files = new Map<string, StoredFile>();
  const readUpTo = new Map<string, string>();
  const userGroups = new Map((config.userGroups ?? []).map((group) => [group.id, group]));
  let lastMicros = 0;

  const tell = (change: Change) => {
    for (const listener of listeners) listener(change);
  };

  const nextTs = (): string => {
    lastMicros = Math.max(Date.parse(now()) * 1000 + 100, lastMicros + 100);
    return `${Math.floor(lastMicros / 1_000_000)}.${String(lastMicros % 1_000_000).padStart(6, '0')}`;
  };
  const newHash = () => `${Math.floor(realNow() / 1000)}.${token(4)}`;
  const readKey = (userId: string, placeId: string, threadTs = '') => `${userId}/${placeId}/${threadTs}`;

  const places: readonly Place[] = [
    ...channels.map((channel): Place => ({ kind: 'channel', id: channel.id, channel })),
    ...people.map((each): Place => ({ kind: 'direct', id: directPlaceId(each.id), personId: each.id })),
  ];
  const findPlace = (placeId: string) => places.find(({ id }) => id === placeId);
  const isMember = (place: Place, userId: string) =>
    place.kind === 'channel'
      ? place.channel.memberIds.includes(userId)
      : userId === app.botUserId || userId === place.personId;

  const messagesIn = (placeId: string): Map<string, Message> => {
    const known = messages.get(placeId) ?? new Map<string, Message>();
    messages.set(placeId, known);
    return known;
  };
  const listMessages = (placeId: string): readonly Message[] => [...messagesIn(placeId).values()];
  const keep = (message: Message) => messagesIn(message.placeId).set(message.ts, message);
  /** What one person sees of a place: nothing where they are not, and nobody else's ephemeral messages. */
  const visibleTo = (userId: string, placeId: string): readonly Message[] => {
    const place = findPlace(placeId);
    if (place === undefined || !isMember(place, userId)) return [];
    return listMessages(placeId).filter(({ onlyFor }) => onlyFor === undefined || onlyFor === userId);
  };

  const replaceView = (changed: OpenView) => {
    modals.set(
      changed.userId,
      (modals.get(changed.userId) ?? []).map((each) => (each.id === changed.id ? changed : each)),
    );
  };

  return {
    team,
    people,
    channels,
    app,
    now,
    realNow,
    nextTs,
    findPerson: (id: string) => people.find((person) => person.id === id),
    listUserGroups: (): readonly UserGroup[] => [...userGroups.values()],
    findUserGroup: (id: string) => userGroups.get(id),
    /** False where there is no such group. */
    setUserGroup: (id: string, memberIds: readonly string[]): boolean => {
      const before = userGroups.get(id);
      if (before === undefined) return false;
      const after = { ...before, memberIds };
      userGroups.set(id, after);
      tell({ kind: 'group-changed', before, after });
      return true;
    },
    findPlace,
    isMember,
    placesOf: (userId: string) => places.filter((place) => isMember(place, userId)),
    onChange: (listener: (change: Change) => void) => {
      listeners.push(listener);
    },

    post: (draft: Omit<Message, 'ts' | 'reactions'>): Message => {
      const message: Message = { ...draft, ts: nextTs(), reactions: {} };
      keep(message);
      tell({ kind: 'message-posted', message });
      return message;
    },
    findMessage: (placeId: string, ts: string) => messagesIn(placeId).get(ts),
    listMessages,
    visibleTo,
    /** `blocks` left out removes the message's blocks, as an update of the text alone does there. */
    changeMessage: (
      before: Message,
      change: {
        readonly text: string;
        readonly blocks?: readonly AcceptedBlock[];
        readonly metadata?: MessageMetadata;
        readonly isEdit: boolean;
      },
    ): Message => {
      const { blocks: _blocks, ...kept } = before;
      const after: Message = {
        ...kept,
        text: change.text,
        ...(change.blocks === undefined ? {} : { blocks: change.blocks }),
        ...(change.metadata === undefined ? {} : { metadata: change.metadata }),
        ...(change.isEdit ? { editedTs: nextTs() } : {}),
      };
      keep(after);
      tell({ kind: 'message-changed', before, after });
      return after;
    },
    removeMessage: (message: Message) => {
      messagesIn(message.placeId).delete(message.ts);
      tell({ kind: 'message-deleted', message });
    },
    /** False when this person's reaction stands already. */
    react: (message: Message, name: string, userId: string): boolean => {
      const those = message.reactions[name] ?? [];
      if (those.includes(userId)) return false;
      keep({ ...message, reactions: { ...message.reactions, [name]: [...those, userId] } });
      tell({ kind: 'other' });
      return true;
    },

    issueTrigger: (userId: string): string => {
      const id = `${realNow()}.${team.id.slice(1)}.${token(16)}`;
      triggers.set(id, { userId, atMs: realNow(), used: false });
      return id;
    },
    exchangeTrigger: (
      id: string,
    ):
      | { readonly kind: 'ok'; readonly userId: string }
      | {
          readonly kind: 'refused';
          readonly error: 'invalid_trigger_id' | 'exchanged_trigger_id' | 'expired_trigger_id';
        } => {
      const trigger = triggers.get(id);
      if (trigger === undefined) return { kind: 'refused', error: 'invalid_trigger_id' };
      if (trigger.used) return { kind: 'refused', error: 'exchanged_trigger_id' };
      if (realNow() - trigger.atMs > triggerLifeMs) return { kind: 'refused', error: 'expired_trigger_id' };
      trigger.used = true;
      return { kind: 'ok', userId: trigger.userId };
    },

    issueResponse: (grant: ResponseGrant): string => {
      const id = token(12);
      responses.set(id, { grant, atMs: realNow(), uses: 0 });
      return id;
    },
    useResponse: (
      id: string,
    ):
      | { readonly kind: 'ok'; readonly grant: ResponseGrant }
      | { readonly kind: 'refused'; readonly error: 'expired_url' | 'used_url' } => {
      const response = responses.get(id);
      if (response === undefined || realNow() - response.atMs > responseLifeMs)
        return { kind: 'refused', error: 'expired_url' };
      if (response.uses >= responseUses) return { kind: 'refused', error: 'used_url' };
      response.uses += 1;
      return { kind: 'ok', grant: response.grant };
    },

    modalsOf: (userId: string): readonly OpenView[] => modals.get(userId) ?? [],
    findView: (viewId: string): OpenView | undefined =>
      [...[...modals.values()].flat(), ...homes.values()].find(({ id }) => id === viewId),
    findViewByExternalId: (externalId: string): OpenView | undefined =>
      [...modals.values()].flat().find(({ content }) => content.external_id === externalId),
    openModal: (userId: string, content: AcceptedModal): OpenView => {
      const id = `V${token(5).toUpperCase()}`;
      const view: OpenView = { id, userId, rootId: id, hash: newHash(), content };
      modals.set(userId, [view]);
      tell({ kind: 'other' });
      return view;
    },
    /** Undefined when the stack is full or empty. */
    pushModal: (userId: string, content: AcceptedModal): OpenView | undefined => {
      const stack = modals.get(userId) ?? [];
      const below = stack.at(-1);
      if (below === undefined || stack.length >= viewsInAStack) return undefined;
      const view: OpenView = {
        id: `V${token(5).toUpperCase()}`,
        userId,
        rootId: below.rootId,
        previousId: below.id,
        hash: newHash(),
        content,
      };
      modals.set(userId, [...stack, view]);
      tell({ kind: 'other' });
      return view;
    },
    changeView: (view: OpenView, content: AcceptedModal): OpenView => {
      const changed: OpenView = { ...view, hash: newHash(), content };
      replaceView(changed);
      tell({ kind: 'other' });
      return changed;
    },
    closeTopModal: (userId: string) => {
      modals.set(userId, (modals.get(userId) ?? []).slice(0, -1));
      tell({ kind: 'other' });
    },
    closeAllModals: (userId: string) => {
      modals.delete(userId);
      tell({ kind: 'other' });
    },
    homeOf: (userId: string): OpenView | undefined => homes.get(userId),
    publishHome: (userId: string, content: AcceptedHome): OpenView => {
      const id = homes.get(userId)?.id ?? `V${token(5).toUpperCase()}`;
      const view: OpenView = { id, userId, rootId: id, hash: newHash(), content };
      homes.set(userId, view);
      tell({ kind: 'other' });
      return view;
    },

    addFile: (name: string): StoredFile => {
      const file: StoredFile = { id: `F${token(5).toUpperCase()}`, name, isComplete: false };
      files.set(file.id, file);
      return file;
    },
    findFile: (id: string) => files.get(id),
    changeFile: (file: StoredFile) => {
      files.set(file.id, file);
    },

    /** A place as a whole, or one thread in it. */
    markRead: (userId: string, placeId: string, threadTs?: string) => {
      const last = visibleTo(userId, placeId)
        .filter((message) => threadTs === undefined || message.threadTs === threadTs)
        .at(-1)?.ts;
      const key = readKey(userId, placeId, threadTs);
      if (last !== undefined && readUpTo.get(key) !== last) {
        readUpTo.set(key, last);
        tell({ kind: 'other' });
      }
    },
    /** How many replies of others stand in each thread since this person last had it open. */
    newRepliesByThread: (userId: string, placeId: string): ReadonlyMap<string, number> => {
      const counts = new Map<string, number>();
      for (const { ts, threadTs, authorId } of visibleTo(userId, placeId)) {
        if (threadTs === undefined || threadTs === ts || authorId === userId) continue;
        const isNew = ts > (readUpTo.get(readKey(userId, placeId, threadTs)) ?? '');
        if (isNew) counts.set(threadTs, (counts.get(threadTs) ?? 0) + 1);
      }
      return counts;
    },
    markAllRead: () => {
      for (const person of people)
        for (const place of places) {
          const last = visibleTo(person.id, place.id).at(-1)?.ts;
          if (last !== undefined) readUpTo.set(readKey(person.id, place.id), last);
        }
      tell({ kind: 'other' });
    },
    unreadCount: (userId: string, placeId: string): number => {
      const upTo = readUpTo.get(readKey(userId, placeId)) ?? '';
      return visibleTo(userId, placeId).filter(({ ts, authorId }) => ts > upTo && authorId !== userId).length;
    },

    /** Forgets all messages, views, triggers and files; people, places and the app stay, groups are as at first. */
    reset: () => {
      for (const group of config.userGroups ?? []) userGroups.set(group.id, group);
      for (const kept of [messages, modals, homes, triggers, responses, files, readUpTo]) kept.clear();
      lastMicros = 0;
      tell({ kind: 'other' });
    },
  };
};
