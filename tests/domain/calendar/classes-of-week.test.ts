import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { classesOfWeek, occurrenceId, occurrencesOfWeek } from '../../../domain/calendar/classes-of-week.ts';
import { boundsOfWeek, datesOfWeek, isoWeekOf, weekAfter } from '../../../domain/calendar/iso-week.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';
import { defaultSettings, type Settings, type WeeklySlot } from '../../../domain/settings.ts';

const monday: WeeklySlot = {
  id: 'mon-eve',
  name: 'Monday Strength',
  weekday: 'Mon',
  time: '18:30',
  seconds: 2700,
  room: 'Hall',
  instructorId: 'ines',
  people: 12,
};
const sunday: WeeklySlot = {
  id: 'sun',
  name: 'Sunday',
  weekday: 'Sun',
  time: '02:30',
  seconds: 2700,
  instructorId: 'timo',
};
const settings: Settings = { ...defaultSettings, zone: 'Europe/Berlin', slots: [sunday, monday] };

/** Both halves of the globe, half-hour and quarter-hour offsets, a half-hour change, and zones without one. */
const zones = [
  'Europe/Berlin',
  'Europe/London',
  'Europe/Lisbon',
  'America/New_York',
  'America/Los_Angeles',
  'America/St_Johns',
  'America/Santiago',
  'Australia/Sydney',
  'Australia/Adelaide',
  'Australia/Lord_Howe',
  'Pacific/Auckland',
  'Pacific/Chatham',
  'Africa/Cairo',
  'Asia/Kolkata',
  'Asia/Kathmandu',
];

describe('classes of a week', () => {
  test('come from the slots, in order, with stable ids', () => {
    expect(occurrencesOfWeek('2026-W48', settings)).toEqual([
      {
        id: 'mon-eve:2026-11-23',
        slotId: 'mon-eve',
        title: 'Monday Strength',
        startsAt: {
          date: '2026-11-23',
          time: '18:30',
          zone: 'Europe/Berlin',
          instant: '2026-11-23T17:30:00.000Z',
        },
        slotSeconds: 2700,
        room: 'Hall',
        instructorId: 'ines',
        people: 12,
        state: 'planned',
      },
      {
        id: 'sun:2026-11-29',
        slotId: 'sun',
        title: 'Sunday',
        startsAt: {
          date: '2026-11-29',
          time: '02:30',
          zone: 'Europe/Berlin',
          instant: '2026-11-29T01:30:00.000Z',
        },
        slotSeconds: 2700,
        instructorId: 'timo',
        state: 'planned',
      },
    ]);
  });

  test.each(zones)('keep their local time through a year of %s', (zone) => {
    const start = Temporal.PlainDate.from('2026-01-05');
    for (let week = 0; week < 53; week += 1) {
      const [evening] = occurrencesOfWeek(weekAfter('2026-W02', week), {
        ...settings,
        zone,
        slots: [monday],
      });
      const there = start.add({ weeks: week }).toZonedDateTime({ timeZone: zone, plainTime: '18:30' });
      expect(evening?.startsAt.instant).toBe(new Date(there.epochMilliseconds).toISOString());
    }
  });

  test('saved classes stand as exceptions', () => {
    const [first, second] = occurrencesOfWeek('2026-W48', settings);
    if (first === undefined || second === undefined) throw new Error('two classes');
    const cancelled = { ...first, state: 'cancelled' } as const;
    const moved = {
      ...second,
      state: 'moved',
      startsAt: zonedMoment({ date: '2026-12-01', time: '10:00' }, 'Europe/Berlin'),
    } as const;
    const saved = [cancelled, moved];
    expect(classesOfWeek('2026-W48', settings, saved)).toEqual([cancelled]);
    expect(classesOfWeek('2026-W49', settings, [moved]).map(({ id }) => id)).toEqual([
      occurrenceId('mon-eve', '2026-11-30'),
      'sun:2026-11-29',
      'sun:2026-12-06',
    ]);
  });

  test('a slot without an instructor has no class yet', () => {
    const { instructorId: _, ...open } = monday;
    expect(occurrencesOfWeek('2026-W48', { ...settings, slots: [open] })).toEqual([]);
  });
});

describe('ISO weeks', () => {
  test.each(zones)('touch and hold their instants in %s', (zone) => {
    for (let week = '2026-W01'; week < '2027-W10'; week = weekAfter(week)) {
      const { from, to } = boundsOfWeek(week, zone);
      expect(boundsOfWeek(weekAfter(week), zone).from).toBe(to);
      expect(isoWeekOf(from, zone)).toBe(week);
      expect(isoWeekOf(new Date(Date.parse(to) - 1).toISOString(), zone)).toBe(week);
    }
  });

  test('count by ISO 8601: 2026 has 53 weeks', () => {
    expect(weekAfter('2026-W53')).toBe('2027-W01');
    expect(weekAfter('2026-W01', -1)).toBe('2025-W52');
    expect(datesOfWeek('2026-W53').at(-1)).toBe('2027-01-03');
    expect(() => datesOfWeek('2027-W53')).toThrow(RangeError);
  });
});
