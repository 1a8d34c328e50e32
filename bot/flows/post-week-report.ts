import type { ReportMoment } from '../../domain/calendar/due-notices.ts';
import { renderWeek } from '../blocks/week-message.ts';
import type { Desk } from '../handling.ts';
import { weekOfStudio } from './week-of-studio.ts';

/** The report on a whole week, once a studio and ISO week, for the team. */
export async function postWeekReport(desk: Desk, moment: ReportMoment): Promise<void> {
  const { settings, stores, studioId } = desk;
  if (settings.teamChannel === undefined || (await stores.notices.find(studioId, moment.key)) !== undefined)
    return;
  const { text, blocks, fallbackBlocks } = renderWeek(
    await weekOfStudio(desk, moment.week),
    settings.dose,
    desk.words,
  );
  await stores.notices.enqueue(studioId, {
    key: moment.key,
    to: settings.teamChannel,
    action: { kind: 'post' },
    payload: { text, ...(blocks === undefined ? {} : { blocks }), fallbackBlocks },
    causedAt: desk.now,
  });
}
