import { z } from 'zod';
import { type AcceptedBlock, acceptMessageBlocks, textLengthOf } from './accepted-blocks.ts';
import type { MessageMetadata, Place, Workspace } from './workspace.ts';

export type ApiAnswer = Readonly<Record<string, unknown>> & { readonly ok: boolean };

export type Failure = {
  readonly ok: false;
  readonly error: string;
  readonly [extra: string]: unknown;
};

const messageTextMost = 40_000;
/** Undocumented by the platform; measured by its users (github.com/slackapi/bolt-js issue 2509). */
const allBlockTextMost = 13_200;

export const fail = (error: string, ...messages: readonly string[]): Failure => ({
  ok: false,
  error,
  ...(messages.length === 0 ? {} : { response_metadata: { messages } }),
});
export const isFailure = (value: object): value is Failure => 'ok' in value && value.ok === false;

export const flag = z
  .union([z.boolean(), z.enum(['true', 'false', '1', '0'])])
  .transform((value) => value === true || value === 'true' || value === '1')
  .optional();
/** Structured arguments arrive as JSON strings in a form and as they are in a JSON body. */
export const structured = z
  .unknown()
  .transform((value, context) => {
    if (typeof value !== 'string') return value;
    try {
      const parsed: unknown = JSON.parse(value);
      return parsed;
    } catch {
      context.addIssue({ code: 'custom', message: 'must be valid json' });
      return z.NEVER;
    }
  })
  .optional();
const metadataShape = z.strictObject({
  event_type: z.string().min(1),
  event_payload: z.record(z.string(), z.unknown()),
});

type Content = {
  readonly text: string;
  readonly blocks?: readonly AcceptedBlock[];
  readonly metadata?: MessageMetadata;
};

/** Checks text, blocks and metadata as the platform does before it posts anything. */
export const readContent = (
  given: { readonly text?: unknown; readonly blocks?: unknown; readonly metadata?: unknown },
  workspace: Workspace,
  textMost: number = messageTextMost,
): Content | Failure => {
  const text = typeof given.text === 'string' ? given.text : '';
  if (text.length > textMost) return fail('msg_too_long');
  if (given.blocks !== undefined && !Array.isArray(given.blocks)) return fail('invalid_blocks_format');
  const accepted = acceptMessageBlocks(given.blocks ?? []);
  if (accepted.kind === 'refused') return fail('invalid_blocks', ...accepted.messages);
  const missing = accepted.value.findIndex((block) => !hasItsFile(block, workspace));
  if (missing >= 0)
    return fail('invalid_blocks', `[ERROR] invalid slack file [json-pointer:/blocks/${missing}/slack_file]`);
  if (textLengthOf(accepted.value) > allBlockTextMost) return fail('msg_blocks_too_long');
  if (text.trim() === '' && accepted.value.length === 0) return fail('no_text');
  const metadata = given.metadata === undefined ? undefined : metadataShape.safeParse(given.metadata);
  if (metadata?.success === false) return fail('invalid_metadata_schema');
  return {
    text,
    ...(accepted.value.length === 0 ? {} : { blocks: accepted.value }),
    ...(metadata === undefined ? {} : { metadata: metadata.data }),
  };
};

const hasItsFile = (block: AcceptedBlock, workspace: Workspace): boolean => {
  if (block.type !== 'image' || block.slack_file === undefined) return true;
  const id = 'id' in block.slack_file ? block.slack_file.id : (block.slack_file.url.split('/').at(-1) ?? '');
  return workspace.findFile(id)?.isComplete === true;
};

/** The thread a message goes to: one that stands, under its first message. */
export const threadOf = (
  place: Place,
  threadTs: string | undefined,
  workspace: Workspace,
): { readonly threadTs?: string } | Failure => {
  if (threadTs === undefined) return {};
  const parent = workspace.findMessage(place.id, threadTs);
  if (parent === undefined || parent.onlyFor !== undefined) return fail('thread_not_found');
  if (parent.threadTs !== undefined && parent.threadTs !== parent.ts) return fail('cannot_reply_to_message');
  return { threadTs };
};
