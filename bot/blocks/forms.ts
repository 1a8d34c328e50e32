import type { InputBlock, ModalView, PlainTextOption } from '@slack/types';
import type { Room } from '../../domain/settings.ts';
import { views } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { sections } from './elements.ts';
import { formView, plainText } from './form-parts.ts';
import { clip, firstLines, limits, packLines } from './limits.ts';

/** Lines to read, in a modal without a submit button. */
export function readingView(title: string, lines: readonly string[], words: Words): ModalView {
  const shown = firstLines(lines, limits.viewText, words.asks.moreLines);
  return {
    type: 'modal',
    title: plainText(title, limits.modalTitle),
    close: plainText(words.forms.close, limits.modalTitle),
    blocks: [...sections('lines', shown)],
  };
}

/** What one field of a form takes. */
const mostOfField = 3_000;

/** The fields of a class in order; what is too long for one goes on in the next. */
export const classFields = ['class', 'class-2', 'class-3'] as const;

/** Where a class is written or pasted; the same draft as by message. `place`: where it was asked for, if in a place. */
export function draftForm(words: Words, text = '', place = ''): ModalView {
  const parts = packLines(text.split('\n'), mostOfField);
  const blocks = classFields
    .slice(0, Math.max(1, parts.length))
    .map((field, place) => classField(field, parts[place] ?? '', place === 0, words));
  return formView(
    {
      callbackId: views.draft,
      title: words.forms.draftTitle,
      submit: words.forms.draftSubmit,
      metadata: place,
      blocks,
    },
    words,
  );
}

function classField(id: string, text: string, isFirst: boolean, { forms }: Words): InputBlock {
  return {
    type: 'input',
    block_id: id,
    label: plainText(isFirst ? forms.classLabel : forms.classGoesOn),
    ...(isFirst ? { hint: plainText(forms.classHint) } : { optional: true }),
    element: {
      type: 'plain_text_input',
      action_id: id,
      multiline: true,
      max_length: mostOfField,
      ...(isFirst ? { placeholder: plainText(forms.classPlaceholder, 150) } : {}),
      ...(text === '' ? {} : { initial_value: text }),
    },
  };
}

export type ScheduleFacts = {
  /** The title of the class that day and time are of, where they were not chosen yet. */
  readonly offered?: string;
  readonly date?: string;
  readonly time?: string;
  readonly room?: string;
  readonly people?: number;
};

export function scheduleForm(
  metadata: string,
  facts: ScheduleFacts,
  rooms: readonly Room[],
  words: Words,
): ModalView {
  const options = rooms.slice(0, limits.selectOptions).map(({ name }) => option(name));
  const chosen = options.find(({ value }) => value === facts.room);
  const blocks: readonly InputBlock[] = [
    {
      type: 'input',
      block_id: 'date',
      label: plainText(words.forms.date),
      ...(facts.offered === undefined
        ? {}
        : { hint: plainText(words.forms.offeredSlot(clip(facts.offered, limits.header))) }),
      element: {
        type: 'datepicker',
        action_id: 'date',
        ...(facts.date === undefined ? {} : { initial_date: facts.date }),
      },
    },
    {
      type: 'input',
      block_id: 'time',
      label: plainText(words.forms.time),
      element: {
        type: 'timepicker',
        action_id: 'time',
        ...(facts.time === undefined ? {} : { initial_time: facts.time }),
      },
    },
    ...(options.length === 0
      ? []
      : [
          {
            type: 'input' as const,
            block_id: 'room',
            optional: true,
            label: plainText(words.forms.room),
            element: {
              type: 'static_select' as const,
              action_id: 'room',
              options,
              ...(chosen === undefined ? {} : { initial_option: chosen }),
            },
          },
        ]),
    {
      type: 'input',
      block_id: 'people',
      optional: true,
      label: plainText(words.forms.people),
      hint: plainText(words.forms.peopleHint),
      element: {
        type: 'number_input',
        action_id: 'people',
        is_decimal_allowed: false,
        min_value: '1',
        max_value: '200',
        ...(facts.people === undefined ? {} : { initial_value: String(facts.people) }),
      },
    },
  ];
  return formView(
    {
      callbackId: views.schedule,
      title: words.forms.scheduleTitle,
      submit: words.forms.scheduleSubmit,
      metadata,
      blocks,
    },
    words,
  );
}

/** A reason in the coach's words, for the instructor. */
export function askChangesForm(metadata: string, words: Words): ModalView {
  return formView(
    {
      callbackId: views.askChanges,
      title: words.forms.askTitle,
      submit: words.forms.askSubmit,
      metadata,
      blocks: [line('reason', words.forms.askLabel, words.forms.privacyHint, 1_000)],
    },
    words,
  );
}

export function taughtWithChangesForm(metadata: string, words: Words): ModalView {
  return formView(
    {
      callbackId: views.taughtWithChanges,
      title: words.forms.taughtTitle,
      submit: words.forms.taughtSubmit,
      metadata,
      blocks: [line('changes', words.forms.taughtLabel, words.forms.privacyHint, 500)],
    },
    words,
  );
}

function line(blockId: string, label: string, hint: string, most: number): InputBlock {
  return {
    type: 'input',
    block_id: blockId,
    label: plainText(label),
    hint: plainText(hint),
    element: { type: 'plain_text_input', action_id: blockId, multiline: true, max_length: most },
  };
}

function option(text: string): PlainTextOption {
  return { text: plainText(text, limits.optionText), value: clip(text, limits.optionText) };
}
