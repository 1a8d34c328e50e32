import { keepText } from '../../domain/shorthand/keep-text.ts';
import { draftForm } from '../blocks/forms.ts';
import type { Handler, ShortcutRequest } from '../handling.ts';

/** A class in any message opens the form with its text as people see it, ready to become a draft of one's own. */
export const onDraftFromMessage: Handler<ShortcutRequest> = async ({ triggerId, message }, desk) => ({
  answers: [
    {
      kind: 'open view',
      triggerId,
      view: draftForm(desk.words, keepText(message?.text ?? ''), message?.place),
    },
  ],
});
