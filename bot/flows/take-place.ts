import { isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { whyNotTheirs } from '../../domain/plan/decide-step.ts';
import { mayRunClass } from '../../domain/who-may.ts';
import { titleOf } from '../blocks/draft-card.ts';
import { readPlaceChoice } from '../blocks/place-message.ts';
import type { Desk, Message } from '../handling.ts';
import { changeMessage, newestOf } from './keep-message.ts';
import { keepPlanMessages } from './keep-plan-messages.ts';
import { type OpenPlan, openPlan } from './open-plan.ts';
import { placeKey } from './place-taken.ts';
import { postInThread } from './post-draft.ts';
import { saveChanged } from './save-changed.ts';

/** The class gets this plan; the one it had is kept as it is, off the calendar. */
export async function takePlace(
  desk: Desk,
  scheduled: ScheduledClass,
  choice: string,
  by: string,
): Promise<Message | undefined> {
  const { words, settings } = desk;
  const { planId, otherId } = readPlaceChoice(choice);
  const [open, other] = [await openPlan(desk, planId), await openPlan(desk, otherId)];
  if (open === undefined || other === undefined || scheduled.planId !== otherId)
    return { text: words.flow.buttonGone };
  const refusal = whyNotTheirs(open.record, by, settings);
  if (refusal !== undefined) return { text: words.refusal(refusal) };
  if (!mayRunClass(settings, scheduled, by)) return { text: words.classes.onlyInstructor };
  if (!isOn(scheduled) || scheduled.startsAt.instant <= desk.now) return { text: words.classes.notThisClass };
  for (const each of await desk.stores.classes.findByPlan(desk.studioId, planId))
    if (each.startsAt.instant > desk.now && isOn(each)) await letGo(desk, each);
  const after = withPlan(scheduled, open);
  await saveChanged(desk, scheduled, after);
  await keepPlanMessages(desk, scheduled);
  await keepPlanMessages(desk, after);
  const when = words.when(after.startsAt);
  await postInThread(desk, other, `displaced:${otherId}:${desk.newId()}`, {
    text: words.place.displaced(when, titleOf(open.version.plan, words)),
  });
  const asked = await newestOf(desk, placeKey(open, { scheduled, other }));
  const text = words.place.taken(when, titleOf(open.version.plan, words), titleOf(other.version.plan, words));
  if (asked === undefined) return { text };
  await changeMessage(desk, asked, { text, blocks: [] });
  return undefined;
}

function withPlan(scheduled: ScheduledClass, { record, version }: OpenPlan): ScheduledClass {
  const { title, room, people, slotSeconds } = version.plan?.facts ?? {};
  return {
    ...scheduled,
    planId: record.id,
    ...(title === undefined ? {} : { title }),
    ...(room === undefined ? {} : { room }),
    ...(people === undefined ? {} : { people }),
    ...(slotSeconds === undefined ? {} : { slotSeconds }),
  };
}

/** A weekly class stays without its plan; one that was made for the plan goes with it. */
async function letGo(desk: Desk, scheduled: ScheduledClass): Promise<void> {
  const { planId: _, ...rest } = scheduled;
  const after: ScheduledClass = scheduled.slotId === undefined ? { ...scheduled, state: 'cancelled' } : rest;
  await saveChanged(desk, scheduled, after);
}
