import { randomBytes } from 'node:crypto';
import { factsOfClass, isOn } from '../../domain/calendar/facts-of-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { type CalendarClass, printCalendar } from '../calendar-file.ts';
import type { Desk, Message } from '../handling.ts';
import { classesAround } from './classes-around.ts';
import { countdownPlanOf } from './countdown-plan.ts';

/** From four weeks back to twelve ahead. */
const weeksShown = Array.from({ length: 17 }, (_, week) => week - 4);

/** Well before the start: no lines of the last minutes. */
const early = { kind: 'countdown', minutesBefore: 60 } as const;

/** The timetable of a studio as text of RFC 5545: each class with its state and its cue summary. */
export async function calendarOf(desk: Desk): Promise<string> {
  const studio = await desk.stores.studios.find(desk.studioId);
  const { countdown, classes: words } = desk.words;
  const classes: CalendarClass[] = [];
  for (const scheduled of await classesAround(desk, weeksShown)) {
    const facts = factsOfClass(scheduled, { ...desk, plan: await countdownPlanOf(desk, scheduled) });
    const saved = await desk.stores.classes.find(desk.studioId, scheduled.id);
    classes.push({
      scheduled,
      // The timetable's own class counts 0, a saved one at least 1.
      sequence: saved === undefined ? 0 : (saved.revision ?? 0) + 1,
      summary: words.calendarSummary(scheduled, facts, !isOn(scheduled)),
      description: isOn(scheduled) ? countdown.lines(facts, early, (typed) => typed).join('\n') : '',
    });
  }
  return printCalendar({
    studioId: desk.studioId,
    name: studio?.name ?? desk.studioId,
    now: desk.now,
    classes,
  });
}

/** The feed's address to the asker alone, and the timetable as a file in their messages. */
export async function answerWithFeed(desk: Desk, by: string, renew: boolean): Promise<Message> {
  const { stores, studioId, settings, words, now } = desk;
  if (renew && !isHeadCoach(settings, by)) return { text: words.classes.onlyCoach };
  const known = renew ? undefined : await stores.timetable.findFeedToken(studioId);
  const token = known ?? randomBytes(32).toString('base64url');
  if (known === undefined) await stores.timetable.saveFeedToken(studioId, token, now);
  const { date, time } = wallTimeOf(now, settings.zone);
  await stores.notices.enqueue(studioId, {
    key: `calendar:${desk.newId()}`,
    to: by,
    action: { kind: 'post' },
    payload: {
      text: words.classes.fileText,
      file: {
        name: 'timetable.ics',
        title: words.classes.fileTitle(words.when({ date, time })),
        content: await calendarOf(desk),
      },
    },
    causedAt: now,
  });
  const path = `/calendar/${token}.ics`;
  return {
    text:
      settings.publicUrl === undefined
        ? words.classes.feedNeedsUrl(path)
        : words.classes.feedReady(`${settings.publicUrl.replace(/\/+$/, '')}${path}`),
  };
}
