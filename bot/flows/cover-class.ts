import { endOf, factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { isHeadCoach, mayRunClass } from '../../domain/who-may.ts';
import { renderHandOver, renderOfferAsk, renderOffered } from '../blocks/cover-messages.ts';
import { inertText } from '../blocks/escape.ts';
import { renderTimeline } from '../blocks/timeline-lines.ts';
import type { Desk, Message } from '../handling.ts';
import { clashesWith } from './clashes-with.ts';
import { findClass } from './classes-in-week.ts';
import { countdownPlanOf } from './countdown-plan.ts';
import { changeMessage, newestOf } from './keep-message.ts';
import { keepPlanMessages } from './keep-plan-messages.ts';
import { openPlan } from './open-plan.ts';
import { saveChanged } from './save-changed.ts';
import { tellCoaches } from './tell-instructor.ts';
import { whoHears } from './told-of-change.ts';

function takenKey({ id, startsAt }: ScheduledClass, by: string): string {
  return `taken:${id}@${startsAt.instant}:${by}`;
}

/** Asks before anything is said to all: which class, and whether. */
export async function askOffer(desk: Desk, classes: readonly ScheduledClass[], by: string): Promise<Message> {
  const [only, ...others] = classes;
  const refused = only === undefined || others.length > 0 ? undefined : whyNotOffered(desk, only, by);
  const { teamChannel } = desk.settings;
  if (refused !== undefined) return refused;
  if (teamChannel === undefined) return { text: desk.words.classes.noTeamChannel };
  return only?.coverOpen === true && others.length === 0
    ? renderOffered(only, desk.words)
    : renderOfferAsk(classes, teamChannel, desk.words);
}

/** Offers a class to the team; no reason is asked. `by`: its instructor, or a head coach for them. */
export async function seekCover(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { settings, words } = desk;
  const refused = whyNotOffered(desk, scheduled, by);
  if (refused !== undefined) return refused;
  if (scheduled.coverOpen !== true) {
    const { confirmed: _, ...rest } = scheduled;
    await saveChanged(desk, scheduled, { ...rest, coverOpen: true });
    if (!isHeadCoach(settings, by)) {
      const text = words.classes.coachOpen(scheduled, scheduled.instructorId, inertText);
      await tellCoaches(desk, `cover:${scheduled.id}:${desk.newId()}`, { text });
    }
  }
  return renderOffered(scheduled, words);
}

function whyNotOffered(desk: Desk, scheduled: ScheduledClass, by: string): Message | undefined {
  const { settings, words } = desk;
  if (!mayRunClass(settings, scheduled, by)) return { text: words.classes.onlyInstructor };
  if (!isOn(scheduled) || scheduled.startsAt.instant <= desk.now) return { text: words.classes.notThisClass };
  return settings.teamChannel === undefined ? { text: words.classes.noTeamChannel } : undefined;
}

/** An offer that nobody has taken yet is closed: its instructor teaches the class. */
export async function takeBackOffer(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { settings, words } = desk;
  if (!mayRunClass(settings, scheduled, by)) return { text: words.classes.onlyInstructor };
  if (scheduled.coverOpen !== true) return { text: words.classes.notOffered(scheduled, inertText) };
  if (!isOn(scheduled) || endOf(scheduled) <= desk.now) return { text: words.classes.notThisClass };
  const { coverOpen: _, ...rest } = scheduled;
  await saveChanged(desk, scheduled, rest);
  const text = words.classes.coachTakenBack(scheduled, scheduled.instructorId, inertText);
  for (const each of whoHears(desk, scheduled, by))
    await post(desk, `cover:${scheduled.id}:${desk.newId()}:${each}`, each, { text });
  return {
    text: by === scheduled.instructorId ? words.classes.offerTakenBack(scheduled, inertText) : text,
  };
}

/** The first to take it gets the class, its plan, its timeline and its countdown; the coach is told. */
export async function takeClass(desk: Desk, scheduled: ScheduledClass, by: string): Promise<Message> {
  const { classes } = desk.words;
  if (!isOn(scheduled) || scheduled.startsAt.instant <= desk.now) return { text: classes.notThisClass };
  if (scheduled.coverOpen !== true)
    return { text: classes.alreadyTaken(scheduled, scheduled.instructorId, inertText) };
  return assign(desk, scheduled, by, by);
}

/** Hands a class to one person, offered before or not; they get everything and may say they can't. */
export async function giveClass(
  desk: Desk,
  scheduled: ScheduledClass,
  to: string,
  by: string,
): Promise<Message> {
  const { classes } = desk.words;
  if (!mayRunClass(desk.settings, scheduled, by)) return { text: classes.onlyInstructor };
  if (!isOn(scheduled) || endOf(scheduled) <= desk.now) return { text: classes.notThisClass };
  if (to === scheduled.instructorId && scheduled.coverOpen !== true)
    return { text: classes.alreadyTaken(scheduled, to, inertText) };
  return assign(desk, scheduled, to, by);
}

async function assign(desk: Desk, scheduled: ScheduledClass, to: string, by: string): Promise<Message> {
  const { classes } = desk.words;
  const { coverOpen: _, confirmed: __, ...rest } = scheduled;
  const taken: ScheduledClass = { ...rest, instructorId: to };
  await saveChanged(desk, scheduled, taken);
  await keepPlanMessages(desk, taken);
  const text = classes.coachTaken(taken, to, inertText);
  const told = new Set([...desk.settings.headCoaches, scheduled.instructorId]);
  for (const each of told)
    if (each !== by && each !== to)
      await post(desk, `taken:${scheduled.id}:${desk.newId()}:${each}`, each, { text });
  await handOver(desk, taken);
  const clashes = await clashesWith(desk, taken, by);
  const answer = to === by ? classes.yoursNow(taken, inertText) : text;
  return { text: [answer, ...clashes].join('\n') };
}

/** What a class was handed over with follows the plan it has got since. */
export async function keepHandOver(desk: Desk, { id }: ScheduledClass): Promise<void> {
  const taken = await findClass(desk, id);
  const newest = taken && (await newestOf(desk, takenKey(taken, taken.instructorId)));
  if (taken === undefined || newest === undefined) return;
  await changeMessage(desk, newest, (await handOverMessage(desk, taken)).message);
}

async function handOverMessage(desk: Desk, taken: ScheduledClass) {
  const { studioId, stores, words } = desk;
  const record = taken.planId === undefined ? undefined : await stores.plans.find(studioId, taken.planId);
  const open =
    record === undefined
      ? undefined
      : await openPlan(desk, record.id, record.approvedVersion ?? record.currentVersion);
  const facts = factsOfClass(taken, { ...desk, plan: await countdownPlanOf(desk, taken) });
  return { open, message: renderHandOver(taken, facts, open?.version.text, words) };
}

/**
 * The plan as it stands for teaching and its timeline; without a plan, house classes to choose from. Who had the
 * class before has the message still: it is brought up to date.
 */
async function handOver(desk: Desk, taken: ScheduledClass): Promise<void> {
  const { studioId, stores } = desk;
  const key = takenKey(taken, taken.instructorId);
  const { open, message } = await handOverMessage(desk, taken);
  const had = await newestOf(desk, key);
  if (had !== undefined) return changeMessage(desk, had, message);
  await post(desk, key, taken.instructorId, message);
  if (open === undefined) return;
  for (const [place, payload] of renderTimeline(open, desk).entries())
    await stores.notices.enqueue(studioId, {
      key: place === 0 ? `${key}:timeline` : `${key}:timeline:${place + 1}`,
      to: taken.instructorId,
      action: { kind: 'post', thread: { noticeKey: key } },
      payload,
      causedAt: desk.now,
    });
}

async function post(desk: Desk, key: string, to: string, payload: Message): Promise<void> {
  await desk.stores.notices.enqueue(desk.studioId, {
    key,
    to,
    action: { kind: 'post' },
    payload,
    causedAt: desk.now,
  });
}
