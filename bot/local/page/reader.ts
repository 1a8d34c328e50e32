import { createContext } from 'preact';

/** What the text of a message needs to be shown to this reader. */
export type Reader = {
  readonly nameOf: (userId: string) => string;
  readonly channelNameOf: (channelId: string) => string;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly channels: readonly { readonly id: string; readonly name: string }[];
  readonly timeZone: string;
  readonly now: string;
  /** Follows a link that stays inside the workspace; false where it leads elsewhere. */
  readonly follow: (url: string) => boolean;
};

export const ReaderContext = createContext<Reader>({
  nameOf: (userId) => userId,
  channelNameOf: (channelId) => channelId,
  people: [],
  channels: [],
  timeZone: 'UTC',
  now: '1970-01-01T00:00:00.000Z',
  follow: () => false,
});
