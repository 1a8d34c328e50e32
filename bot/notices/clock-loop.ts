import type { Storage } from '../../domain/ports.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, MakeDesk } from '../make-desk.ts';
import type { RealTime } from '../real-time.ts';
import { enqueueDue, nextDueAt } from './due-in-studio.ts';

export type ClockLoop = {
  readonly start: () => void;
  /** Enqueues what is due now, in every studio; overlapping calls share one further run. */
  readonly tick: () => Promise<void>;
  /** Something changed that may be due: ticks soon. */
  readonly touch: () => void;
  readonly nextDueAt: () => Promise<string | undefined>;
  readonly idle: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

const mostWaitMs = 30_000;
const leastWaitMs = 1_000;

/**
 * Wakes at the next due moment, after a touch, and at least every 30 s of real time, so that a clock set
 * forward or back is noticed; a notice's unique key keeps a second look from being a second post.
 */
export function createClockLoop(parts: {
  readonly storage: Storage;
  readonly makeDesk: MakeDesk;
  readonly clock: Clock;
  readonly realTime: RealTime;
  readonly log: Log;
  readonly afterTick: () => Promise<void>;
}): ClockLoop {
  const { storage, makeDesk, clock, realTime, log } = parts;
  const stopping = new AbortController();
  let waiting = new AbortController();
  let touched = false;
  let current: Promise<void> | undefined;
  let following: Promise<void> | undefined;
  let looping: Promise<void> = Promise.resolve();

  const runTick = async (): Promise<void> => {
    for (const { id } of await storage.studios.list())
      await storage.inTransaction(async (stores) => enqueueDue(await makeDesk(id, stores)));
    await parts.afterTick();
  };

  const tick = (): Promise<void> => {
    if (current === undefined) {
      current = runTick().finally(() => {
        current = undefined;
      });
      return current;
    }
    following ??= current
      .catch(() => {})
      .then(() => {
        following = undefined;
        return tick();
      });
    return following;
  };

  const next = async (): Promise<string | undefined> => {
    const moments: string[] = [];
    for (const { id } of await storage.studios.list()) {
      const moment = await storage.inTransaction(async (stores) => nextDueAt(await makeDesk(id, stores)));
      if (moment !== undefined) moments.push(moment);
    }
    return moments.sort((a, b) => Date.parse(a) - Date.parse(b))[0];
  };

  const waitMs = async (): Promise<number> => {
    const due = await next();
    const untilDue = due === undefined ? mostWaitMs : Date.parse(due) - Date.parse(clock.now());
    return Math.min(mostWaitMs, Math.max(leastWaitMs, untilDue));
  };

  const loop = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      touched = false;
      waiting = new AbortController();
      let ms = mostWaitMs;
      try {
        await tick();
        ms = await waitMs();
      } catch (error) {
        log.error('due notices not looked at', errorFacts(error));
      }
      if (!touched && !stopping.signal.aborted) await realTime.wait(ms, waiting.signal);
    }
  };

  return {
    start: () => {
      looping = loop();
    },
    tick,
    touch: () => {
      touched = true;
      waiting.abort();
    },
    nextDueAt: next,
    idle: async () => {
      while (current !== undefined) await current.catch(() => {});
    },
    stop: async () => {
      stopping.abort();
      waiting.abort();
      await looping;
    },
  };
}
