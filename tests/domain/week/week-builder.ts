import { occurrenceId } from '../../../domain/calendar/classes-of-week.ts';
import { datesOfWeek, weekdays } from '../../../domain/calendar/iso-week.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';
import type { Muscle } from '../../../domain/catalogue/muscles.ts';
import type { MuscleLoad } from '../../../domain/ports.ts';
import { defaultSettings, type Settings, type Weekday, type WeeklySlot } from '../../../domain/settings.ts';
import type { WeekClass } from '../../../domain/week/week-class.ts';

export const week = '2026-W47';
/** The Monday after, 07:00 in Berlin. */
export const reportTime = '2026-11-23T06:00:00.000Z';

export const slot = (weekday: Weekday, time = '18:00', id: string = weekday): WeeklySlot => ({
  id,
  name: `${id} class`,
  weekday,
  time,
  seconds: 2700,
  instructorId: 'ines',
});

export const studio = (slots: readonly WeeklySlot[], facts: Partial<Settings> = {}): Settings => ({
  ...defaultSettings,
  zone: 'Europe/Berlin',
  slots,
  ...facts,
});

const load = (sets: Readonly<Partial<Record<Muscle, number>>>): readonly MuscleLoad[] =>
  (Object.keys(sets) as Muscle[]).map((muscle) => ({
    muscle,
    sets: sets[muscle] ?? 0,
    tensionSeconds: (sets[muscle] ?? 0) * 40,
  }));

/** A class of the slot in that week, said to be taught as planned; with its sets, where known. */
export function taught(
  of: WeeklySlot,
  sets?: Readonly<Partial<Record<Muscle, number>>>,
  facts: Partial<WeekClass['scheduled']> = {},
): WeekClass {
  const date = datesOfWeek(week)[weekdays.indexOf(of.weekday)] ?? '';
  return {
    scheduled: {
      id: occurrenceId(of.id, date),
      slotId: of.id,
      startsAt: zonedMoment({ date, time: of.time }, 'Europe/Berlin'),
      slotSeconds: of.seconds,
      instructorId: 'ines',
      state: 'taught',
      outcome: { how: 'as planned', saidBy: 'ines', saidAt: `${date}T20:00:00.000Z` },
      ...facts,
    },
    ...(sets === undefined ? {} : { load: load(sets) }),
  };
}
