import { taughtWithChangesForm } from '../blocks/forms.ts';
import { findClass } from '../flows/classes-in-week.ts';
import { whyNotPosted } from '../flows/keep-private.ts';
import { type Marked, markClass, whyNotMarked } from '../flows/mark-class.ts';
import {
  type ActionRequest,
  type Handler,
  noReaction,
  type Reaction,
  type ViewRequest,
} from '../handling.ts';
import { errorAt, textOf } from '../views/plan-views.ts';
import { toYou } from './with-plan.ts';

export const onTaughtAsPlanned: Handler<ActionRequest> = async ({ value, personId }, desk) =>
  reactionOf(await markClass(desk, value, personId, { how: 'as planned' }));

export const onNotTaught: Handler<ActionRequest> = async ({ value, personId }, desk) =>
  reactionOf(await markClass(desk, value, personId, { how: 'not taught' }));

export const onOpenTaughtWithChanges: Handler<ActionRequest> = async (request, desk) => {
  const { value, triggerId, personId } = request;
  const scheduled = await findClass(desk, value);
  if (scheduled === undefined) return toYou({ text: desk.words.flow.buttonGone });
  const refused = whyNotMarked(desk, scheduled, personId);
  return refused === undefined
    ? { answers: [{ kind: 'open view', triggerId, view: taughtWithChangesForm(value, desk.words) }] }
    : toYou(refused);
};

export const onTaughtWithChangesForm: Handler<ViewRequest> = async ({ metadata, values, personId }, desk) => {
  const changes = textOf(values, 'changes').trim();
  if (changes === '') return errorAt('changes', desk.words.forms.changesMissing);
  const isPrivate = whyNotPosted(desk, changes);
  if (isPrivate !== undefined) return errorAt('changes', isPrivate.text);
  const outcome = await markClass(desk, metadata, personId, { how: 'with changes', changes });
  return outcome.kind === 'kept'
    ? errorAt('changes', outcome.message.text)
    : { ack: { kind: 'close' }, answers: [] };
};

export const onEffort: Handler<ActionRequest> = async ({ value, personId }, desk) => {
  const [, classId, said] = /^(.+)\|(10|\d)$/.exec(value) ?? [];
  if (classId === undefined) return toYou({ text: desk.words.flow.buttonGone });
  return reactionOf(await markClass(desk, classId, personId, { effort: Number(said) }));
};

const lengths = ['short', 'on time', 'over'] as const;

export const onLength: Handler<ActionRequest> = async ({ value, personId }, desk) => {
  const [, classId, said] = /^(.+)\|([a-z ]+)$/.exec(value) ?? [];
  const length = lengths.find((each) => each === said);
  if (classId === undefined || length === undefined) return toYou({ text: desk.words.flow.buttonGone });
  return reactionOf(await markClass(desk, classId, personId, { length }));
};

function reactionOf(outcome: Marked): Reaction {
  return outcome.kind === 'kept' ? toYou(outcome.message) : noReaction;
}
