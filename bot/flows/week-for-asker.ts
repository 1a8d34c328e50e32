import { isKnownWeek, isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import { isHeadCoach } from '../../domain/who-may.ts';
import { renderCoachWeek } from '../blocks/coach-week-message.ts';
import { renderWeek, renderWeekDetails } from '../blocks/week-message.ts';
import type { Desk, Message } from '../handling.ts';
import { wholeWeekOfStudio } from './week-of-studio.ts';

/**
 * The running week, or the one asked for: `2026-W41`, `41`, `last`. A head coach gets the coach's part with
 * it. No native chart or table: what only the asker sees is sent once, without plainer tries.
 */
export async function weekForAsker(
  desk: Desk,
  personId: string,
  asked: string | undefined,
): Promise<Message> {
  const { settings, words } = desk;
  const running = isoWeekOf(desk.now, settings.zone);
  const week = asked === undefined ? running : weekFrom(asked.toLowerCase(), running);
  if (week === undefined) return { text: words.flow.weekUnclear(running) };
  const whole = await wholeWeekOfStudio(desk, week);
  const { text, blocks } = renderWeek(whole, words);
  const coach = isHeadCoach(settings, personId) ? renderCoachWeek(whole, settings, words).fallbackBlocks : [];
  return {
    text,
    blocks: [...blocks, ...renderWeekDetails(whole, settings.dose, words).fallbackBlocks, ...coach],
  };
}

function weekFrom(asked: string, running: string): string | undefined {
  if (asked === 'last') return weekAfter(running, -1);
  if (asked === 'next') return weekAfter(running);
  const [, year = running.slice(0, 4), number = ''] = /^(?:(\d{4})-?)?w?(\d{1,2})$/.exec(asked) ?? [];
  const week = `${year}-W${number.padStart(2, '0')}`;
  return isKnownWeek(week) ? week : undefined;
}
