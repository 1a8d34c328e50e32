import { HTTPReceiver } from '@slack/bolt';
import { createBoltLogger } from './bolt-logger.ts';
import { guardRequests, mostBodyBytes } from './guard.ts';
import { healthRoutes, type Readiness } from './health.ts';
import type { Log } from './log.ts';

/** Signed deliveries over HTTP at `/slack/events`, behind the guard, with the health routes beside them. */
export function createHttpReceiver(options: {
  readonly signingSecret: string;
  readonly log: Log;
  readonly readiness: () => Promise<Readiness>;
  readonly nowMs?: () => number;
}): HTTPReceiver {
  const { log } = options;
  const receiver = new HTTPReceiver({
    signingSecret: options.signingSecret,
    endpoints: '/slack/events',
    bodyLimit: mostBodyBytes,
    customRoutes: healthRoutes(options.readiness),
    logger: createBoltLogger(log),
  });
  receiver.requestListener = guardRequests(receiver.requestListener, {
    nowMs: options.nowMs ?? Date.now,
    log,
  });
  return receiver;
}
