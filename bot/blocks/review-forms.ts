import type { ModalView } from '@slack/types';
import type { OpenPlan } from '../flows/open-plan.ts';
import { views } from '../ids.ts';
import { printButtonValue } from './button-value.ts';
import { moveChoices } from './comment-messages.ts';
import { formView, groupedSelectField, textField } from './form-parts.ts';
import type { Show } from './show.ts';

const mostOfNote = 1_000;

/** An approval with a note to the instructor. */
export function approveWithNoteForm(metadata: string, { words }: Pick<Show, 'words'>): ModalView {
  const { coach, forms } = words;
  return formView(
    {
      callbackId: views.approveWithNote,
      title: coach.noteTitle,
      submit: coach.noteSubmit,
      metadata,
      blocks: [
        textField({
          id: 'note',
          label: coach.noteLabel,
          hint: forms.privacyHint,
          most: mostOfNote,
          multiline: true,
        }),
      ],
    },
    words,
  );
}

/** A comment on one move. */
export function commentForm(open: OpenPlan, show: Show): ModalView | undefined {
  const { coach, forms } = show.words;
  const { plan } = open.version;
  const groups = plan === undefined ? [] : moveChoices(plan, show);
  if (groups.length === 0) return undefined;
  const { id, currentVersion } = open.record;
  return formView(
    {
      callbackId: views.comment,
      title: coach.commentTitle,
      submit: coach.commentSubmit,
      metadata: printButtonValue({ plan: id, version: currentVersion }),
      blocks: [
        groupedSelectField({ id: 'line', label: coach.commentOn, groups }),
        textField({
          id: 'comment',
          label: coach.commentLabel,
          hint: forms.privacyHint,
          most: mostOfNote,
          multiline: true,
        }),
      ],
    },
    show.words,
  );
}

/** A word of reason for leaving a finding out. */
export function dismissForm(open: OpenPlan, code: string, { words }: Pick<Show, 'words'>): ModalView {
  const { dismiss, forms } = words;
  const { id, currentVersion } = open.record;
  return formView(
    {
      callbackId: views.dismiss,
      title: dismiss.title,
      submit: dismiss.submit,
      metadata: printButtonValue({ plan: id, version: currentVersion, name: code }),
      blocks: [textField({ id: 'reason', label: dismiss.label, hint: forms.privacyHint, most: 300 })],
    },
    words,
  );
}
