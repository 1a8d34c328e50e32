import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { correctionOf, toldWeek } from '../../domain/week/told-week.ts';
import { slotNameOf } from '../../domain/week/week-class.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import { weekOfStudio } from './week-of-studio.ts';

/** A class marked after its week's report: what is otherwise now is said in the report's thread. */
export async function correctWeekReport(desk: Desk, scheduled: ScheduledClass): Promise<void> {
  const { stores, studioId, settings, words, now } = desk;
  const week = isoWeekOf(scheduled.startsAt.instant, settings.zone);
  const told = await stores.weekReports.find(studioId, week);
  if (told === undefined) return;
  const stands = toldWeek(await weekOfStudio(desk, week));
  const correction = correctionOf(told, stands);
  if (correction === undefined) return;
  await stores.weekReports.save(studioId, week, stands, now);
  if (settings.teamChannel === undefined) return;
  await stores.notices.enqueue(studioId, {
    key: `week:${week}:correction:${desk.newId()}`,
    to: settings.teamChannel,
    action: { kind: 'post', thread: { noticeKey: `week:${week}` } },
    payload: { text: words.week.correction(inertText(slotNameOf(scheduled, settings)), correction) },
    causedAt: now,
  });
}
