import { describe, expect, test } from 'vitest';
import { datesMeant, printDay } from '../../../domain/calendar/days-meant.ts';
import { findByWhen, holidayDays, movedTo } from '../../../domain/calendar/find-by-when.ts';
import { readClassRequest } from '../../../domain/calendar/read-class-request.ts';
import { readWhen } from '../../../domain/calendar/read-when.ts';
import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';

describe('what is said of the timetable', () => {
  test.each([
    ['I can’t teach Thursday', { kind: 'cannot teach', when: { weekday: 'Thu' } }],
    ["can't teach thu 18:30.", { kind: 'cannot teach', when: { weekday: 'Thu', time: '18:30' } }],
    ['I cannot teach tomorrow', { kind: 'cannot teach', when: { inDays: 1 } }],
    ['cover for Sat', { kind: 'cannot teach', when: { weekday: 'Sat' } }],
    ['cancel Thu 6.30pm', { kind: 'cancel', when: { weekday: 'Thu', time: '18:30' } }],
    ['cancel 2026-10-15 18:30', { kind: 'cancel', when: { date: '2026-10-15', time: '18:30' } }],
    ['cancel', { kind: 'cancel', when: {} }],
    ['on again Thu', { kind: 'on again', when: { weekday: 'Thu' } }],
    [
      'move Thu 18:30 to Fri 19:00',
      { kind: 'move', when: { weekday: 'Thu', time: '18:30' }, to: { weekday: 'Fri', time: '19:00' } },
    ],
    ['move to 19:00', { kind: 'move', when: {}, to: { time: '19:00' } }],
    ['move Thu', { kind: 'move', when: { weekday: 'Thu' } }],
    [
      'holiday 2026-12-21 to 2026-12-27',
      { kind: 'holiday', from: { date: '2026-12-21' }, to: { date: '2026-12-27' } },
    ],
    [
      'holiday Mon 21 Dec to Sun 27 Dec',
      {
        kind: 'holiday',
        from: { weekday: 'Mon', monthDay: { month: 12, day: 21 } },
        to: { weekday: 'Sun', monthDay: { month: 12, day: 27 } },
      },
    ],
    [
      'holiday 21.12.-3.1.',
      {
        kind: 'holiday',
        from: { monthDay: { month: 12, day: 21 } },
        to: { monthDay: { month: 1, day: 3 } },
      },
    ],
    [
      'can’t teach Wed 21 Oct, 12:30',
      {
        kind: 'cannot teach',
        when: { weekday: 'Wed', monthDay: { month: 10, day: 21 }, time: '12:30' },
      },
    ],
    ['cancel 21.10.', { kind: 'cancel', when: { monthDay: { month: 10, day: 21 } } }],
    ['cancel 21.10', { kind: 'cancel', when: { time: '21:10' } }],
    ['cancel Thu 18.30.', { kind: 'cancel', when: { weekday: 'Thu', time: '18:30' } }],
    ['cancel next Thu', { kind: 'cancel', when: { weekday: 'Thu', which: 'next' } }],
    [
      'give Wed 21 Oct 12:30 to <@U2>',
      {
        kind: 'give',
        when: { weekday: 'Wed', monthDay: { month: 10, day: 21 }, time: '12:30' },
        to: 'U2',
      },
    ],
    [
      'move Thu 15 Oct, 18:30 to 16 Oct 19:00',
      {
        kind: 'move',
        when: { weekday: 'Thu', monthDay: { month: 10, day: 15 }, time: '18:30' },
        to: { monthDay: { month: 10, day: 16 }, time: '19:00' },
      },
    ],
    ['give Thu 18:30 to <@U2>', { kind: 'give', when: { weekday: 'Thu', time: '18:30' }, to: 'U2' }],
    ['hand over tomorrow to <@U2|ines>', { kind: 'give', when: { inDays: 1 }, to: 'U2' }],
    ['holiday 2026-12-24', { kind: 'holiday', from: { date: '2026-12-24' } }],
    ['18 now', { kind: 'people now', people: 18 }],
    ['9 people now', { kind: 'people now', people: 9 }],
  ])('%s', (text, request) => {
    const { said: _, ...read } = { said: '', ...readClassRequest(text) };
    expect(read).toEqual(request);
  });

  test.each([
    'move A2 to B1',
    'move B up',
    'cancel the finisher',
    'swap A2 front squat',
    'Row & Squat, 40 min, Thu 18:30',
    'holiday 2026-02-30',
    '0 now',
    'cancel Thu 25:00',
    'can’t teach A2 today',
  ])('%s is none of it', (text) => {
    expect(readClassRequest(text)).toBeUndefined();
  });

  test.each([
    ['today 6pm', { inDays: 0, time: '18:00' }],
    ['12am', { time: '00:00' }],
    ['Wed 21 Oct 12:30', { weekday: 'Wed', monthDay: { month: 10, day: 21 }, time: '12:30' }],
    ['21 Oct', { monthDay: { month: 10, day: 21 } }],
    ['21st of October at 6pm', { monthDay: { month: 10, day: 21 }, time: '18:00' }],
    ['Oct 21 18:30', { monthDay: { month: 10, day: 21 }, time: '18:30' }],
    ['Oct 18:30', undefined],
    ['21.10.', { monthDay: { month: 10, day: 21 } }],
    ['21.10. 18:30', { monthDay: { month: 10, day: 21 }, time: '18:30' }],
    ['21.10.2027', { date: '2027-10-21' }],
    ['21 Oct 2027 18.30', { date: '2027-10-21', time: '18:30' }],
    ['Wed 2026-10-21', { weekday: 'Wed', date: '2026-10-21' }],
    ['31.2.', undefined],
    ['29 Feb', { monthDay: { month: 2, day: 29 } }],
    ['on next Wed', { weekday: 'Wed', which: 'next' }],
    ['7', undefined],
    ['2026-13-01', undefined],
  ])('%s as a moment', (text, when) => {
    expect(readWhen(text)).toEqual(when);
  });
});

describe('which class and which moment', () => {
  const zone = 'Europe/Lisbon';
  const now = '2026-10-14T08:00:00.000Z';
  const at = (id: string, date: string, time: string): ScheduledClass => ({
    id,
    startsAt: zonedMoment({ date, time }, zone),
    slotSeconds: 2700,
    instructorId: 'mira',
    state: 'planned',
  });
  const classes = [
    at('gone', '2026-10-14', '07:00'),
    at('wed', '2026-10-14', '12:30'),
    at('early', '2026-10-15', '07:00'),
    at('late', '2026-10-15', '18:30'),
    at('week later', '2026-10-21', '12:30'),
    at('next', '2026-10-22', '18:30'),
  ];
  const found = (text: string, at = now) =>
    findByWhen(classes, readWhen(text) ?? {}, at, zone).map(({ id }) => id);

  test.each([
    ['Thu', ['early', 'late']],
    ['Thu 18:30', ['late']],
    ['2026-10-22', ['next']],
    ['22 Oct', ['next']],
    ['Thu 22 Oct, 18:30', ['next']],
    ['Fri 22 Oct', []],
    ['today', ['wed']],
    ['tomorrow', ['early', 'late']],
    ['Fri', []],
    // Said on a Wednesday: the day is not clear, so both are meant.
    ['next Thu', ['early', 'late', 'next']],
    ['this Thu', ['early', 'late']],
    ['next Wed', ['week later']],
    ['Wed', ['wed', 'week later']],
    ['Wed 12:30', ['wed']],
    ['this Wed', ['wed']],
  ])('%s', (text, ids) => {
    expect(found(text)).toEqual(ids);
  });

  test.each<readonly [string, readonly string[]]>([
    ['Fri 19:00', ['2026-10-16 19:00']],
    ['Fri', ['2026-10-16 18:30']],
    ['19:15', ['2026-10-15 19:15']],
    ['Wed 08:00', ['2026-10-21 08:00']],
    ['tomorrow', ['2026-10-15 18:30']],
    ['Fri 16 Oct 19:00', ['2026-10-16 19:00']],
    ['Sat 16 Oct', []],
    ['next Fri', ['2026-10-16 18:30', '2026-10-23 18:30']],
    // The clocks go back on 25 October 2026: wall time is kept.
    ['2026-10-26 19:00', ['2026-10-26 19:00']],
  ])('moved to %s', (text, wall) => {
    const late = at('late', '2026-10-15', '18:30').startsAt;
    const moments = movedTo(late, readWhen(text) ?? {}, now, { zone });
    expect(moments.map(({ date, time }) => `${date} ${time}`)).toEqual(wall);
    for (const { date, time, instant } of moments)
      expect(instant).toBe(zonedMoment({ date, time }, zone).instant);
  });
});

test.each([
  ['2026-10-21', 'Wed 21 Oct 2026'],
  ['2027-01-01', 'Fri 1 Jan 2027'],
  ['2028-02-29', 'Tue 29 Feb 2028'],
])('%s is printed as %s, and read back', (date, printed) => {
  expect(printDay(date)).toBe(printed);
  expect(datesMeant(readWhen(printed) ?? {}, '2026-10-14T08:00:00.000Z', 'UTC')).toEqual([date]);
});

describe('the dates a day may mean', () => {
  test.each<readonly [string, string, readonly string[] | undefined]>([
    // 2026-12-31 is a Thursday.
    ['2026-12-31T10:00:00.000Z', 'next Thu', ['2027-01-07']],
    ['2026-12-31T10:00:00.000Z', 'next Fri', ['2027-01-01', '2027-01-08']],
    ['2026-12-31T10:00:00.000Z', 'tomorrow', ['2027-01-01']],
    ['2026-12-31T10:00:00.000Z', '1 Jan', ['2027-01-01']],
    ['2026-12-31T10:00:00.000Z', '31.12.', ['2026-12-31']],
    ['2026-12-31T10:00:00.000Z', '30 Dec', ['2027-12-30']],
    ['2026-12-31T10:00:00.000Z', 'Fri 1 Jan', ['2027-01-01']],
    ['2026-12-31T10:00:00.000Z', 'Thu 1 Jan', []],
    // On a Sunday the next Monday is one day alone.
    ['2026-12-27T10:00:00.000Z', 'next Mon', ['2026-12-28']],
    ['2026-12-27T10:00:00.000Z', 'next Sun', ['2027-01-03']],
    ['2026-12-27T10:00:00.000Z', 'Sun', undefined],
    ['2026-03-01T10:00:00.000Z', '29 Feb', ['2028-02-29']],
    // 23:30 in Vienna is the next day there already.
    ['2026-12-31T23:30:00.000Z', 'today', ['2027-01-01']],
  ])('at %s, %s', (at, text, dates) => {
    expect(datesMeant(readWhen(text) ?? {}, at, 'Europe/Vienna')).toEqual(dates);
  });

  test.each([
    ['holiday 21 Dec to 3 Jan', { from: '2026-12-21', to: '2027-01-03' }],
    ['holiday 21.12.-27.12.', { from: '2026-12-21', to: '2026-12-27' }],
    ['holiday tomorrow', { from: '2026-10-15', to: '2026-10-15' }],
    ['holiday Fri to Mon', { from: '2026-10-16', to: '2026-10-19' }],
    ['holiday 2026-12-27 to 2026-12-21', undefined],
    ['holiday next Fri', undefined],
  ])('%s', (text, days) => {
    const request = readClassRequest(text);
    if (request?.kind !== 'holiday') throw new Error('no holiday');
    expect(holidayDays(request, '2026-10-14T08:00:00.000Z', 'Europe/Lisbon')).toEqual(days);
  });
});
