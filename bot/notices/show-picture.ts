import type { KnownBlock } from '@slack/types';
import type { WebClient } from '@slack/web-api';
import type { NoticePayload } from '../../domain/ports.ts';
import type { Log } from '../log.ts';
import { readCallFailure } from './call-failure.ts';
import { drawPng } from './draw-png.ts';
import { uploadFile } from './upload-file.ts';

export type ShowPicture = (picture: NonNullable<NoticePayload['picture']>) => Promise<KnownBlock | undefined>;

/**
 * The picture as an image block, drawn and uploaded; nothing where that fails, since its numbers stand in the
 * plainer blocks too. Rejects where calls are to wait.
 */
export function createShowPicture(client: WebClient, log: Log): ShowPicture {
  return async ({ name, svg, altText }) => {
    try {
      const id = await uploadFile(client, { name, title: altText, bytes: await drawPng(svg) });
      return { type: 'image', block_id: 'picture', slack_file: { id }, alt_text: altText };
    } catch (error) {
      const failure = readCallFailure(error);
      if (failure.kind === 'rate limited') throw error;
      log.warn('picture not uploaded, sending text', { name, code: failure.code });
      return undefined;
    }
  };
}
