import { type IsoWeek, isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { correctionCause, correctionOf, toldWeek } from '../../domain/week/told-week.ts';
import { slotNameOf } from '../../domain/week/week-class.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import { weekOfStudio } from './week-of-studio.ts';

/**
 * A class that is marked, cancelled, moved or covered after its week's report: what is otherwise now is said
 * in the report's thread. `after` is saved already; of a class that changes weeks both reports are put right.
 */
export async function correctWeekReport(
  desk: Desk,
  before: ScheduledClass,
  after: ScheduledClass,
): Promise<void> {
  const weekOf = ({ startsAt }: ScheduledClass) => isoWeekOf(startsAt.instant, desk.settings.zone);
  for (const week of new Set([weekOf(before), weekOf(after)])) await correctWeek(desk, week, before, after);
}

async function correctWeek(
  desk: Desk,
  week: IsoWeek,
  before: ScheduledClass,
  after: ScheduledClass,
): Promise<void> {
  const { stores, studioId, settings, words, now } = desk;
  const told = await stores.weekReports.find(studioId, week);
  if (told === undefined) return;
  const stands = toldWeek(await weekOfStudio(desk, week));
  const correction = correctionOf(told, stands);
  if (correction === undefined) return;
  await stores.weekReports.save(studioId, week, stands, now);
  if (settings.teamChannel === undefined) return;
  const slotName = inertText(slotNameOf(after, settings));
  await stores.notices.enqueue(studioId, {
    key: `week:${week}:correction:${desk.newId()}`,
    to: settings.teamChannel,
    action: { kind: 'post', thread: { noticeKey: `week:${week}` } },
    payload: { text: words.week.correction(slotName, correctionCause(before, after), correction) },
    causedAt: now,
  });
}
