import { createHmac } from 'node:crypto';

/** What came of one delivery to the app. */
export type Outcome =
  | { readonly kind: 'acknowledged'; readonly body: string }
  | { readonly kind: 'timed-out' }
  | { readonly kind: 'refused'; readonly status: number }
  | { readonly kind: 'unreachable' };

const ackMs = 3_000;

/** What went wrong, told to the person whose gesture it was; empty where nothing did. */
export const outcomeWords = (outcome: Outcome, what: string, appName: string): string => {
  switch (outcome.kind) {
    case 'timed-out':
      return `${what} did not work: ${appName} gave no answer within 3 seconds (operation timed out). Try again.`;
    case 'refused':
      return `${what} did not work: ${appName} answered ${outcome.status} (dispatch failed).`;
    case 'unreachable':
      return `${what} did not work: ${appName} can't be reached (dispatch failed).`;
    case 'acknowledged':
      return '';
  }
};

/** Posts to the app with the platform's signature of version 0, at real time, and waits 3 s for the answer. */
export const postSigned = async (
  url: string | undefined,
  body: string,
  signingSecret: string,
  headers: Readonly<Record<string, string>>,
): Promise<Outcome> => {
  if (url === undefined) return { kind: 'unreachable' };
  const timestamp = String(Math.floor(Date.now() / 1000));
  const signature = createHmac('sha256', signingSecret).update(`v0:${timestamp}:${body}`).digest('hex');
  try {
    const response = await fetch(url, {
      method: 'POST',
      body,
      headers: {
        ...headers,
        'x-slack-request-timestamp': timestamp,
        'x-slack-signature': `v0=${signature}`,
      },
      signal: AbortSignal.timeout(ackMs),
    });
    const text = await response.text();
    return response.status === 200
      ? { kind: 'acknowledged', body: text }
      : { kind: 'refused', status: response.status };
  } catch (error) {
    return error instanceof Error && error.name === 'TimeoutError'
      ? { kind: 'timed-out' }
      : { kind: 'unreachable' };
  }
};
