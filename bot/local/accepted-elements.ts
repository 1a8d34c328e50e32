import { z } from 'zod';
import { optionsOf } from './form-values.ts';

/**
 * What the platform takes as texts and elements, from its published reference and their limits
 * (https://docs.slack.dev/reference/block-kit). The numbers are the platform's and stand here on their own, so
 * that a block builder with a wrong limit is refused here as it would be there.
 */

const randomId = () => Math.random().toString(36).slice(2, 7);

export const textOf = (least: number, most: number) =>
  z
    .string('must be a string')
    .min(least, `must be more than ${least - 1} characters`)
    .max(most, `must be less than ${most + 1} characters`);

export const listOf = <T extends z.ZodType>(item: T, least: number, most: number) =>
  z
    .array(item, 'must be a list')
    .min(least, `no less than ${least} items allowed`)
    .max(most, `no more than ${most} items allowed`);

export const plainText = (most: number) =>
  z.strictObject({
    type: z.literal('plain_text'),
    text: textOf(1, most),
    emoji: z.boolean().exactOptional(),
  });
export const mrkdwn = (most: number) =>
  z.strictObject({
    type: z.literal('mrkdwn'),
    text: textOf(1, most),
    verbatim: z.boolean().exactOptional(),
  });
export const anyText = (most: number) => z.discriminatedUnion('type', [plainText(most), mrkdwn(most)]);

export const blockId = textOf(1, 255).default(randomId);
const actionId = textOf(1, 255).default(randomId);
const placeholder = plainText(150).exactOptional();
const focusOnLoad = z.boolean().exactOptional();

const confirm = z
  .strictObject({
    title: plainText(100),
    text: anyText(300),
    confirm: plainText(30),
    deny: plainText(30),
    style: z.enum(['primary', 'danger']).exactOptional(),
  })
  .exactOptional();

const option = z.strictObject({
  text: plainText(75),
  value: textOf(1, 75),
  description: plainText(75).exactOptional(),
});
const choice = z.strictObject({
  text: anyText(75),
  value: textOf(1, 75),
  description: anyText(75).exactOptional(),
});
const overflowOption = option.extend({ url: textOf(1, 3000).exactOptional() });
const optionGroup = z.strictObject({ label: plainText(75), options: listOf(option, 1, 100) });

type Choices = {
  readonly options?: readonly { readonly value: string }[] | undefined;
  readonly option_groups?: readonly { readonly options: readonly { readonly value: string }[] }[] | undefined;
};

const eachValueOnce = (element: Choices) => {
  const values = optionsOf(element).map(({ value }) => value);
  return new Set(values).size === values.length;
};
const oneKindOfOptions = (element: Choices) =>
  (element.options === undefined) !== (element.option_groups === undefined);
const areOptions = (initial: readonly { readonly value: string }[], element: Choices) =>
  initial.every(({ value }) => optionsOf(element).some((each) => each.value === value));

const button = z.strictObject({
  type: z.literal('button'),
  action_id: actionId,
  text: plainText(75),
  value: textOf(1, 2000).exactOptional(),
  url: textOf(1, 3000).exactOptional(),
  style: z.enum(['primary', 'danger'], 'must be primary or danger').exactOptional(),
  accessibility_label: textOf(1, 75).exactOptional(),
  confirm,
});

const staticSelect = z
  .strictObject({
    type: z.literal('static_select'),
    action_id: actionId,
    placeholder,
    options: listOf(option, 1, 100).exactOptional(),
    option_groups: listOf(optionGroup, 1, 100).exactOptional(),
    initial_option: option.exactOptional(),
    focus_on_load: focusOnLoad,
    confirm,
  })
  .refine(oneKindOfOptions, 'either options or option_groups is required')
  .refine(eachValueOnce, 'option values must be unique')
  .refine(
    (element) => areOptions(element.initial_option === undefined ? [] : [element.initial_option], element),
    'initial_option must be among options',
  );

const multiStaticSelect = z
  .strictObject({
    type: z.literal('multi_static_select'),
    action_id: actionId,
    placeholder,
    options: listOf(option, 1, 100).exactOptional(),
    option_groups: listOf(optionGroup, 1, 100).exactOptional(),
    initial_options: listOf(option, 1, 100).exactOptional(),
    max_selected_items: z.int().min(1).exactOptional(),
    focus_on_load: focusOnLoad,
    confirm,
  })
  .refine(oneKindOfOptions, 'either options or option_groups is required')
  .refine(eachValueOnce, 'option values must be unique')
  .refine(
    (element) => areOptions(element.initial_options ?? [], element),
    'initial_options must be among options',
  );

const usersSelect = z.strictObject({
  type: z.literal('users_select'),
  action_id: actionId,
  placeholder,
  initial_user: z.string().exactOptional(),
  focus_on_load: focusOnLoad,
  confirm,
});

const multiUsersSelect = z.strictObject({
  type: z.literal('multi_users_select'),
  action_id: actionId,
  placeholder,
  initial_users: z.array(z.string()).exactOptional(),
  max_selected_items: z.int().min(1).exactOptional(),
  focus_on_load: focusOnLoad,
  confirm,
});

const conversationsSelect = z.strictObject({
  type: z.literal('conversations_select'),
  action_id: actionId,
  placeholder,
  initial_conversation: z.string().exactOptional(),
  filter: z
    .strictObject({
      include: z.array(z.enum(['im', 'mpim', 'private', 'public'])).exactOptional(),
      exclude_bot_users: z.boolean().exactOptional(),
      exclude_external_shared_channels: z.boolean().exactOptional(),
    })
    .exactOptional(),
  focus_on_load: focusOnLoad,
  confirm,
});

const overflow = z
  .strictObject({
    type: z.literal('overflow'),
    action_id: actionId,
    options: listOf(overflowOption, 1, 5),
    confirm,
  })
  .refine(eachValueOnce, 'option values must be unique');

const radioButtons = z
  .strictObject({
    type: z.literal('radio_buttons'),
    action_id: actionId,
    options: listOf(choice, 1, 10),
    initial_option: choice.exactOptional(),
    focus_on_load: focusOnLoad,
    confirm,
  })
  .refine(eachValueOnce, 'option values must be unique')
  .refine(
    (element) => areOptions(element.initial_option === undefined ? [] : [element.initial_option], element),
    'initial_option must be among options',
  );

const checkboxes = z
  .strictObject({
    type: z.literal('checkboxes'),
    action_id: actionId,
    options: listOf(choice, 1, 10),
    initial_options: listOf(choice, 1, 10).exactOptional(),
    focus_on_load: focusOnLoad,
    confirm,
  })
  .refine(eachValueOnce, 'option values must be unique')
  .refine(
    (element) => areOptions(element.initial_options ?? [], element),
    'initial_options must be among options',
  );

const datepicker = z.strictObject({
  type: z.literal('datepicker'),
  action_id: actionId,
  placeholder,
  initial_date: z.iso.date('must be a date as YYYY-MM-DD').exactOptional(),
  focus_on_load: focusOnLoad,
  confirm,
});

const timepicker = z.strictObject({
  type: z.literal('timepicker'),
  action_id: actionId,
  placeholder,
  initial_time: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'must be a time as HH:mm')
    .exactOptional(),
  timezone: z.string().exactOptional(),
  focus_on_load: focusOnLoad,
  confirm,
});

const dispatchConfig = z
  .strictObject({
    trigger_actions_on: listOf(z.enum(['on_enter_pressed', 'on_character_entered']), 1, 2),
  })
  .exactOptional();

const plainTextInput = z.strictObject({
  type: z.literal('plain_text_input'),
  action_id: actionId,
  placeholder,
  initial_value: textOf(0, 3000).exactOptional(),
  multiline: z.boolean().exactOptional(),
  min_length: z.int().min(0).max(3000).exactOptional(),
  max_length: z.int().min(1).max(3000).exactOptional(),
  dispatch_action_config: dispatchConfig,
  focus_on_load: focusOnLoad,
});

const numberInput = z.strictObject({
  type: z.literal('number_input'),
  action_id: actionId,
  is_decimal_allowed: z.boolean('is required'),
  placeholder,
  initial_value: z.string().exactOptional(),
  min_value: z.string().exactOptional(),
  max_value: z.string().exactOptional(),
  dispatch_action_config: dispatchConfig,
  focus_on_load: focusOnLoad,
});

export const slackFile = z.union([z.strictObject({ id: z.string() }), z.strictObject({ url: z.string() })]);
export const hasOneSource = (image: { image_url?: string; slack_file?: unknown }) =>
  (image.image_url === undefined) !== (image.slack_file === undefined);
export const imageUrl = z
  .url({ protocol: /^https?$/, error: 'invalid url' })
  .max(3000)
  .exactOptional();

export const imageElement = z
  .strictObject({
    type: z.literal('image'),
    alt_text: textOf(1, 2000),
    image_url: imageUrl,
    slack_file: slackFile.exactOptional(),
  })
  .refine(hasOneSource, 'either image_url or slack_file is required');

export const sectionAccessory = z.discriminatedUnion(
  'type',
  [
    button,
    checkboxes,
    datepicker,
    imageElement,
    multiStaticSelect,
    overflow,
    radioButtons,
    staticSelect,
    timepicker,
    usersSelect,
    multiUsersSelect,
    conversationsSelect,
  ],
  'unsupported type of accessory',
);
export const actionsElement = z.discriminatedUnion(
  'type',
  [
    button,
    checkboxes,
    datepicker,
    multiStaticSelect,
    overflow,
    radioButtons,
    staticSelect,
    timepicker,
    usersSelect,
    multiUsersSelect,
    conversationsSelect,
  ],
  'unsupported type of element',
);
export const inputElement = z.discriminatedUnion(
  'type',
  [
    checkboxes,
    datepicker,
    multiStaticSelect,
    numberInput,
    plainTextInput,
    radioButtons,
    staticSelect,
    timepicker,
    usersSelect,
    multiUsersSelect,
    conversationsSelect,
  ],
  'unsupported type of element',
);

export type AcceptedElement =
  | z.infer<typeof sectionAccessory>
  | z.infer<typeof actionsElement>
  | z.infer<typeof inputElement>;
export type AcceptedText = z.infer<ReturnType<typeof anyText>>;
export type AcceptedOption = z.infer<typeof choice>;
export type AcceptedConfirm = NonNullable<z.infer<typeof confirm>>;
