import { readMoveOrder } from '../../domain/shorthand/read-move-order.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { inertText } from '../blocks/escape.ts';
import { draftForm } from '../blocks/forms.ts';
import { renderHelp, renderWholeHelp } from '../blocks/help-message.ts';
import { sayOfData } from '../flows/data-of-person.ts';
import { whyNotKept } from '../flows/keep-private.ts';
import { meaningOf } from '../flows/meaning-of.ts';
import { contextFor, type OpenPlan } from '../flows/open-plan.ts';
import { carryOutOrder } from '../flows/own-moves.ts';
import { cardKey } from '../flows/post-draft.ts';
import { reviewsFor } from '../flows/reviews-at-once.ts';
import { sayOfClass } from '../flows/say-of-class.ts';
import { readAgain, startAgain } from '../flows/start-again.ts';
import { startDraft } from '../flows/start-draft.ts';
import { weekForAsker } from '../flows/week-for-asker.ts';
import type { CommandRequest, Desk, Handler, Message, Reaction } from '../handling.ts';

/** `/evenset` alone opens the form; with a class it drafts it; `week` and `help` answer the asker alone. */
export const onEvenset: Handler<CommandRequest> = async (request, desk) => {
  const text = request.text.trim();
  const [word = '', argument, ...more] = text.split(/\s+/);
  if (text === '')
    return {
      answers: [
        { kind: 'open view', triggerId: request.triggerId, view: draftForm(desk.words, '', request.place) },
      ],
    };
  if (word.toLowerCase() === 'week' && more.length === 0)
    return toYou(await weekForAsker(desk, request.personId, argument));
  if (word.toLowerCase() === 'reviews' && argument === undefined)
    return toYou(await reviewsFor(desk, request.personId));
  if (word.toLowerCase() === 'help' && argument === undefined) return toYou(renderWholeHelp(desk));
  const ofData = await sayOfData(desk, request.personId, text);
  if (ofData !== undefined) return toYou(ofData);
  const order = readMoveOrder(text);
  if (order !== undefined) return toYou({ text: await carryOutOrder(desk, request.personId, order) });
  const again = readAgain(text);
  if (again !== undefined) {
    const started = await startAgain(desk, request.personId, again);
    return started.kind === 'started' ? linkTo(started.open, desk) : toYou(started.message);
  }
  const ofClass = await sayOfClass(desk, text, request.personId);
  if (ofClass !== undefined) return toYou(ofClass);
  const reading = readPlan(text, await contextFor(desk));
  if (meaningOf(text, reading, false) === 'unclear') return toYou(renderHelp(desk.words));
  const isPrivate = whyNotKept(desk, text);
  if (isPrivate !== undefined)
    return toYou({ text: desk.words.privacy.withText(isPrivate.text, inertText(text)) });
  const open = await startDraft(desk, { personId: request.personId, text });
  return linkTo(open, desk);
};

function linkTo({ record }: OpenPlan, { words }: Desk): Reaction {
  return {
    answers: [
      {
        kind: 'link to you',
        noticeKey: cardKey(record.id),
        message: (link) => ({ text: words.flow.draftIsAt(link) }),
      },
    ],
  };
}

function toYou(message: Message): Reaction {
  return { answers: [{ kind: 'only to you', message }] };
}
