import type { WebClient } from '@slack/web-api';
import type { Message } from './handling.ts';
import type { Asker } from './requests/incoming.ts';
import { wellFormedParts } from './well-formed.ts';

const respondMs = 5_000;

/** Tells one person alone, where they are; rejects where no way was open. */
export type TellAsker = (asker: Asker, message: Message) => Promise<void>;

/**
 * The ways to reach a person, best first: the response address of a command; a note in the place, and thread,
 * of the message; the response address of a click; a direct message.
 */
export function createTellAsker(client: WebClient): TellAsker {
  return async (asker, message) => {
    const blocks = message.blocks === undefined ? {} : { blocks: [...message.blocks] };
    const { personId, place, thread, responseUrl } = asker;
    const byAddress =
      responseUrl === undefined ? [] : [() => respond(responseUrl, { text: message.text, ...blocks })];
    const inPlace =
      place === undefined
        ? []
        : [
            async () => {
              const inThread = thread === undefined ? {} : { thread_ts: thread };
              await client.chat.postEphemeral({
                channel: place,
                user: personId,
                text: message.text,
                parse: 'none',
                ...blocks,
                ...inThread,
              });
            },
          ];
    const directly = async () => {
      await client.chat.postMessage({ channel: personId, text: message.text, parse: 'none', ...blocks });
    };
    const ways =
      thread === undefined ? [...byAddress, ...inPlace, directly] : [...inPlace, ...byAddress, directly];
    await firstOpen(ways);
  };
}

async function firstOpen(ways: readonly (() => Promise<void>)[]): Promise<void> {
  const failures: unknown[] = [];
  for (const way of ways) {
    try {
      return await way();
    } catch (error) {
      failures.push(error);
    }
  }
  throw new AggregateError(failures, 'No way to tell the asker was open.', { cause: failures.at(-1) });
}

async function respond(url: string, content: { readonly text: string; readonly blocks?: unknown }) {
  const response = await fetch(url, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(
      wellFormedParts({ ...content, response_type: 'ephemeral', replace_original: false }),
    ),
    signal: AbortSignal.timeout(respondMs),
  });
  if (!response.ok) throw new Error(`The response address answered ${response.status}.`);
}
