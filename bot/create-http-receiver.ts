import { HTTPReceiver } from '@slack/bolt';
import { createBoltLogger } from './bolt-logger.ts';
import type { CalendarRoute } from './calendar-route.ts';
import { guardRequests, mostBodyBytes } from './guard.ts';
import { healthRoutes, type Readiness } from './health.ts';
import type { Log } from './log.ts';
import type { MetricsRoute } from './metrics-route.ts';

/** Signed deliveries over HTTP at `/slack/events`, behind the guard, with health, metrics and the calendar feed beside them. */
export function createHttpReceiver(options: {
  readonly signingSecret: string;
  readonly log: Log;
  readonly readiness: () => Promise<Readiness>;
  readonly nowMs?: () => number;
  readonly metrics?: MetricsRoute;
  readonly calendar?: CalendarRoute;
}): HTTPReceiver {
  const { log } = options;
  const receiver = new HTTPReceiver({
    signingSecret: options.signingSecret,
    endpoints: '/slack/events',
    bodyLimit: mostBodyBytes,
    customRoutes: [
      ...healthRoutes(options.readiness),
      ...(options.metrics === undefined ? [] : [options.metrics]),
      ...(options.calendar === undefined ? [] : [options.calendar]),
    ],
    logger: createBoltLogger(log),
  });
  receiver.requestListener = guardRequests(receiver.requestListener, {
    nowMs: options.nowMs ?? Date.now,
    log,
  });
  return receiver;
}
