import type { KnownBlock } from '@slack/types';
import { z } from 'zod';
import type { NoticePayload } from '../../domain/ports.ts';
import { readCallFailure } from './call-failure.ts';

export type Content = { readonly text: string; readonly blocks?: KnownBlock[] };

/** A stored payload's blocks, made by this app's own block builders; only their frame is checked here. */
const storedBlocks = z.array(
  z.custom<KnownBlock>((value) => z.object({ type: z.string() }).safeParse(value).success),
);

/** What to send, richest first: as made, without native charts and tables, as text alone. */
function contentsOf(payload: NoticePayload): readonly [Content, ...Content[]] {
  const { text } = payload;
  const [first, ...rest] = [payload.blocks, payload.fallbackBlocks].flatMap((blocks) =>
    blocks === undefined ? [] : [{ text, blocks: storedBlocks.parse(blocks) }],
  );
  return first === undefined ? [{ text }] : [first, ...rest, { text }];
}

/** Calls with ever plainer content while the workspace refuses the blocks; tells each refusal. */
export async function callWithFallbacks<Answer>(
  payload: NoticePayload,
  call: (content: Content) => Promise<Answer>,
  onRefusal: (code: string) => void,
): Promise<Answer> {
  const [first, ...plainer] = contentsOf(payload);
  let content = first;
  while (true) {
    try {
      return await call(content);
    } catch (error) {
      const failure = readCallFailure(error);
      const next = plainer.shift();
      if (failure.kind !== 'blocks refused' || next === undefined) throw error;
      onRefusal(failure.code);
      content = next;
    }
  }
}
