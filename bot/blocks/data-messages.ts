import type { ModalView } from '@slack/types';
import { type NoticeKind, noticeKinds } from '../../domain/ports.ts';
import type { Message } from '../handling.ts';
import { actions, views } from '../ids.ts';
import type { Words } from '../words/words.ts';
import { button, buttons, sections } from './elements.ts';
import { formView, multiSelectField, plainText } from './form-parts.ts';
import { limits } from './limits.ts';

/** What the button carries that deletes whoever presses it. */
export const forgetMeValue = 'me';

/** Asks once more before a person is deleted. */
export function renderForgetMe({ data }: Words): Message {
  const press = button({
    action: actions.forgetMe,
    label: data.forgetButton,
    value: forgetMeValue,
    style: 'danger',
  });
  const confirm = {
    title: plainText(data.forgetTitle, 100),
    text: plainText(data.forgetLead.replaceAll('*', ''), 300),
    confirm: plainText(data.forgetYes, 30),
    deny: plainText(data.forgetNo, 30),
    style: 'danger' as const,
  };
  return {
    text: data.forgetLead,
    blocks: [
      ...sections('forget', [data.forgetLead]),
      { type: 'actions', block_id: 'forget-me', elements: [{ ...press, confirm }] },
    ],
  };
}

export function renderNoticesLead({ data }: Words): Message {
  return {
    text: data.noticesLead,
    blocks: [
      ...sections('notices', [data.noticesLead]),
      ...buttons('open', [{ action: actions.openNotices, label: data.noticesButton, value: 'message' }]),
    ],
  };
}

export function noticesForm(off: ReadonlySet<NoticeKind>, words: Words): ModalView {
  const { data } = words;
  return formView(
    {
      callbackId: views.notices,
      title: data.noticesTitle,
      submit: data.noticesSave,
      metadata: '',
      blocks: [
        multiSelectField({
          id: 'notices',
          label: data.noticesLabel,
          hint: data.noticesHint,
          optional: true,
          choices: noticeKinds.map((kind) => ({ value: kind, label: data.noticeKind(kind) })),
          values: noticeKinds.filter((kind) => !off.has(kind)),
        }),
      ],
    },
    words,
  );
}

/** A person's data in a modal, with the way to have it deleted. */
export function myDataView(text: string, words: Words): ModalView {
  const forget = renderForgetMe(words).blocks ?? [];
  return {
    type: 'modal',
    title: plainText(words.data.title, limits.modalTitle),
    close: plainText(words.forms.close, limits.modalTitle),
    blocks: [...sections('data', text.split('\n')), ...forget],
  };
}
