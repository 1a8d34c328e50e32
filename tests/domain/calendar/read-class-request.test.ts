import { describe, expect, test } from 'vitest';
import { findByWhen, movedTo } from '../../../domain/calendar/find-by-when.ts';
import { readClassRequest, readWhen } from '../../../domain/calendar/read-class-request.ts';
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
    ['holiday 2026-12-21 to 2026-12-27', { kind: 'holiday', from: '2026-12-21', to: '2026-12-27' }],
    ['give Thu 18:30 to <@U2>', { kind: 'give', when: { weekday: 'Thu', time: '18:30' }, to: 'U2' }],
    ['hand over tomorrow to <@U2|ines>', { kind: 'give', when: { inDays: 1 }, to: 'U2' }],
    ['holiday 2026-12-24', { kind: 'holiday', from: '2026-12-24', to: '2026-12-24' }],
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
    'holiday 2026-12-27 to 2026-12-21',
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
    at('next', '2026-10-22', '18:30'),
  ];
  const found = (text: string) => findByWhen(classes, readWhen(text) ?? {}, now, zone).map(({ id }) => id);

  test.each([
    ['Thu', ['early', 'late']],
    ['Thu 18:30', ['late']],
    ['2026-10-22', ['next']],
    ['today', ['wed']],
    ['tomorrow', ['early', 'late']],
    ['Fri', []],
  ])('%s', (text, ids) => {
    expect(found(text)).toEqual(ids);
  });

  test.each([
    ['Fri 19:00', '2026-10-16 19:00'],
    ['Fri', '2026-10-16 18:30'],
    ['19:15', '2026-10-15 19:15'],
    ['Wed 08:00', '2026-10-21 08:00'],
    ['tomorrow', '2026-10-15 18:30'],
    // The clocks go back on 25 October 2026: wall time is kept.
    ['2026-10-26 19:00', '2026-10-26 19:00'],
  ])('moved to %s', (text, wall) => {
    const late = at('late', '2026-10-15', '18:30').startsAt;
    const { date, time, instant } = movedTo(late, readWhen(text) ?? {}, now, { zone });
    expect(`${date} ${time}`).toBe(wall);
    expect(instant).toBe(zonedMoment({ date, time }, zone).instant);
  });
});
