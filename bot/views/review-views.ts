import { findingsView } from '../blocks/findings-view.ts';
import { commentOnMove } from '../flows/comment-on-move.ts';
import { dismissFinding } from '../flows/dismiss-finding.ts';
import { planOfValue } from '../flows/plan-of-value.ts';
import { approve } from '../flows/review-plan.ts';
import type { Handler, Reaction, ViewRequest } from '../handling.ts';
import { errorAt, textOf } from './plan-views.ts';

const closed: Reaction = { ack: { kind: 'close' }, answers: [] };

export const onApproveWithNoteForm: Handler<ViewRequest> = async ({ metadata, values, personId }, desk) => {
  const found = await planOfValue(desk, metadata);
  if (found === undefined) return errorAt('note', desk.words.flow.buttonGone);
  const { value, open } = found;
  const note = textOf(values, 'note').trim();
  if (note === '') return errorAt('note', desk.words.coach.noteMissing);
  const outcome = await approve(desk, open, personId, value.version, note);
  return outcome.kind === 'kept' ? errorAt('note', outcome.message.text) : closed;
};

export const onCommentForm: Handler<ViewRequest> = async ({ metadata, values, personId }, desk) => {
  const found = await planOfValue(desk, metadata);
  if (found === undefined) return errorAt('comment', desk.words.flow.buttonGone);
  const line = textOf(values, 'line');
  if (line === '') return errorAt('line', desk.words.coach.commentLineMissing);
  const told = await commentOnMove(desk, found.open, personId, line, textOf(values, 'comment'));
  return told === undefined ? closed : errorAt('comment', told.text);
};

/** Once it is left out, the form gives way to the checks as they stand. */
export const onDismissForm: Handler<ViewRequest> = async ({ metadata, values, personId }, desk) => {
  const found = await planOfValue(desk, metadata);
  const code = found?.value.name;
  if (found === undefined || code === undefined) return errorAt('reason', desk.words.flow.buttonGone);
  const outcome = await dismissFinding(desk, found.open, personId, code, textOf(values, 'reason'));
  return outcome.kind === 'kept'
    ? errorAt('reason', outcome.message.text)
    : { ack: { kind: 'update', view: findingsView(outcome.open, desk) }, answers: [] };
};
