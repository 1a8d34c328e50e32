import { describe, expect, test } from 'vitest';
import { clashesOf, type PlannedClass } from '../../../domain/calendar/clashes.ts';
import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../../domain/calendar/wall-time.ts';
import { defaultSettings, type Room } from '../../../domain/settings.ts';
import { letters, on, plan, rounds, testContext, testMove } from '../../helpers/plan-builder.ts';

const room = (name: string, kettlebell: number): Room => ({
  name,
  kit: { kettlebell },
  doorSeconds: 0,
  clearUpSeconds: 0,
});
const context = {
  ...testContext(testMove('swing', { kit: [{ item: 'kettlebell', pieces: 1 }] })),
  settings: {
    ...defaultSettings,
    rooms: [room('Hall', 4), room('Loft', 2)],
    sharedKit: [{ item: 'kettlebell', pieces: 12, rooms: ['Hall', 'Loft'] } as const],
  },
};
const swings = plan([rounds('circuit', 3, on(40, 20), letters('swing'))]);
const scheduled = (id: string, time: string, facts: Partial<ScheduledClass> = {}): ScheduledClass => ({
  id,
  startsAt: zonedMoment({ date: '2026-11-23', time }, 'Europe/Berlin'),
  slotSeconds: 2700,
  instructorId: id,
  state: 'planned',
  ...facts,
});
const inHall: PlannedClass = {
  scheduled: scheduled('a', '18:00', { room: 'Hall', people: 12 }),
  plan: swings,
};

describe('clashes of a class', () => {
  test('with the room and the instructor of another', () => {
    const other = { scheduled: scheduled('b', '18:30', { room: 'Hall', instructorId: 'a' }) };
    expect(clashesOf(inHall, [inHall, other], context)).toEqual([
      { kind: 'room', room: 'Hall', with: 'b' },
      { kind: 'instructor', instructorId: 'a', with: 'b' },
    ]);
  });

  test.each<[string, ScheduledClass]>([
    ['starts as this one ends', scheduled('b', '18:45', { room: 'Hall', instructorId: 'a' })],
    ['ends as this one starts', scheduled('b', '17:15', { room: 'Hall', instructorId: 'a' })],
    ['is cancelled', scheduled('b', '18:30', { room: 'Hall', instructorId: 'a', state: 'cancelled' })],
    ['shares neither', scheduled('b', '18:30', { room: 'Loft' })],
    ['has no room, as it has none', scheduled('b', '18:30')],
  ])('none where the other %s', (_, other) => {
    expect(clashesOf(inHall, [{ scheduled: other }], context)).toEqual([]);
  });

  test('with kit that rooms share, beyond what each has of its own', () => {
    const inLoft = (people: number): PlannedClass => ({
      scheduled: scheduled('b', '18:30', { room: 'Loft', people }),
      plan: swings,
    });
    expect(clashesOf(inHall, [inLoft(6)], context)).toEqual([]);
    expect(clashesOf(inHall, [inLoft(7)], context)).toEqual([
      { kind: 'kit', item: 'kettlebell', needPieces: 13, havePieces: 12, with: ['b'] },
    ]);
    expect(clashesOf(inHall, [{ scheduled: inLoft(7).scheduled }], context)).toEqual([]);
  });
});
