import { errorFacts, type Log } from './log.ts';

const lookEveryMs = 3_600_000;

/** Sees every hour that today's backup is there; one that fails is logged and tried again. */
export function startDailyBackups(parts: {
  /** Resolves to the file made, or to nothing where there is one. */
  readonly backUp: () => Promise<string | undefined>;
  readonly log: Log;
  readonly everyMs?: number;
}): { readonly stop: () => Promise<void> } {
  const { backUp, log } = parts;
  const look = async (): Promise<void> => {
    try {
      if ((await backUp()) !== undefined) log.info('backed up');
    } catch (error) {
      log.error('not backed up', errorFacts(error));
    }
  };
  let current = look();
  const timer = setInterval(() => {
    current = current.then(look);
  }, parts.everyMs ?? lookEveryMs);
  timer.unref();
  return {
    stop: () => {
      clearInterval(timer);
      return current;
    },
  };
}
