import type { InputBlock, KnownBlock, ModalView, PlainTextElement, PlainTextOption } from '@slack/types';
import type { Words } from '../words/words.ts';
import { clip, limits } from './limits.ts';

type FormFacts = {
  readonly callbackId: string;
  readonly title: string;
  readonly submit: string;
  readonly metadata: string;
  readonly blocks: readonly KnownBlock[];
};

/** What every field has. Its block id is also the id of its element. */
type FieldFacts = {
  readonly id: string;
  readonly label: string;
  readonly hint?: string;
  readonly optional?: true;
};

export type Choice = { readonly value: string; readonly label: string };
export type ChoiceGroup = { readonly label: string; readonly choices: readonly Choice[] };

export function formView(
  { callbackId, title, submit, metadata, blocks }: FormFacts,
  words: Words,
): ModalView {
  return {
    type: 'modal',
    callback_id: callbackId,
    title: plainText(title, limits.modalTitle),
    submit: plainText(submit, limits.modalTitle),
    close: plainText(words.forms.close, limits.modalTitle),
    private_metadata: clip(metadata, limits.metadata),
    blocks: blocks.slice(0, limits.viewBlocks),
  };
}

export function plainText(text: string, most = 2_000): PlainTextElement {
  return { type: 'plain_text', text: clip(text, most) };
}

export function textField(
  facts: FieldFacts & { readonly value?: string; readonly most: number; readonly multiline?: true },
): InputBlock {
  const { id, value = '', most, multiline } = facts;
  return field(facts, {
    type: 'plain_text_input',
    action_id: id,
    max_length: most,
    ...(multiline === undefined ? {} : { multiline }),
    ...(value === '' ? {} : { initial_value: clip(value, most) }),
  });
}

export function numberField(
  facts: FieldFacts & {
    readonly value?: number;
    readonly least: number;
    readonly most: number;
    readonly decimals?: true;
  },
): InputBlock {
  const { id, value, least, most, decimals } = facts;
  return field(facts, {
    type: 'number_input',
    action_id: id,
    is_decimal_allowed: decimals === true,
    min_value: String(least),
    max_value: String(most),
    ...(value === undefined ? {} : { initial_value: String(value) }),
  });
}

export function dateField(facts: FieldFacts & { readonly value?: string }): InputBlock {
  const { id, value } = facts;
  return field(facts, {
    type: 'datepicker',
    action_id: id,
    ...(value === undefined ? {} : { initial_date: value }),
  });
}

export function timeField(facts: FieldFacts & { readonly value?: string }): InputBlock {
  const { id, value } = facts;
  return field(facts, {
    type: 'timepicker',
    action_id: id,
    ...(value === undefined ? {} : { initial_time: value }),
  });
}

export function selectField(
  facts: FieldFacts & { readonly value?: string; readonly choices: readonly Choice[] },
): InputBlock {
  const options = facts.choices.slice(0, limits.selectOptions).map(option);
  const initial = options.find(({ value }) => value === facts.value);
  return field(facts, {
    type: 'static_select',
    action_id: facts.id,
    options,
    ...(initial === undefined ? {} : { initial_option: initial }),
  });
}

/** More choices than one list may hold, in groups of at most a hundred. */
export function groupedSelectField(
  facts: FieldFacts & { readonly value?: string; readonly groups: readonly ChoiceGroup[] },
): InputBlock {
  const groups = facts.groups
    .filter(({ choices }) => choices.length > 0)
    .map(({ label, choices }) => ({
      label: plainText(label, limits.optionText),
      options: choices.slice(0, limits.selectOptions).map(option),
    }));
  const initial = groups.flatMap(({ options }) => options).find(({ value }) => value === facts.value);
  return field(facts, {
    type: 'static_select',
    action_id: facts.id,
    option_groups: groups,
    ...(initial === undefined ? {} : { initial_option: initial }),
  });
}

export function multiSelectField(
  facts: FieldFacts & { readonly values?: readonly string[]; readonly choices: readonly Choice[] },
): InputBlock {
  const options = facts.choices.slice(0, limits.selectOptions).map(option);
  const initial = options.filter(({ value = '' }) => facts.values?.includes(value));
  return field(facts, {
    type: 'multi_static_select',
    action_id: facts.id,
    options,
    ...(initial.length === 0 ? {} : { initial_options: initial }),
  });
}

export function peopleField(facts: FieldFacts & { readonly values?: readonly string[] }): InputBlock {
  const { id, values = [] } = facts;
  return field(facts, {
    type: 'multi_users_select',
    action_id: id,
    ...(values.length === 0 ? {} : { initial_users: [...values] }),
  });
}

export function personField(facts: FieldFacts & { readonly value?: string }): InputBlock {
  const { id, value } = facts;
  return field(facts, {
    type: 'users_select',
    action_id: id,
    ...(value === undefined ? {} : { initial_user: value }),
  });
}

export function channelField(facts: FieldFacts & { readonly value?: string }): InputBlock {
  const { id, value } = facts;
  return field(facts, {
    type: 'conversations_select',
    action_id: id,
    filter: { include: ['public', 'private'], exclude_bot_users: true },
    ...(value === undefined ? {} : { initial_conversation: value }),
  });
}

function field(facts: FieldFacts, element: InputBlock['element']): InputBlock {
  const { id, label, hint, optional } = facts;
  return {
    type: 'input',
    block_id: id,
    label: plainText(label),
    ...(hint === undefined ? {} : { hint: plainText(hint) }),
    ...(optional === undefined ? {} : { optional }),
    element,
  };
}

function option({ value, label }: Choice): PlainTextOption {
  return { text: plainText(label, limits.optionText), value };
}
