import { z } from 'zod';
import {
  actionsElement,
  anyText,
  blockId,
  hasOneSource,
  imageElement,
  imageUrl,
  inputElement,
  listOf,
  mrkdwn,
  plainText,
  sectionAccessory,
  slackFile,
  textOf,
} from './accepted-elements.ts';

/**
 * What the platform takes as blocks and views, from its published reference
 * (https://docs.slack.dev/reference/block-kit). The numbers are the platform's and stand here on their own, so
 * that a block builder with a wrong limit is refused here as it would be there.
 */

const actionIdsOnce = (block: { elements: readonly { action_id: string }[] }) =>
  new Set(block.elements.map(({ action_id }) => action_id)).size === block.elements.length;

const header = z.strictObject({ type: z.literal('header'), block_id: blockId, text: plainText(150) });
const section = z
  .strictObject({
    type: z.literal('section'),
    block_id: blockId,
    text: anyText(3000).exactOptional(),
    fields: listOf(anyText(2000), 1, 10).exactOptional(),
    accessory: sectionAccessory.exactOptional(),
    expand: z.boolean().exactOptional(),
  })
  .refine((block) => block.text !== undefined || block.fields !== undefined, 'text or fields is required');
const context = z.strictObject({
  type: z.literal('context'),
  block_id: blockId,
  elements: listOf(
    z.discriminatedUnion(
      'type',
      [plainText(3000), mrkdwn(3000), imageElement],
      'unsupported type of element',
    ),
    1,
    10,
  ),
});
const divider = z.strictObject({ type: z.literal('divider'), block_id: blockId });
const actions = z
  .strictObject({
    type: z.literal('actions'),
    block_id: blockId,
    elements: listOf(actionsElement, 1, 25),
  })
  .refine(actionIdsOnce, 'action_id must be unique within the block');
const input = z.strictObject({
  type: z.literal('input'),
  block_id: blockId,
  label: plainText(2000),
  hint: plainText(2000).exactOptional(),
  optional: z.boolean().exactOptional(),
  dispatch_action: z.boolean().exactOptional(),
  element: inputElement,
});
const image = z
  .strictObject({
    type: z.literal('image'),
    block_id: blockId,
    alt_text: textOf(1, 2000),
    title: plainText(2000).exactOptional(),
    image_url: imageUrl,
    slack_file: slackFile.exactOptional(),
  })
  .refine(hasOneSource, 'either image_url or slack_file is required');

const richStyle = z
  .strictObject({
    bold: z.boolean().exactOptional(),
    italic: z.boolean().exactOptional(),
    strike: z.boolean().exactOptional(),
    code: z.boolean().exactOptional(),
  })
  .exactOptional();
const richPiece = z.discriminatedUnion(
  'type',
  [
    z.strictObject({ type: z.literal('text'), text: textOf(1, 3000), style: richStyle }),
    z.strictObject({
      type: z.literal('link'),
      url: textOf(1, 3000),
      text: z.string().exactOptional(),
      style: richStyle,
    }),
    z.strictObject({ type: z.literal('user'), user_id: z.string(), style: richStyle }),
    z.strictObject({ type: z.literal('channel'), channel_id: z.string(), style: richStyle }),
  ],
  'unsupported type of rich text',
);
const richSection = z.strictObject({ type: z.literal('rich_text_section'), elements: z.array(richPiece) });
const richText = z.strictObject({
  type: z.literal('rich_text'),
  block_id: blockId,
  elements: listOf(
    z.discriminatedUnion(
      'type',
      [
        richSection,
        z.strictObject({
          type: z.literal('rich_text_list'),
          style: z.enum(['bullet', 'ordered']),
          indent: z.int().min(0).max(8).exactOptional(),
          border: z.int().exactOptional(),
          elements: z.array(richSection).min(1),
        }),
        z.strictObject({ type: z.literal('rich_text_quote'), elements: z.array(richPiece) }),
        z.strictObject({ type: z.literal('rich_text_preformatted'), elements: z.array(richPiece) }),
      ],
      'unsupported type of rich text',
    ),
    1,
    100,
  ),
});

const cell = z.discriminatedUnion(
  'type',
  [
    z.strictObject({ type: z.literal('raw_text'), text: textOf(1, 10_000) }),
    z.strictObject({ type: z.literal('raw_number'), value: z.number(), text: textOf(1, 10_000) }),
    richText,
  ],
  'unsupported type of cell',
);
const table = z
  .strictObject({
    type: z.literal('table'),
    block_id: blockId,
    rows: listOf(listOf(cell, 1, 20), 1, 100),
    column_settings: listOf(
      z.strictObject({
        align: z.enum(['left', 'center', 'right']).exactOptional(),
        is_wrapped: z.boolean().exactOptional(),
      }),
      0,
      20,
    ).exactOptional(),
  })
  .refine((block) => textLengthOf(block.rows) <= 10_000, 'must be less than 10001 characters in all cells');

const chartLabel = textOf(1, 20);
const point = z.strictObject({ label: chartLabel, value: z.number() });
const series = z.strictObject({ name: chartLabel, data: listOf(point, 1, 20) });
const axisConfig = z.strictObject({
  categories: listOf(chartLabel, 1, 20),
  x_label: z.string().min(1).exactOptional(),
  y_label: z.string().min(1).exactOptional(),
});
const seriesChart = <T extends 'bar' | 'line' | 'area'>(type: T) =>
  z
    .strictObject({ type: z.literal(type), series: listOf(series, 1, 6), axis_config: axisConfig })
    .refine(
      (chart) => new Set(chart.series.map(({ name }) => name)).size === chart.series.length,
      'series names must be unique',
    )
    .refine(
      (chart) => new Set(chart.axis_config.categories).size === chart.axis_config.categories.length,
      'categories must be unique',
    )
    .refine(
      (chart) =>
        chart.series.every(
          ({ data }) =>
            data.length === chart.axis_config.categories.length &&
            new Set(data.map(({ label }) => label)).size === data.length &&
            data.every(({ label }) => chart.axis_config.categories.includes(label)),
        ),
      'each series needs exactly one point for each category',
    );
const dataVisualization = z.strictObject({
  type: z.literal('data_visualization'),
  block_id: blockId,
  title: textOf(1, 50),
  chart: z.discriminatedUnion(
    'type',
    [
      seriesChart('bar'),
      seriesChart('line'),
      seriesChart('area'),
      z.strictObject({
        type: z.literal('pie'),
        segments: listOf(z.strictObject({ label: chartLabel, value: z.number().positive() }), 1, 6),
      }),
    ],
    'unsupported type of chart',
  ),
});

const viewBlock = z.discriminatedUnion(
  'type',
  [header, section, context, divider, actions, input, image, richText],
  'unsupported type of block',
);
const messageBlock = z.discriminatedUnion(
  'type',
  [header, section, context, divider, actions, input, image, richText, table, dataVisualization],
  'unsupported type of block',
);

/** A block as the workspace keeps it: every `block_id` and `action_id` is set. */
export type AcceptedBlock = z.infer<typeof messageBlock>;
export type AcceptedRichText = z.infer<typeof richText>;
export type AcceptedChart = z.infer<typeof dataVisualization>;
export type AcceptedTable = z.infer<typeof table>;

const blockIdsOnce = (blocks: readonly { block_id: string }[]) =>
  new Set(blocks.map(({ block_id }) => block_id)).size === blocks.length;
const countOf = (blocks: readonly { type: string }[], type: string) =>
  blocks.filter((block) => block.type === type).length;

const messageBlocks = listOf(messageBlock, 0, 50)
  .refine(blockIdsOnce, 'block_id must be unique within the message')
  .refine((blocks) => countOf(blocks, 'table') <= 1, 'only one table a message')
  .refine((blocks) => countOf(blocks, 'data_visualization') <= 2, 'only two data_visualization a message');

const viewBlocks = listOf(viewBlock, 0, 100).refine(blockIdsOnce, 'block_id must be unique within the view');
const sharedByViews = {
  blocks: viewBlocks,
  private_metadata: textOf(0, 3000).default(''),
  callback_id: textOf(0, 255).default(''),
  external_id: textOf(0, 255).default(''),
};
const modal = z
  .strictObject({
    type: z.literal('modal'),
    title: plainText(24),
    submit: plainText(24).exactOptional(),
    close: plainText(24).exactOptional(),
    clear_on_close: z.boolean().default(false),
    notify_on_close: z.boolean().default(false),
    submit_disabled: z.boolean().exactOptional(),
    ...sharedByViews,
  })
  .refine(
    (view) => view.submit !== undefined || view.blocks.every(({ type }) => type !== 'input'),
    'submit is required when an input block is within the blocks array',
  );
const home = z.strictObject({ type: z.literal('home'), ...sharedByViews });

export type AcceptedModal = z.infer<typeof modal>;
export type AcceptedHome = z.infer<typeof home>;

export type Accepted<T> =
  | { readonly kind: 'accepted'; readonly value: T }
  | { readonly kind: 'refused'; readonly messages: readonly string[] };

const messageOf = (issue: z.core.$ZodIssue): string =>
  issue.code === 'unrecognized_keys'
    ? `invalid additional property: ${issue.keys.join(', ')}`
    : issue.message;

const accept = <T>(schema: z.ZodType<T>, value: unknown, root: string): Accepted<T> => {
  const parsed = schema.safeParse(value);
  if (parsed.success) return { kind: 'accepted', value: parsed.data };
  return {
    kind: 'refused',
    messages: parsed.error.issues.map(
      (issue) => `[ERROR] ${messageOf(issue)} [json-pointer:${[root, ...issue.path.map(String)].join('/')}]`,
    ),
  };
};

export const acceptMessageBlocks = (value: unknown): Accepted<readonly AcceptedBlock[]> =>
  accept(messageBlocks, value, '/blocks');
export const acceptModal = (value: unknown): Accepted<AcceptedModal> => accept(modal, value, '/view');
export const acceptHome = (value: unknown): Accepted<AcceptedHome> => accept(home, value, '/view');

/** All characters that people read in a payload: every string under a key that holds text. */
export const textLengthOf = (value: unknown): number => {
  if (Array.isArray(value)) return value.reduce((sum: number, item) => sum + textLengthOf(item), 0);
  if (typeof value !== 'object' || value === null) return 0;
  return Object.entries(value).reduce(
    (sum, [key, item]) =>
      sum +
      (typeof item === 'string'
        ? ['text', 'alt_text', 'title', 'label', 'name'].includes(key)
          ? item.length
          : 0
        : textLengthOf(item)),
    0,
  );
};
