import { openLinesWanted } from '../blocks/again-message.ts';
import { draftForm } from '../blocks/forms.ts';
import { cardKey } from '../flows/post-draft.ts';
import { startAgainFrom } from '../flows/start-again.ts';
import type { ActionRequest, Handler } from '../handling.ts';
import { toYou, withPlan } from './with-plan.ts';

/** The form a class is written in. */
export const onOpenDraft: Handler<ActionRequest> = async ({ triggerId }, desk) => ({
  answers: [{ kind: 'open view', triggerId, view: draftForm(desk.words) }],
});

/** A new draft from an earlier class, by its button. */
export const onStartAgain: Handler<ActionRequest> = withPlan(async ({ personId }, open, { name }, desk) => {
  const started = await startAgainFrom(desk, personId, open.record.id, name === openLinesWanted);
  if (started === undefined) return toYou({ text: desk.words.flow.buttonGone });
  return {
    answers: [
      {
        kind: 'link to you',
        noticeKey: cardKey(started.record.id),
        message: (link) => ({ text: desk.words.flow.draftIsAt(link) }),
      },
    ],
  };
});
