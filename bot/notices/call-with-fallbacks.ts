import type { KnownBlock } from '@slack/types';
import { z } from 'zod';
import type { NoticePayload } from '../../domain/ports.ts';
import { readCallFailure } from './call-failure.ts';
import type { ShowPicture } from './show-picture.ts';

export type Content = { readonly text: string; readonly blocks?: KnownBlock[] };

/** One way to say it; the content is made only where the ones before were refused. */
type Way = { readonly make: () => Promise<Content | undefined>; readonly tries: number };

/** An uploaded picture is refused while the workspace still works on it. */
const pictureTries = 4;
const pictureMs = 1_500;

/** A stored payload's blocks, made by this app's own block builders; only their frame is checked here. */
const storedBlocks = z.array(
  z.custom<KnownBlock>((value) => z.object({ type: z.string() }).safeParse(value).success),
);

/** What to send, richest first: as made, with a picture for the chart, without chart and table, as text. */
function waysOf(payload: NoticePayload, showPicture: ShowPicture): readonly Way[] {
  const { text, blocks, fallbackBlocks, picture } = payload;
  const plain = (given: readonly unknown[] | undefined): readonly Way[] =>
    given === undefined
      ? []
      : [{ make: async () => ({ text, blocks: storedBlocks.parse(given) }), tries: 1 }];
  const pictured = async (): Promise<Content | undefined> => {
    const image = picture && (await showPicture(picture));
    return image && { text, blocks: withPicture(storedBlocks.parse(blocks), image) };
  };
  return [
    ...plain(blocks),
    ...(blocks === undefined || picture === undefined ? [] : [{ make: pictured, tries: pictureTries }]),
    ...plain(fallbackBlocks),
    { make: async () => ({ text }), tries: 1 },
  ];
}

/** A native chart's type is not among those the platform's own types name. */
function withPicture(blocks: readonly KnownBlock[], image: KnownBlock): KnownBlock[] {
  return blocks.map((block) => (String(block.type) === 'data_visualization' ? image : block));
}

export type FallbackTools = {
  readonly showPicture: ShowPicture;
  readonly wait: (ms: number) => Promise<void>;
  /** Hears of each refusal. */
  readonly onRefusal: (code: string) => void;
};

/** Calls with ever plainer content while the workspace refuses the blocks. */
export async function callWithFallbacks<Answer>(
  payload: NoticePayload,
  call: (content: Content) => Promise<Answer>,
  { showPicture, wait, onRefusal }: FallbackTools,
): Promise<Answer> {
  let refusal: unknown;
  for (const { make, tries } of waysOf(payload, showPicture)) {
    const content = await make();
    for (let attempt = 1; content !== undefined && attempt <= tries; attempt += 1) {
      try {
        return await call(content);
      } catch (error) {
        const failure = readCallFailure(error);
        if (failure.kind !== 'blocks refused') throw error;
        refusal = error;
        onRefusal(failure.code);
        if (attempt < tries) await wait(pictureMs);
      }
    }
  }
  throw refusal;
}
