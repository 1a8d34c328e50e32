/**
 * What the app has to do at moments of the domain's time. `nextDueAt` answers the first due instant strictly
 * after the given one (ISO, UTC); `settle` resolves when all that is due by now is done.
 */
export type DueMoments = {
  readonly nextDueAt: (after: string) => Promise<string | undefined>;
  readonly settle: () => Promise<void>;
};

export type LocalClock = {
  /** The domain's now, ISO in UTC. */
  readonly now: () => string;
  /** The next moment at which the app has something to do. */
  readonly nextDueAt: () => Promise<string | undefined>;
  /** Walks through each due moment up to the target and stops there; a target in the past changes nothing. */
  readonly moveTo: (instant: string) => Promise<void>;
  readonly follow: (moments: DueMoments) => void;
  readonly reset: () => void;
  readonly onMove: (listener: () => void) => void;
};

const nothingDue: DueMoments = { nextDueAt: async () => undefined, settle: async () => {} };

const toUtc = (instant: string): string => new Date(instant).toISOString();

/** A clock that stands still at `startAt` until it is moved, so that a run is the same every time. */
export const createLocalClock = ({ startAt }: { readonly startAt: string }): LocalClock => {
  let current = toUtc(startAt);
  let moments = nothingDue;
  let walking: Promise<void> = Promise.resolve();
  const listeners: (() => void)[] = [];

  const standAt = (instant: string) => {
    current = instant;
    for (const listener of listeners) listener();
  };

  const walkTo = async (target: string): Promise<void> => {
    await moments.settle();
    while (current < target) {
      const due = await moments.nextDueAt(current);
      const next = due === undefined || toUtc(due) > target ? target : toUtc(due);
      if (next <= current) throw new Error(`nextDueAt(${current}) answered ${next}, which is not after it`);
      standAt(next);
      await moments.settle();
    }
  };

  return {
    now: () => current,
    nextDueAt: async () => {
      const due = await moments.nextDueAt(current);
      return due === undefined ? undefined : toUtc(due);
    },
    moveTo: (instant) => {
      const target = toUtc(instant);
      const walk = walking.then(() => walkTo(target));
      walking = walk.catch(() => {});
      return walk;
    },
    follow: (followed) => {
      moments = followed;
    },
    reset: () => standAt(toUtc(startAt)),
    onMove: (listener) => {
      listeners.push(listener);
    },
  };
};
