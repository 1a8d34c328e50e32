import type { Storage } from '../../domain/ports.ts';
import type { Desk } from '../handling.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, MakeDesk } from '../make-desk.ts';
import type { RealTime } from '../real-time.ts';

export type ClockLoop = {
  readonly start: () => void;
  /** Enqueues what is due now, in every studio; overlapping calls share one further run. */
  readonly tick: () => Promise<void>;
  /** Something changed that may be due: ticks soon. */
  readonly touch: () => void;
  readonly nextDueAt: () => Promise<string | undefined>;
  readonly stop: () => Promise<void>;
};

/** What falls due in one studio; both look at the desk's now. */
export type Due = {
  readonly enqueueDue: (desk: Desk) => Promise<void>;
  readonly nextDueAt: (desk: Desk) => Promise<string | undefined>;
};

/** A burst of requests makes one look, and requests without end one in each `leastWaitMs`. */
const afterTouchMs = 50;
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
  readonly due: Due;
  readonly afterTick: () => Promise<void>;
}): ClockLoop {
  const { storage, makeDesk, clock, realTime, log, due } = parts;
  const stopping = new AbortController();
  let waiting = new AbortController();
  let touched = false;
  let current: Promise<void> | undefined;
  let following: Promise<void> | undefined;
  let looping: Promise<void> = Promise.resolve();

  const runTick = async (): Promise<void> => {
    for (const { id } of await storage.studios.list())
      await storage.inTransaction(async (stores) => due.enqueueDue(await makeDesk(id, stores)));
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
      const moment = await storage.inTransaction(async (stores) => due.nextDueAt(await makeDesk(id, stores)));
      if (moment !== undefined) moments.push(moment);
    }
    return moments.sort((a, b) => Date.parse(a) - Date.parse(b))[0];
  };

  const waitMs = async (): Promise<number> => {
    const moment = await next();
    const untilDue = moment === undefined ? mostWaitMs : Date.parse(moment) - Date.parse(clock.now());
    return Math.min(mostWaitMs, Math.max(leastWaitMs, untilDue));
  };

  const loop = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      touched = false;
      waiting = new AbortController();
      const nextLookMs = realTime.nowMs() + leastWaitMs;
      let ms = mostWaitMs;
      try {
        await tick();
        ms = await waitMs();
      } catch (error) {
        log.error('due notices not looked at', errorFacts(error));
      }
      if (!touched) await realTime.wait(ms, waiting.signal);
      if (touched)
        await realTime.wait(Math.max(afterTouchMs, nextLookMs - realTime.nowMs()), stopping.signal);
    }
  };

  return {
    start: () => {
      looping = loop();
    },
    tick,
    touch: () => {
      if (touched) return;
      touched = true;
      waiting.abort();
    },
    nextDueAt: next,
    stop: async () => {
      stopping.abort();
      waiting.abort();
      await looping;
    },
  };
}
