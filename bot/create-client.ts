import { WebClient } from '@slack/web-api';
import { createBoltLogger } from './bolt-logger.ts';
import type { Log } from './log.ts';

const callMs = 10_000;

/**
 * The client's own retries are off: it would post twice where an answer is lost. A rate limit is told at once
 * instead of holding up the client's other calls.
 */
export function createClient(options: {
  readonly token: string;
  readonly log: Log;
  readonly apiUrl?: string;
  readonly timeoutMs?: number;
}): WebClient {
  return new WebClient(options.token, {
    retryConfig: { retries: 0 },
    timeout: options.timeoutMs ?? callMs,
    rejectRateLimitedCalls: true,
    logger: createBoltLogger(options.log),
    ...(options.apiUrl === undefined ? {} : { slackApiUrl: options.apiUrl }),
  });
}
