import { draftForm } from '../blocks/forms.ts';
import type { ActionRequest, Handler } from '../handling.ts';

/** The form a class is written in. */
export const onOpenDraft: Handler<ActionRequest> = async ({ triggerId }, desk) => ({
  answers: [{ kind: 'open view', triggerId, view: draftForm(desk.words) }],
});
