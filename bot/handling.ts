import type { Block, HomeView, KnownBlock, ModalView } from '@slack/types';
import type { Catalogue } from '../domain/catalogue/catalogue.ts';
import type { NoticePayload, Stores, StudioId } from '../domain/ports.ts';
import type { Settings } from '../domain/settings.ts';
import type { Words } from './words/words.ts';

/**
 * A message as the workspace shows it; `text` alone tells a notification the whole story. One with a file is
 * posted as that file; where it can't be, its text stands in its place.
 */
export type Message = Pick<NoticePayload, 'file'> & {
  readonly text: string;
  readonly blocks?: readonly (KnownBlock | Block)[];
};

/** What a handler works with: one transaction's stores, and the time and ids as arguments. */
export type Desk = {
  readonly studioId: StudioId;
  readonly stores: Stores;
  readonly settings: Settings;
  readonly catalogue: Catalogue;
  readonly words: Words;
  /** ISO 8601 instant. */
  readonly now: string;
  readonly newId: () => string;
  /** The workspace's own address, under which its messages have theirs. */
  readonly workspaceUrl?: string;
};

/** What goes back in the ack of a submitted modal. */
export type ViewAck =
  | { readonly kind: 'errors'; readonly byBlock: Readonly<Record<string, string>> }
  | { readonly kind: 'update'; readonly view: ModalView }
  | { readonly kind: 'close' };

/**
 * Best-effort calls made after the ack. Whatever must arrive is enqueued as a notice in the transaction
 * instead.
 */
export type Answer =
  | { readonly kind: 'open view'; readonly triggerId: string; readonly view: ModalView }
  | { readonly kind: 'update view'; readonly viewId: string; readonly view: ModalView }
  | { readonly kind: 'publish home'; readonly personId: string; readonly view: HomeView }
  /** Seen by the asker alone, where they are. */
  | { readonly kind: 'only to you'; readonly message: Message }
  /**
   * The same, once the notice of that key is posted, with a link to it; nothing where that is in the same place.
   * `place`: where the person is, if the request doesn't say.
   */
  | {
      readonly kind: 'link to you';
      readonly noticeKey: string;
      readonly place?: string;
      readonly message: (link: string) => Message;
    }
  /** Reads the workspace's user groups and who is in them, then goes on with what was read. */
  | { readonly kind: 'read groups'; readonly next: (read: GroupsRead) => readonly Answer[] };

/** A user group of the workspace. */
export type UserGroup = {
  readonly id: string;
  /** What people type behind the `@`. */
  readonly handle: string;
  readonly people: number;
};

/** What the workspace said of its user groups; `gone`: groups that should give a role and are not there. */
export type GroupsRead =
  | { readonly kind: 'read'; readonly groups: readonly UserGroup[]; readonly gone: readonly string[] }
  /** `code` is the platform's: `missing_scope` … `stays`: until someone acts; else the next reading may do. */
  | { readonly kind: 'not read'; readonly code: string; readonly stays: boolean };

export type Reaction = { readonly ack?: ViewAck; readonly answers: readonly Answer[] };

export const noReaction: Reaction = { answers: [] };

export type CommandRequest = {
  readonly kind: 'command';
  readonly personId: string;
  readonly place: string;
  readonly text: string;
  readonly triggerId: string;
};

export type ActionRequest = {
  readonly kind: 'action';
  readonly actionId: string;
  /** A button's value, or what was chosen. */
  readonly value: string;
  readonly personId: string;
  /** Where the clicked message stands; absent in home and modals. */
  readonly message?: { readonly place: string; readonly stamp: string; readonly thread?: string };
  readonly view?: { readonly id: string; readonly metadata: string; readonly values: FormValues };
  readonly triggerId: string;
};

export type ViewRequest = {
  readonly kind: 'view';
  readonly callbackId: string;
  readonly viewId: string;
  readonly metadata: string;
  readonly values: FormValues;
  readonly personId: string;
  readonly triggerId: string;
};

export type ShortcutRequest = {
  readonly kind: 'shortcut';
  readonly callbackId: string;
  readonly personId: string;
  readonly triggerId: string;
  readonly message?: { readonly place: string; readonly stamp: string; readonly text: string };
};

/** A direct message to the bot, or a mention of it in a thread. `editedStamp`: an earlier message was changed. */
export type MessageRequest = {
  readonly kind: 'message';
  readonly source: 'direct message' | 'mention';
  readonly personId: string;
  readonly place: string;
  readonly stamp: string;
  /** Absent where the message opens no thread and stands in none. */
  readonly thread?: string;
  readonly text: string;
  readonly edited: boolean;
  readonly editedStamp?: string;
  /** What an edited message said before. */
  readonly before?: string;
};

export type HomeRequest = {
  readonly kind: 'home';
  readonly personId: string;
  /** The app's messages were opened, and not its home. */
  readonly messages?: true;
};

/** The app was taken out of the workspace, or its tokens were. */
export type LeftRequest = { readonly kind: 'left' };

/** People came into a user group or went out of it, or the group itself was changed. */
export type GroupsRequest = {
  readonly kind: 'groups';
  readonly groupId: string;
  readonly removed: readonly string[];
};

/** Values of a form by block id: text, a choice, several choices, or nothing. */
export type FormValues = Readonly<Record<string, string | readonly string[] | undefined>>;

export type Handler<Request> = (request: Request, desk: Desk) => Promise<Reaction>;

/** The tables from name to handler; one Bolt listener a kind looks handlers up here. */
export type Handlers = {
  /** By the name of the command, `/evenset`. */
  readonly commands: Readonly<Record<string, Handler<CommandRequest>>>;
  /** By action id; what stands behind a `:` in the id is not part of the key. */
  readonly actions: Readonly<Record<string, Handler<ActionRequest>>>;
  /** By callback id. */
  readonly views: Readonly<Record<string, Handler<ViewRequest>>>;
  readonly shortcuts: Readonly<Record<string, Handler<ShortcutRequest>>>;
  readonly message: Handler<MessageRequest>;
  readonly home: Handler<HomeRequest>;
  readonly left: Handler<LeftRequest>;
  readonly groups: Handler<GroupsRequest>;
};
