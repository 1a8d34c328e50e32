import type { AcceptedBlock } from './accepted-blocks.ts';
import type { GestureResult } from './deliveries-to-app.ts';
import type { LocalCommand, LocalShortcut } from './local-app.ts';
import type { TrafficEntry } from './traffic.ts';

/** The JSON between page and server. */
export type PageState = {
  readonly teamName: string;
  readonly appName: string;
  readonly appUserId: string;
  readonly isAppConnected: boolean;
  /** True where a reset brings the app's own data back too. */
  readonly canReset: boolean;
  readonly me: ShownPerson;
  readonly people: readonly ShownPerson[];
  readonly places: readonly ShownPlace[];
  readonly groups: readonly ShownGroup[];
  readonly hasHome: boolean;
  readonly home?: ShownView;
  readonly modal?: ShownModal;
  readonly commands: readonly LocalCommand[];
  readonly messageShortcuts: readonly LocalShortcut[];
  readonly clock?: ShownClock;
};

type ShownPerson = {
  readonly id: string;
  readonly name: string;
  readonly role: string;
  readonly unread: number;
};
/** A user group of the workspace. */
export type ShownGroup = {
  readonly id: string;
  readonly handle: string;
  readonly memberIds: readonly string[];
};
export type ShownPlace = {
  readonly id: string;
  readonly kind: 'channel' | 'direct';
  readonly name: string;
  readonly purpose: string;
  readonly unread: number;
};
type ShownView = {
  readonly id: string;
  readonly hash: string;
  readonly blocks: readonly AcceptedBlock[];
};
export type ShownModal = ShownView & {
  readonly title: string;
  readonly submit?: string;
  readonly close: string;
  readonly depth: number;
};
export type ShownClock = {
  readonly now: string;
  readonly timeZone: string;
  readonly nextDueAt?: string;
};

export type ShownMessage = {
  readonly ts: string;
  readonly threadTs?: string;
  readonly authorId: string;
  readonly authorName: string;
  readonly authorKind: 'person' | 'app' | 'workspace';
  readonly isMine: boolean;
  readonly isOnlyForMe: boolean;
  readonly isEdited: boolean;
  readonly text: string;
  /** As the author typed it, for editing; only on one's own. */
  readonly typed?: string;
  readonly blocks?: readonly AcceptedBlock[];
  readonly files: readonly { readonly id: string; readonly name: string }[];
  readonly reactions: readonly { readonly name: string; readonly count: number }[];
  /** Replies of others in the thread under it, since this person last had it open. */
  readonly newReplies: number;
};

export type ClockTarget =
  | { readonly kind: 'minutes'; readonly minutes: number }
  | { readonly kind: 'next-due' }
  | { readonly kind: 'monday-seven' }
  /** A wall time of the studio, `YYYY-MM-DDTHH:mm`. */
  | { readonly kind: 'wall-time'; readonly wallTime: string };

/** An exchange without its bodies, which are asked for one by one. */
export type TrafficLine = Omit<TrafficEntry, 'sent' | 'answered'>;

export type { GestureResult, TrafficEntry };
