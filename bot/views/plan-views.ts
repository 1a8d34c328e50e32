import { instantOf, isWallTime } from '../../domain/calendar/wall-time.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { classFields } from '../blocks/forms.ts';
import { clip, limits } from '../blocks/limits.ts';
import { putOnCalendar } from '../flows/change-plan.ts';
import { meaningOf } from '../flows/meaning-of.ts';
import { contextFor } from '../flows/open-plan.ts';
import { classWithOtherPlan } from '../flows/place-taken.ts';
import { planOfValue } from '../flows/plan-of-value.ts';
import { cardKey } from '../flows/post-draft.ts';
import { askChanges } from '../flows/review-plan.ts';
import { startDraft } from '../flows/start-draft.ts';
import type { FormValues, Handler, Reaction, ViewRequest } from '../handling.ts';

/** The class written in the form becomes the same draft as by message. */
export const onDraftForm: Handler<ViewRequest> = async (request, desk) => {
  const text = classFields
    .map((field) => textOf(request.values, field))
    .filter((part) => part !== '')
    .join('\n');
  const word = desk.words.privateWordIn(text);
  if (word !== undefined) return errorAt('class', desk.words.privacy.inForm(word));
  const reading = readPlan(text, await contextFor(desk));
  if (meaningOf(text, reading, false) === 'unclear') return errorAt('class', desk.words.forms.classUnclear);
  const open = await startDraft(desk, { personId: request.personId, text });
  // Asked for on the app's own pages, the draft is where the form leads back to.
  if (request.metadata === '') return closed;
  return {
    ack: { kind: 'close' },
    answers: [
      {
        kind: 'link to you',
        noticeKey: cardKey(open.record.id),
        place: request.metadata,
        message: (link) => ({ text: desk.words.flow.draftIsAt(link) }),
      },
    ],
  };
};

export const onScheduleForm: Handler<ViewRequest> = async (request, desk) => {
  const { values, metadata, personId } = request;
  const found = await planOfValue(desk, metadata);
  if (found === undefined) return errorAt('date', desk.words.flow.buttonGone);
  const [date, time] = [textOf(values, 'date'), textOf(values, 'time')];
  const [roomChosen, peopleSaid] = [textOf(values, 'room'), textOf(values, 'people')];
  const room = desk.settings.rooms.find(({ name }) => clip(name, limits.optionText) === roomChosen)?.name;
  if (date === '') return errorAt('date', desk.words.forms.dateMissing);
  if (time === '') return errorAt('time', desk.words.forms.timeMissing);
  if (!isWallTime({ date, time })) return errorAt('date', desk.words.forms.noSuchTime);
  if (!(instantOf({ date, time, zone: desk.settings.zone }) > desk.now))
    return errorAt('date', desk.words.forms.inThePast);
  if (roomChosen !== '' && room === undefined) return errorAt('room', desk.words.forms.roomGone);
  if (!/^\d{0,3}$/.test(peopleSaid)) return errorAt('people', desk.words.forms.peopleHint);
  const other = await classWithOtherPlan(
    desk,
    found.open.record,
    instantOf({ date, time, zone: desk.settings.zone }),
  );
  if (other !== undefined)
    return errorAt('time', desk.words.place.hasInForm(other.title ?? desk.words.classes.untitled));
  const people = Number(peopleSaid);
  const outcome = await putOnCalendar(desk, found.open, personId, {
    startsAt: { date, time },
    ...(room === undefined ? {} : { room }),
    ...(people > 0 ? { people } : {}),
  });
  return outcome.kind === 'kept' ? errorAt('date', outcome.message.text) : closed;
};

export const onAskChangesForm: Handler<ViewRequest> = async (request, desk) => {
  const found = await planOfValue(desk, request.metadata);
  if (found === undefined) return errorAt('reason', desk.words.flow.buttonGone);
  const reason = textOf(request.values, 'reason').trim();
  if (reason === '') return errorAt('reason', desk.words.forms.reasonMissing);
  const outcome = await askChanges(desk, found.open, request.personId, found.value.version, reason);
  return outcome.kind === 'kept' ? errorAt('reason', outcome.message.text) : closed;
};

const closed: Reaction = { ack: { kind: 'close' }, answers: [] };

export function textOf(values: FormValues, block: string): string {
  const value = values[block];
  return typeof value === 'string' ? value : '';
}

export function errorAt(block: string, text: string): Reaction {
  return { ack: { kind: 'errors', byBlock: { [block]: text } }, answers: [] };
}
