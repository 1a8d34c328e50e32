import { describe, expect, test } from 'vitest';
import { countdownFor, teamMomentAt } from '../../../domain/calendar/countdown-for.ts';
import { type ClassToCome, type CountdownPlan, standingOf } from '../../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';
import {
  letter,
  letters,
  move,
  on,
  open,
  plan,
  rounds,
  testContext,
  testMove,
} from '../../helpers/plan-builder.ts';

const context = testContext(
  testMove('swing', { name: 'kettlebell swing', kit: [{ item: 'kettlebell', pieces: 1 }] }),
  testMove('push-up'),
);
const scheduled: ScheduledClass = {
  id: 'mon-eve:2026-11-23',
  slotId: 'mon-eve',
  title: 'Monday Strength',
  startsAt: zonedMoment({ date: '2026-11-23', time: '18:30' }, 'Europe/Berlin'),
  slotSeconds: 2700,
  room: 'Hall',
  instructorId: 'ines',
  people: 12,
  state: 'planned',
};
const approved: CountdownPlan = {
  standing: 'approved',
  approved: plan([
    open('warm-up', 360),
    rounds('circuit', 3, on(40, 20), [letter([move('swing'), move('push-up')]), ...letters('push-up')]),
  ]),
};
const moments = (one: ScheduledClass, planOf: CountdownPlan = approved) =>
  countdownFor(one, { ...context, plan: planOf });
const times = (one: ScheduledClass) =>
  moments(one).map(({ kind, at, usefulUntil }) => [kind, at.slice(11, 16), usefulUntil?.slice(5, 16)]);

describe('the moments of a class', () => {
  test('before, at the start, after the end and when it counts as taught', () => {
    expect(times(scheduled)).toEqual([
      ['plan waits', '17:30', '11-23T14:30'],
      ['plan waits', '14:30', '11-23T17:30'],
      ['countdown', '16:30', '11-23T17:15'],
      ['countdown', '17:15', '11-23T17:25'],
      ['countdown', '17:25', '11-23T17:30'],
      ['on now', '17:30', '11-23T18:15'],
      ['over', '18:15', undefined],
      ['are you in', '17:10', '11-23T17:30'],
      ['not in', '17:15', '11-23T17:30'],
      ['first lines', '17:25', '11-23T17:30'],
      ['how was it', '18:15', '11-24T18:15'],
      ['assumed taught', '21:15', undefined],
    ]);
  });

  test('follow the settings', () => {
    const settings = { ...context.settings, countdownMinutes: [10, 120, 10, 0] };
    const kinds = countdownFor(scheduled, { ...context, settings, plan: approved }).flatMap((moment) =>
      moment.kind === 'countdown' ? [moment.minutesBefore] : [],
    );
    expect(kinds).toEqual([120, 10]);
  });

  test('have keys of their own, which a move to another time renews', () => {
    const later = {
      ...scheduled,
      startsAt: zonedMoment({ date: '2026-11-23', time: '19:00' }, 'Europe/Berlin'),
    };
    const keys = [...moments(scheduled), ...moments(later)].map(({ key }) => key);
    expect(new Set(keys).size).toBe(24);
    expect(moments({ ...scheduled, people: 18 }).map(({ key }) => key)).toEqual(keys.slice(0, 12));
  });

  test('are none for a class that is not held', () => {
    expect(moments({ ...scheduled, state: 'cancelled' })).toEqual([]);
    expect(moments({ ...scheduled, state: 'not taught' })).toEqual([]);
  });

  test('ask nothing about a class that was spoken of', () => {
    const outcome = { how: 'as planned', saidBy: 'ines', saidAt: '2026-11-23T18:20:00.000Z' } as const;
    expect(times({ ...scheduled, state: 'taught', outcome }).map(([kind]) => kind)).not.toContain(
      'how was it',
    );
    expect(times({ ...scheduled, state: 'taught', outcome })).toHaveLength(10);
  });
});

describe('what they say', () => {
  test('of an approved plan: who, where, what to lay out, what comes first', () => {
    expect(moments(scheduled)[0]?.facts).toEqual({
      classId: 'mon-eve:2026-11-23',
      title: 'Monday Strength',
      startsAt: scheduled.startsAt,
      endsAt: '2026-11-23T18:15:00.000Z',
      room: 'Hall',
      instructorId: 'ines',
      people: 12,
      plan: 'approved',
      coverOpen: false,
      kitShort: [],
      mayStay: [],
      layOut: [{ item: 'kettlebell', pieces: 12 }],
      firstBlock: { kind: 'circuit', letters: [['kettlebell swing', 'push-up'], ['push-up']] },
    });
  });

  test('nothing of a plan that no coach approved', () => {
    const facts = moments(scheduled, { standing: 'not approved' })[0]?.facts;
    expect(facts).toMatchObject({ plan: 'not approved', layOut: [] });
    expect(facts).not.toHaveProperty('firstBlock');
  });

  test.each([
    [undefined, 'none'],
    [{ state: 'in review', currentVersion: 1 }, 'not approved'],
    [{ state: 'in review', currentVersion: 4, approvedVersion: 3 }, 'change waits'],
    [{ state: 'approved', currentVersion: 3, approvedVersion: 3 }, 'approved'],
  ] as const)('the standing of %j is %s', (record, standing) => {
    expect(standingOf(record)).toBe(standing);
  });

  test('the emergency card of the room, short kit, and what the next class there needs too', () => {
    const settings = {
      ...context.settings,
      rooms: [
        {
          name: 'Hall',
          kit: { kettlebell: 10 },
          doorSeconds: 0,
          clearUpSeconds: 0,
          emergencyCard: 'Gate 2.',
        },
      ],
    };
    const startsAt = zonedMoment({ date: '2026-11-23', time: '19:30' }, 'Europe/Berlin');
    const next: ClassToCome = {
      scheduled: { ...scheduled, id: 'later', title: 'Late Lift', startsAt, people: 8 },
      plan: approved,
    };
    const [first] = countdownFor(scheduled, { ...context, settings, plan: approved, next });
    expect(first?.facts).toMatchObject({
      emergencyCard: 'Gate 2.',
      kitShort: [{ item: 'kettlebell', needPieces: 12, havePieces: 10 }],
      mayStay: [{ item: 'kettlebell', pieces: 8 }],
      nextInRoom: { title: 'Late Lift', time: '19:30' },
    });
  });
});

describe('the moment of the team’s message', () => {
  test.each([
    ['16:29', undefined],
    ['16:30', { kind: 'countdown', minutesBefore: 60 }],
    ['17:14', { kind: 'countdown', minutesBefore: 60 }],
    ['17:15', { kind: 'countdown', minutesBefore: 15 }],
    ['17:29', { kind: 'countdown', minutesBefore: 5 }],
    ['17:30', { kind: 'on now' }],
    ['18:14', { kind: 'on now' }],
    ['18:15', { kind: 'over' }],
  ])('at %s', (time, moment) => {
    expect(teamMomentAt(scheduled, context.settings, `2026-11-23T${time}:00.000Z`)).toEqual(moment);
  });
});
