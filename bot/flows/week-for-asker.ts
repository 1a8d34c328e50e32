import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import { renderWeek } from '../blocks/week-message.ts';
import type { Desk, Message } from '../handling.ts';
import { weekOfStudio } from './week-of-studio.ts';

/** The running week, or the one asked for: `2026-W41`, `41`, `last`. */
export async function weekForAsker(desk: Desk, asked: string | undefined): Promise<Message> {
  const running = isoWeekOf(desk.now, desk.settings.zone);
  const week = asked === undefined ? running : weekFrom(asked.toLowerCase(), running);
  if (week === undefined) return { text: desk.words.flow.weekUnclear(running) };
  const { text, fallbackBlocks } = renderWeek(await weekOfStudio(desk, week), desk.settings.dose, desk.words);
  return { text, blocks: fallbackBlocks };
}

function weekFrom(asked: string, running: string): string | undefined {
  if (asked === 'last') return weekAfter(running, -1);
  if (asked === 'next') return weekAfter(running);
  const [, year = running.slice(0, 4), number = ''] = /^(?:(\d{4})-?)?w?(\d{1,2})$/.exec(asked) ?? [];
  const week = Number(number);
  return week >= 1 && week <= 53 ? `${year}-W${number.padStart(2, '0')}` : undefined;
}
