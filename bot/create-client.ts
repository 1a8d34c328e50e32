import { type WebAPICallResult, WebClient } from '@slack/web-api';
import { createBoltLogger } from './bolt-logger.ts';
import type { Log } from './log.ts';
import { wellFormedParts } from './well-formed.ts';

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
  return new WellFormedClient(options.token, {
    retryConfig: { retries: 0 },
    timeout: options.timeoutMs ?? callMs,
    rejectRateLimitedCalls: true,
    logger: createBoltLogger(options.log),
    ...(options.apiUrl === undefined ? {} : { slackApiUrl: options.apiUrl }),
  });
}

/** The library throws on half a character, and a call that throws each time would hold up all behind it. */
class WellFormedClient extends WebClient {
  override apiCall(method: string, options: Record<string, unknown> = {}): Promise<WebAPICallResult> {
    return super.apiCall(method, wellFormedParts(options));
  }
}
