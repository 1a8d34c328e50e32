/** What the address bar says: who looks, at which place, with which thread open. */
export type Route = {
  readonly as: string;
  /** A place's id, `home` or `traffic`; empty for the first place. */
  readonly place: string;
  readonly thread?: string;
};

export const readRoute = (hash: string): Route => {
  const query = new URLSearchParams(hash.replace(/^#/, ''));
  const thread = query.get('thread');
  return {
    as: query.get('as') ?? '',
    place: query.get('place') ?? '',
    ...(thread === null ? {} : { thread }),
  };
};

export const printRoute = ({ as, place, thread }: Route): string =>
  `#${new URLSearchParams({ as, place, ...(thread === undefined ? {} : { thread }) })}`;

/** The place and thread that a message's own address names; undefined for another address. */
export const readPermalink = (address: URL): Omit<Route, 'as'> | undefined => {
  const match = /^\/archives\/(\w+)\/p(\d+)(\d{6})$/.exec(address.pathname);
  if (match === null) return undefined;
  const [, place = '', seconds = '', micros = ''] = match;
  return { place, thread: address.searchParams.get('thread_ts') ?? `${seconds}.${micros}` };
};
