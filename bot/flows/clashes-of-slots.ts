import { isDeepStrictEqual } from 'node:util';
import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { WeeklySlot } from '../../domain/settings.ts';
import type { Desk } from '../handling.ts';
import { clashesWith } from './clashes-with.ts';
import { classesInWeek } from './classes-in-week.ts';

/** What the slots that are not as they were clash with, as seen in the first whole week to come. */
export async function clashesOfSlots(desk: Desk, before: readonly WeeklySlot[]): Promise<readonly string[]> {
  const changed = desk.settings.slots.filter((slot) => !before.some((one) => isDeepStrictEqual(one, slot)));
  if (changed.length === 0) return [];
  const nextWeek = weekAfter(isoWeekOf(desk.now, desk.settings.zone));
  const lines: string[] = [];
  for (const scheduled of await classesInWeek(desk, nextWeek))
    if (changed.some(({ id }) => id === scheduled.slotId))
      lines.push(...(await clashesWith(desk, scheduled)));
  return lines;
}
