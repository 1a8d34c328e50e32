import type { WebClient } from '@slack/web-api';

const uploadMs = 10_000;

type NewFile = { readonly name: string; readonly title: string; readonly bytes: Uint8Array };

/** Where a file is posted at once; without it the file can be shown by a block. */
type FilePlace = { readonly place: string; readonly thread?: string; readonly comment: string };

/** The three-step upload: an address, the bytes, the end. Resolves to the file's id. */
export async function uploadFile(
  client: WebClient,
  { name, title, bytes }: NewFile,
  at?: FilePlace,
): Promise<string> {
  const { upload_url: address, file_id: id } = await client.files.getUploadURLExternal({
    filename: name,
    length: bytes.byteLength,
  });
  if (address === undefined || id === undefined) throw new Error('The workspace gave no upload address.');
  const sent = await fetch(address, {
    method: 'POST',
    body: Buffer.from(bytes),
    signal: AbortSignal.timeout(uploadMs),
  });
  if (!sent.ok) throw new Error(`The upload was answered with ${sent.status}.`);
  const files: [{ id: string; title: string }] = [{ id, title }];
  await client.files.completeUploadExternal(
    at === undefined
      ? { files }
      : {
          files,
          channel_id: at.place,
          initial_comment: at.comment,
          ...(at.thread === undefined ? {} : { thread_ts: at.thread }),
        },
  );
  return id;
}
