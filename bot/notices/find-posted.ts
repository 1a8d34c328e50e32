import type { WebClient } from '@slack/web-api';
import { metadataEventType } from '../ids.ts';

const pageSize = 200;
const mostPages = 10;

/**
 * Looks for the message that carries a notice's key, or its file, which can carry no key: newest first in a channel, or in one thread. Resolves to
 * its stamp, or to nothing where it is not there; rejects where the workspace can't be asked.
 */
export async function findPosted(
  client: WebClient,
  { key, fileName }: { readonly key: string; readonly fileName: string | undefined },
  place: string,
  thread: string | undefined,
): Promise<string | undefined> {
  let cursor: string | undefined;
  for (let page = 0; page < mostPages; page += 1) {
    const asked = {
      channel: place,
      limit: pageSize,
      include_all_metadata: true,
      ...(cursor === undefined ? {} : { cursor }),
    };
    const answer =
      thread === undefined
        ? await client.conversations.history(asked)
        : await client.conversations.replies({ ...asked, ts: thread });
    const found = answer.messages?.find(
      ({ metadata, files }) =>
        isOfKey(metadata, key) ||
        (fileName !== undefined && files?.some(({ name }) => name === fileName) === true),
    );
    if (found?.ts !== undefined) return found.ts;
    cursor = answer.response_metadata?.next_cursor;
    if (cursor === undefined || cursor === '') return undefined;
  }
  return undefined;
}

function isOfKey(metadata: unknown, key: string): boolean {
  if (typeof metadata !== 'object' || metadata === null) return false;
  if (!('event_type' in metadata) || metadata.event_type !== metadataEventType) return false;
  if (!('event_payload' in metadata)) return false;
  const { event_payload: payload } = metadata;
  return typeof payload === 'object' && payload !== null && 'key' in payload && payload.key === key;
}
