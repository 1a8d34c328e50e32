import { isHeadCoach } from '../../domain/who-may.ts';
import { readBatchValue } from '../blocks/batch-message.ts';
import { printButtonValue } from '../blocks/button-value.ts';
import { renderHome } from '../blocks/home-view.ts';
import { approveWithNoteForm, commentForm, dismissForm } from '../blocks/review-forms.ts';
import { resolveComment } from '../flows/comment-on-move.ts';
import { homeOf } from '../flows/home-of.ts';
import { approveClean } from '../flows/reviews-at-once.ts';
import { type ActionRequest, type Handler, noReaction } from '../handling.ts';
import { toYou, withPlan, withReviewedPlan, withTheirPlan } from './with-plan.ts';

export const onOpenApproveWithNote: Handler<ActionRequest> = withReviewedPlan(
  async ({ triggerId }, open, { version }, desk) => ({
    answers: [
      {
        kind: 'open view',
        triggerId,
        view: approveWithNoteForm(printButtonValue({ plan: open.record.id, version }), desk),
      },
    ],
  }),
);

export const onOpenComment: Handler<ActionRequest> = withReviewedPlan(
  async ({ triggerId }, open, _value, desk) => {
    const view = commentForm(open, desk);
    return view === undefined
      ? toYou({ text: desk.words.flow.fixLinesFirst })
      : { answers: [{ kind: 'open view', triggerId, view }] };
  },
);

export const onResolveComment: Handler<ActionRequest> = withPlan(
  async ({ personId }, open, { comment }, desk) => {
    if (comment === undefined) return toYou({ text: desk.words.flow.buttonGone });
    const told = await resolveComment(desk, open, comment, personId);
    return told === undefined ? noReaction : toYou(told);
  },
);

/** Opens the form for a word of reason, in the place of the view it was tapped in. */
export const onOpenDismiss: Handler<ActionRequest> = withTheirPlan(
  async ({ triggerId, view }, open, { name }, desk) => {
    if (name === undefined) return toYou({ text: desk.words.flow.buttonGone });
    const form = dismissForm(open, name, desk);
    return {
      answers: [
        view === undefined
          ? { kind: 'open view', triggerId, view: form }
          : { kind: 'update view', viewId: view.id, view: form },
      ],
    };
  },
);

/** The clean ones of a batch; where its message was posted, what became of them takes its place, and a home is shown anew. */
export const onApproveClean: Handler<ActionRequest> = async ({ value, personId, message, view }, desk) => {
  const wanted = readBatchValue(value);
  if (wanted === undefined) return toYou({ text: desk.words.flow.buttonGone });
  const done = await approveClean(desk, personId, wanted);
  if (done === undefined) return toYou({ text: desk.words.flow.buttonGone });
  const posted =
    message === undefined || !isHeadCoach(desk.settings, personId)
      ? undefined
      : await desk.stores.notices.findBySentTo(desk.studioId, message.place, message.stamp);
  if (posted === undefined && view !== undefined) {
    const home = renderHome(await homeOf(desk, personId), desk.words);
    return { answers: [...toYou(done).answers, { kind: 'publish home', personId, view: home }] };
  }
  if (posted === undefined) return toYou(done);
  await desk.stores.notices.enqueue(desk.studioId, {
    key: `${posted.key}:done:${desk.newId()}`,
    to: posted.to,
    action: { kind: 'update', of: posted.key },
    payload: done,
    causedAt: desk.now,
  });
  return noReaction;
};
