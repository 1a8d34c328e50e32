import { describe, expect, test } from 'vitest';
import { occurrencesOfWeek } from '../../../domain/calendar/classes-of-week.ts';
import { dueNotices, nextDue, reportMoments } from '../../../domain/calendar/due-notices.ts';
import type { ClassToCome } from '../../../domain/calendar/facts-of-class.ts';
import { isoWeekOf, weekAfter } from '../../../domain/calendar/iso-week.ts';
import { wallTimeOf, zonedMoment } from '../../../domain/calendar/wall-time.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { testContext } from '../../helpers/plan-builder.ts';

const zone = 'Europe/Berlin';
const settings: Settings = {
  ...defaultSettings,
  zone,
  slots: [{ id: 'mon', name: 'Monday', weekday: 'Mon', time: '18:30', seconds: 2700, instructorId: 'ines' }],
};
const context = { ...testContext(), settings };
const planned = (week: string): readonly ClassToCome[] =>
  occurrencesOfWeek(week, settings).map((scheduled) => ({ scheduled, plan: { standing: 'none' } }));
const monday = planned('2026-W48');
const told = (moments: readonly { readonly kind: string; readonly at: string }[]) =>
  moments.map(({ kind, at }) => `${kind} ${at.slice(5, 16)}`);

describe('what is due', () => {
  test('in a stretch, its start not included, its end included', () => {
    const stretch = { from: '2026-11-23T16:30:00.000Z', to: '2026-11-23T17:15:00.000Z' };
    expect(told(dueNotices(monday, stretch, context).due)).toEqual([
      'are you in 11-23T17:10',
      'countdown 11-23T17:15',
      'not in 11-23T17:15',
    ]);
  });

  test('after a stop: what still helps is due, what does not is missed', () => {
    const stretch = { from: '2026-11-23T05:00:00.000Z', to: '2026-11-23T17:20:00.000Z' };
    const { due, missed } = dueNotices(monday, stretch, context);
    expect(told(due)).toEqual([
      'week report 11-23T06:00',
      'plan waits 11-23T14:30',
      'are you in 11-23T17:10',
      'countdown 11-23T17:15',
      'not in 11-23T17:15',
    ]);
    expect(told(missed)).toEqual(['countdown 11-23T16:30']);
  });

  test('a class counts as taught however late that is noticed', () => {
    const stretch = { from: '2026-11-23T05:00:00.000Z', to: '2026-11-29T05:00:00.000Z' };
    expect(told(dueNotices(monday, stretch, context).due)).toEqual([
      'week report 11-23T06:00',
      'over 11-23T18:15',
      'assumed taught 11-23T21:15',
    ]);
  });

  test('a moved or cancelled class changes it at once', () => {
    const stretch = { from: '2026-11-23T12:00:00.000Z', to: '2026-11-23T16:30:00.000Z' };
    const changed = (facts: object) =>
      monday.map((one) => ({ ...one, scheduled: { ...one.scheduled, ...facts } }));
    const later = { startsAt: zonedMoment({ date: '2026-11-23', time: '19:00' }, zone), state: 'moved' };
    expect(told(dueNotices(monday, stretch, context).due)).toEqual([
      'plan waits 11-23T14:30',
      'countdown 11-23T16:30',
    ]);
    expect(dueNotices(changed({ state: 'cancelled' }), stretch, context).due).toEqual([]);
    expect(told(dueNotices(changed(later), stretch, context).due)).toEqual(['plan waits 11-23T15:00']);
    expect(nextDue(changed(later), stretch.to, context)).toBe('2026-11-23T17:00:00.000Z');
  });

  test('walking from due to due over a month with a clock change meets every moment once, at its local time', () => {
    const weeks = ['2026-W42', '2026-W43', '2026-W44', '2026-W45'];
    const classes = weeks.flatMap(planned);
    const end = Date.parse('2026-11-09T00:00:00.000Z');
    const seen: string[] = [];
    let now = '2026-10-12T00:00:00.000Z';
    for (
      let next = nextDue(classes, now, context);
      Date.parse(next) < end;
      next = nextDue(classes, now, context)
    ) {
      const { due, missed } = dueNotices(classes, { from: now, to: next }, context);
      expect(missed).toEqual([]);
      seen.push(...due.map(({ key, at }) => `${key} ${wallTimeOf(at, zone).time}`));
      now = next;
    }
    expect(new Set(seen).size).toBe(seen.length);
    const clock = seen.map((each) => each.slice(-5));
    const onTheDay = [
      '07:00',
      '15:30',
      '17:30',
      '18:10',
      ...['18:15', '18:15', '18:25', '18:25'],
      '18:30',
      ...['19:15', '19:15'],
      '22:15',
    ];
    const evening = ['18:00', '18:30'];
    expect(clock).toEqual(weeks.flatMap((_, place) => (place === 0 ? onTheDay : [...evening, ...onTheDay])));
  });
});

describe('the digest', () => {
  const { zone: _, ...rest } = settings;
  const digests = (facts: Partial<Settings>, classes = monday) =>
    dueNotices(
      classes,
      { from: '2026-11-20T00:00:00.000Z', to: '2026-11-22T22:00:00.000Z' },
      { ...context, settings: { ...rest, zone, ...facts } },
    ).due.filter(({ kind }) => kind === 'digest');

  test('is due the evening before a day with classes, at the hour of the settings, until the last has begun', () => {
    expect(digests({})).toEqual([
      {
        kind: 'digest',
        date: '2026-11-23',
        key: 'digest:2026-11-23',
        at: '2026-11-22T17:00:00.000Z',
        usefulUntil: '2026-11-23T17:30:00.000Z',
      },
    ]);
    expect(digests({ digestTime: '20:15' }).map(({ at }) => at)).toEqual(['2026-11-22T19:15:00.000Z']);
  });

  test('is none where it is off, and none for a day on which nothing is held', () => {
    const cancelled = monday.map((one) => ({
      ...one,
      scheduled: { ...one.scheduled, state: 'cancelled' as const },
    }));
    expect(digests({ digestTime: 'off' })).toEqual([]);
    expect(digests({}, cancelled)).toEqual([]);
  });
});

describe('the weekly report', () => {
  test('is one for each ISO week of a year, at its wall time', () => {
    const reports = reportMoments(
      { from: '2026-01-05T00:00:00.000Z', to: '2027-01-04T00:00:00.000Z' },
      settings,
    );
    const weeks = Array.from({ length: 52 }, (_, place) => weekAfter('2026-W01', place));
    expect(reports.map(({ week }) => week)).toEqual(weeks);
    for (const { at, week } of reports) {
      expect(wallTimeOf(at, zone).time).toBe('07:00');
      expect(isoWeekOf(at, zone)).toBe(weekAfter(week));
    }
  });
});
