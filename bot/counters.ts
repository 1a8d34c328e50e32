import type { Storage } from '../domain/ports.ts';

/** What is counted from the start of the process on. */
type Counted = 'drafts' | 'posts' | 'retries' | 'dead notices';

export type Counters = {
  readonly add: (what: Counted) => void;
  readonly read: () => Readonly<Record<Counted, number>>;
};

export function createCounters(): Counters {
  const counts = { drafts: 0, posts: 0, retries: 0, 'dead notices': 0 };
  return {
    add: (what) => {
      counts[what] += 1;
    },
    read: () => ({ ...counts }),
  };
}

/** The same storage; each plan whose transaction is kept counts as a draft. */
export function countDrafts(storage: Storage, counters: Counters): Storage {
  return {
    ...storage,
    inTransaction: async (work) => {
      let made = 0;
      const result = await storage.inTransaction((stores) =>
        work({
          ...stores,
          plans: {
            ...stores.plans,
            create: async (studioId, record) => {
              await stores.plans.create(studioId, record);
              made += 1;
            },
          },
        }),
      );
      for (let draft = 0; draft < made; draft += 1) counters.add('drafts');
      return result;
    },
  };
}
