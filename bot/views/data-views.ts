import { noticeKinds } from '../../domain/ports.ts';
import { forgetMeValue, myDataView, noticesForm } from '../blocks/data-messages.ts';
import { myDataText } from '../flows/data-of-person.ts';
import { forgetPerson } from '../flows/forget-person.ts';
import type { ActionRequest, Handler, ViewRequest } from '../handling.ts';

export const onShowMyData: Handler<ActionRequest> = async ({ personId, triggerId }, desk) => ({
  answers: [{ kind: 'open view', triggerId, view: myDataView(await myDataText(desk, personId), desk.words) }],
});

/** Deletes whoever pressed, and nobody else. Said in passing: a kept notice would be kept of them. */
export const onForgetMe: Handler<ActionRequest> = async ({ personId, message, value }, desk) => {
  if (value !== forgetMeValue)
    return { answers: [{ kind: 'only to you', message: { text: desk.words.flow.buttonGone } }] };
  const places = message === undefined || !message.place.startsWith('D') ? [] : [message.place];
  await forgetPerson(desk, personId, places);
  return { answers: [{ kind: 'only to you', message: { text: desk.words.data.forgotten } }] };
};

export const onOpenNotices: Handler<ActionRequest> = async ({ personId, triggerId }, desk) => {
  const off = await desk.stores.care.listSwitchedOff(desk.studioId, personId);
  return { answers: [{ kind: 'open view', triggerId, view: noticesForm(off, desk.words) }] };
};

export const onNoticesForm: Handler<ViewRequest> = async ({ personId, values }, desk) => {
  const chosen = values.notices ?? [];
  const off = noticeKinds.filter((kind) => !chosen.includes(kind));
  await desk.stores.care.switchOff(desk.studioId, personId, off);
  return {
    ack: { kind: 'close' },
    answers: [{ kind: 'only to you', message: { text: desk.words.data.noticesSaved(off) } }],
  };
};
