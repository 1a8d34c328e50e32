import { endOf, isOn } from '../../domain/calendar/facts-of-class.ts';
import { readClassRequest } from '../../domain/calendar/read-class-request.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { houseClass, houseClassNames } from '../../domain/plan/house-classes.ts';
import { readClassValue } from '../blocks/class-value.ts';
import { findClass } from '../flows/classes-in-week.ts';
import { confirmIn } from '../flows/confirm-in.ts';
import { keepHandOver, seekCover, takeBackOffer, takeClass } from '../flows/cover-class.ts';
import { changeMessage, newestOf } from '../flows/keep-message.ts';
import { contextFor } from '../flows/open-plan.ts';
import { doToClass } from '../flows/say-of-class.ts';
import { startDraft } from '../flows/start-draft.ts';
import { takePlace } from '../flows/take-place.ts';
import {
  type ActionRequest,
  type Desk,
  type Handler,
  type Message,
  noReaction,
  type Reaction,
} from '../handling.ts';
import { openChange } from '../views/class-change-views.ts';
import { toYou } from './with-plan.ts';

type OnClass = (
  scheduled: ScheduledClass,
  desk: Desk,
  by: string,
  choice: string | undefined,
  triggerId: string,
  message: ActionRequest['message'],
) => Promise<Reaction>;

/** A button that stands for a class at one start; where either has changed, the person is told. */
function withClass(act: OnClass): Handler<ActionRequest> {
  return async ({ value, personId, triggerId, message }, desk) => {
    const read = readClassValue(value);
    const scheduled = read === undefined ? undefined : await findClass(desk, read.classId);
    if (read === undefined || scheduled === undefined) return toYou({ text: desk.words.flow.buttonGone });
    if (scheduled.startsAt.instant !== read.startsAt) return toYou({ text: desk.words.classes.notThisClass });
    return act(scheduled, desk, personId, read.choice, triggerId, message);
  };
}

export const onImIn = withClass(async (scheduled, desk, by) => {
  const refused = await confirmIn(desk, scheduled, by);
  return refused === undefined ? noReaction : toYou(refused);
});

export const onCannotTeach = withClass(async (scheduled, desk, by, _choice, _triggerId, message) =>
  inPlaceOf(message, desk, await seekCover(desk, scheduled, by)),
);

/** The answer takes the place of the question it was tapped under; else it is told to the person. */
async function inPlaceOf(message: ActionRequest['message'], desk: Desk, answer: Message): Promise<Reaction> {
  const asked =
    message && (await desk.stores.notices.findBySentTo(desk.studioId, message.place, message.stamp));
  const newest = asked?.key.startsWith('reply:') ? await newestOf(desk, asked.key) : undefined;
  if (newest === undefined) return toYou(answer);
  await changeMessage(desk, newest, answer);
  return noReaction;
}

export const onTakeBackOffer = withClass(async (scheduled, desk, by, _choice, _triggerId, message) =>
  inPlaceOf(message, desk, await takeBackOffer(desk, scheduled, by)),
);

export const onTakeClass = withClass(async (scheduled, desk, by) =>
  toYou(await takeClass(desk, scheduled, by)),
);

/** A plan that was written for a class with another one gets it. */
export const onTakePlace = withClass(async (scheduled, desk, by, choice) => {
  const told = await takePlace(desk, scheduled, choice ?? '', by);
  return told === undefined ? noReaction : toYou(told);
});

/** What was said, done to the class that was meant. */
export const onChooseClass = withClass(async (scheduled, desk, by, choice) => {
  const request = readClassRequest(choice ?? '');
  return request === undefined || !('when' in request)
    ? toYou({ text: desk.words.flow.buttonGone })
    : toYou(await doToClass(desk, request, scheduled, by));
});

/** The form in which a class is moved or cancelled. */
export const onOpenChangeClass = withClass((scheduled, desk, by, _, triggerId) =>
  openChange(desk, scheduled, by, triggerId),
);

/** The same for a class chosen from a list, by its id, as it stands now. */
export const onChooseOtherClass: Handler<ActionRequest> = async ({ value, personId, triggerId }, desk) => {
  const scheduled = await findClass(desk, value);
  return scheduled === undefined
    ? toYou({ text: desk.words.flow.buttonGone })
    : openChange(desk, scheduled, personId, triggerId);
};

/** A house class becomes the draft of whoever teaches this class now. */
export const onHouseClass = withClass(async (scheduled, desk, by, choice) => {
  const name = houseClassNames.find((each) => each === choice);
  if (name === undefined || by !== scheduled.instructorId || scheduled.planId !== undefined)
    return toYou({ text: desk.words.flow.buttonGone });
  if (!isOn(scheduled) || endOf(scheduled) <= desk.now)
    return toYou({ text: desk.words.classes.notThisClass });
  const { slotSeconds, startsAt, people, room } = scheduled;
  const facts = {
    slotSeconds,
    startsAt,
    ...(people === undefined ? {} : { people }),
    ...(room === undefined ? {} : { room }),
  };
  await startDraft(desk, { personId: by, text: houseClass(name, facts, await contextFor(desk)) });
  await keepHandOver(desk, scheduled);
  return noReaction;
});
