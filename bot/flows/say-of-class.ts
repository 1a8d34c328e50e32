import { findByWhen, holidayDays, movedTo } from '../../domain/calendar/find-by-when.ts';
import { type ClassRequest, readClassRequest } from '../../domain/calendar/read-class-request.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { renderMoveWhere, renderMoveWhich } from '../blocks/change-button.ts';
import { renderChoice } from '../blocks/class-choice.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk, Message } from '../handling.ts';
import { answerWithFeed } from './calendar-feed.ts';
import { cancelClass, closeDays, moveClass, putOnAgain, weeksAhead } from './change-class.ts';
import { classesAround } from './classes-around.ts';
import { askOffer, giveClass } from './cover-class.ts';
import { classAtHand, recountKit } from './recount-kit.ts';

/** A request that is done to one class. */
type OnClass = Extract<ClassRequest, { readonly when: unknown }>;

/**
 * Words about the timetable, in a direct message, as a command or, with its class given, in a class's thread.
 * Undefined where they are none.
 */
export async function sayOfClass(
  desk: Desk,
  text: string,
  by: string,
  ofThread?: ScheduledClass,
): Promise<Message | undefined> {
  const request = readClassRequest(text);
  if (request === undefined) return undefined;
  switch (request.kind) {
    case 'people now': {
      const scheduled = ofThread ?? (await classAtHand(desk, by));
      return scheduled === undefined
        ? { text: desk.words.classes.whichClassNow }
        : recountKit(desk, scheduled, request.people, by);
    }
    case 'holiday': {
      const days = holidayDays(request, desk.now, desk.settings.zone);
      return days === undefined
        ? { text: desk.words.classes.holidayHow }
        : closeDays(desk, days.from, days.to, by);
    }
    case 'calendar':
      return answerWithFeed(desk, by, request.renew);
    default:
      return onClass(desk, request, by, ofThread);
  }
}

async function onClass(
  desk: Desk,
  request: OnClass,
  by: string,
  ofThread: ScheduledClass | undefined,
): Promise<Message> {
  const { classes } = desk.words;
  const isBare = Object.keys(request.when).length === 0;
  if (ofThread !== undefined && isBare) return doToClass(desk, request, ofThread, by);
  const found = await classesMeant(desk, request, by);
  if (request.kind === 'cannot teach' && found.length > 0) return askOffer(desk, found, by);
  if (isBare && found.length > 0) return renderChoice(found, request.said, desk.words);
  const [only, ...others] = found;
  if (only === undefined) return { text: classes.noSuchClass(inertText(request.said)) };
  if (others.length > 0) return renderChoice(found, request.said, desk.words);
  return doToClass(desk, request, only, by);
}

/** How many classes are offered where no day was said. */
const mostOffered = 5;

/** Of the classes that fit, the person's own where there are any; a cancelled one only to put it on again. */
async function classesMeant(
  desk: Desk,
  { kind, when }: OnClass,
  by: string,
): Promise<readonly ScheduledClass[]> {
  const all = (await classesAround(desk, weeksAhead)).filter(
    ({ state }) => (state === 'cancelled') === (kind === 'on again') && state !== 'not taught',
  );
  const own = all.filter(({ instructorId }) => instructorId === by);
  if (Object.keys(when).length === 0)
    return own.filter(({ startsAt }) => startsAt.instant > desk.now).slice(0, mostOffered);
  const { zone } = desk.settings;
  const mine = findByWhen(own, when, desk.now, zone);
  const isCoach = isHeadCoach(desk.settings, by);
  return mine.length > 0 || !isCoach ? mine : findByWhen(all, when, desk.now, zone);
}

/** The request as read, done to this class whatever day it names. */
export async function doToClass(
  desk: Desk,
  request: OnClass,
  scheduled: ScheduledClass,
  by: string,
): Promise<Message> {
  switch (request.kind) {
    case 'cannot teach':
      return askOffer(desk, [scheduled], by);
    case 'give':
      return giveClass(desk, scheduled, request.to, by);
    case 'cancel':
      return cancelClass(desk, scheduled, by);
    case 'on again':
      return putOnAgain(desk, scheduled, by);
    case 'move': {
      const { to } = request;
      if (to === undefined || Object.keys(to).length === 0) return renderMoveWhere(scheduled, desk.words);
      const moments = movedTo(scheduled.startsAt, to, desk.now, desk.settings);
      const [only, other] = moments;
      if (only === undefined) return { text: desk.words.classes.noSuchDay };
      return other === undefined
        ? moveClass(desk, scheduled, only, by)
        : renderMoveWhich(scheduled, moments, desk.words);
    }
  }
}
