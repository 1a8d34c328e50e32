import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { instantOf, isWallTime, zonedMoment } from '../../domain/calendar/wall-time.ts';
import { changeClassForm, confirmChangeForm } from '../blocks/class-change-forms.ts';
import { readClassChange } from '../blocks/class-change-value.ts';
import { readClassValue } from '../blocks/class-value.ts';
import { readingView } from '../blocks/forms.ts';
import { renderHome } from '../blocks/home-view.ts';
import { cancelClass, moveClass, movedClass, putOnAgain, refusal } from '../flows/change-class.ts';
import { clashesWith } from '../flows/clashes-with.ts';
import { findClass } from '../flows/classes-in-week.ts';
import { homeOf } from '../flows/home-of.ts';
import { toldOfChange } from '../flows/told-of-change.ts';
import type { Desk, FormValues, Handler, Message, Reaction, ViewRequest } from '../handling.ts';
import type { ClassChange } from '../words/en/class-change-words.ts';
import { errorAt, textOf } from './plan-views.ts';

/** Opens the form for one class; a cancelled one can only be put on again. */
export async function openChange(
  desk: Desk,
  scheduled: ScheduledClass,
  by: string,
  triggerId: string,
): Promise<Reaction> {
  const refused = refusal(desk, scheduled, by);
  if (refused !== undefined) return { answers: [{ kind: 'only to you', message: refused }] };
  const view =
    scheduled.state === 'cancelled'
      ? await confirmView(desk, scheduled, { kind: 'on again' }, by)
      : changeClassForm(scheduled, desk.settings.rooms, desk.words);
  return { answers: [{ kind: 'open view', triggerId, view }] };
}

/** What was filled in, shown with all it will say, before anything is done. */
export const onChangeClassForm: Handler<ViewRequest> = async ({ values, metadata, personId }, desk) => {
  const read = readClassValue(metadata);
  const scheduled = read === undefined ? undefined : await findClass(desk, read.classId);
  if (read === undefined || scheduled === undefined) return errorAt('what', desk.words.flow.buttonGone);
  if (scheduled.startsAt.instant !== read.startsAt) return errorAt('what', desk.words.classes.notThisClass);
  const refused = refusal(desk, scheduled, personId);
  if (refused !== undefined) return errorAt('what', refused.text);
  const change = changeIn(desk, values, scheduled);
  if (change.kind === 'wrong') return errorAt(change.block, change.text);
  return { ack: { kind: 'update', view: await confirmView(desk, scheduled, change, personId) }, answers: [] };
};

/** Does what the page before showed, and says what became of it. */
export const onConfirmChange: Handler<ViewRequest> = async ({ metadata, personId }, desk) => {
  const read = readClassChange(metadata);
  const scheduled = read === undefined ? undefined : await findClass(desk, read.classId);
  if (read === undefined || scheduled === undefined) return said(desk, { text: desk.words.flow.buttonGone });
  if (scheduled.startsAt.instant !== read.startsAt)
    return said(desk, { text: desk.words.classes.notThisClass });
  const done = await doChange(desk, scheduled, read.change, personId);
  const home = renderHome(await homeOf(desk, personId), desk.words);
  return { ...said(desk, done), answers: [{ kind: 'publish home', personId, view: home }] };
};

type Wrong = { readonly kind: 'wrong'; readonly block: string; readonly text: string };

function changeIn(desk: Desk, values: FormValues, { startsAt, room }: ScheduledClass): ClassChange | Wrong {
  const { forms, classes } = desk.words;
  const wrong = (block: string, text: string): Wrong => ({ kind: 'wrong', block, text });
  if (textOf(values, 'what') === 'cancel') return { kind: 'cancel' };
  const [date, time, chosen] = [textOf(values, 'date'), textOf(values, 'time'), textOf(values, 'room')];
  if (date === '') return wrong('date', forms.dateMissing);
  if (time === '') return wrong('time', forms.timeMissing);
  if (!isWallTime({ date, time })) return wrong('date', forms.noSuchTime);
  const instant = instantOf({ date, time, zone: desk.settings.zone });
  const isElsewhere = chosen !== '' && chosen !== room;
  if (isElsewhere && !desk.settings.rooms.some(({ name }) => name === chosen))
    return wrong('room', forms.roomGone);
  if (instant === startsAt.instant && !isElsewhere) return wrong('date', classes.sameMoment);
  if (instant <= desk.now) return wrong('date', forms.inThePast);
  return { kind: 'move', startsAt: { date, time }, ...(isElsewhere ? { room: chosen } : {}) };
}

async function confirmView(desk: Desk, scheduled: ScheduledClass, change: ClassChange, by: string) {
  const { words } = desk;
  if (change.kind === 'move') {
    const to = zonedMoment(change.startsAt, desk.settings.zone);
    const clashes = await clashesWith(desk, movedClass(scheduled, to, change.room));
    return confirmChangeForm(scheduled, change, await toldOfChange(desk, scheduled, by, to), clashes, words);
  }
  const clashes =
    change.kind === 'on again' ? await clashesWith(desk, { ...scheduled, state: 'planned' }) : [];
  return confirmChangeForm(scheduled, change, await toldOfChange(desk, scheduled, by), clashes, words);
}

function doChange(desk: Desk, scheduled: ScheduledClass, change: ClassChange, by: string): Promise<Message> {
  switch (change.kind) {
    case 'cancel':
      return cancelClass(desk, scheduled, by);
    case 'on again':
      return putOnAgain(desk, scheduled, by);
    case 'move':
      return moveClass(desk, scheduled, zonedMoment(change.startsAt, desk.settings.zone), by, change.room);
  }
}

function said({ words }: Desk, { text }: Message): Reaction {
  return {
    ack: { kind: 'update', view: readingView(words.classChange.doneTitle, text.split('\n'), words) },
    answers: [],
  };
}
