import { describe, expect, test } from 'vitest';
import { countdownWords } from '../../../../bot/words/en/countdown-words.ts';
import type { TeamMoment } from '../../../../domain/calendar/countdown-for.ts';
import type { ClassFacts } from '../../../../domain/calendar/facts-of-class.ts';

const safe = (typed: string) => typed.toUpperCase();
const facts: ClassFacts = {
  classId: 'mon',
  title: 'Squat & Press',
  startsAt: { date: '2026-11-23', time: '18:30', zone: 'Europe/Berlin', instant: '2026-11-23T17:30:00.000Z' },
  endsAt: '2026-11-23T18:15:00.000Z',
  room: 'Hall',
  instructorId: 'U1',
  people: 12,
  plan: 'approved',
  coverOpen: false,
  kitShort: [],
  mayStay: [],
  layOut: [
    { item: 'dumbbell', pieces: 24 },
    { item: 'box', pieces: 2 },
    { item: 'mat', pieces: 1 },
  ],
  firstBlock: { kind: 'circuit', name: 'Legs', letters: [['goblet squat', 'push-up'], ['plank']] },
};
const countdown: TeamMoment = { kind: 'countdown', minutesBefore: 15 };
const early: TeamMoment = { kind: 'countdown', minutesBefore: 60 };

describe('a countdown in words', () => {
  test.each([
    ['2026-11-23T17:15:00.000Z', 'in 15 min'],
    ['2026-11-23T17:18:10.000Z', 'in 12 min'],
    ['2026-11-23T17:30:00.000Z', 'on now'],
  ])('said at %s it tells the time that is left', (now, left) => {
    expect(countdownWords.lead(facts, countdown, now, safe)).toBe(
      `SQUAT & PRESS, 18:30, ${left}: <@U1>, HALL, 12 people`,
    );
  });

  test('at the start it says on now', () => {
    expect(countdownWords.lead(facts, { kind: 'on now' }, facts.startsAt.instant, safe)).toContain(
      ', on now: ',
    );
  });

  test('what to lay out and what comes first', () => {
    expect(countdownWords.lines(facts, countdown, safe)).toEqual([
      'Lay out for 12: 24 dumbbells, 2 boxes, 1 mat',
      'First: circuit LEGS, GOBLET SQUAT + PUSH-UP → PLANK',
    ]);
  });

  test.each([
    ['none', 'No plan yet.'],
    ['not approved', 'Plan in change.'],
    ['change waits', 'Plan in change: shown is the last approved one.'],
  ] as const)('a plan that is %s', (plan, line) => {
    const { firstBlock: _, ...bare } = facts;
    expect(countdownWords.lines({ ...bare, layOut: [], plan }, countdown, safe)).toEqual([line]);
  });

  test('cover that is open stands where the instructor would', () => {
    expect(countdownWords.lead({ ...facts, coverOpen: true }, early, '2026-11-23T16:30:00.000Z', safe)).toBe(
      'SQUAT & PRESS, 18:30, in 60 min: cover open, HALL, 12 people',
    );
  });

  test('the last minutes add what may stay out and the emergency card, and short kit is always told', () => {
    const full: ClassFacts = {
      ...facts,
      kitShort: [{ item: 'dumbbell', needPieces: 24, havePieces: 20 }],
      mayStay: [{ item: 'mat', pieces: 1 }],
      nextInRoom: { title: 'Late Lift', time: '19:30' },
      emergencyCard: 'Phone by the door.',
    };
    const short = 'Kit short: 24 dumbbells needed, 20 in the room.';
    expect(countdownWords.lines(full, early, safe)).toHaveLength(3);
    expect(countdownWords.lines(full, early, safe)).toContain(short);
    expect(countdownWords.lines(full, countdown, safe)).toEqual([
      'Lay out for 12: 24 dumbbells, 2 boxes, 1 mat',
      short,
      'May stay out for LATE LIFT, 19:30: 1 mat',
      'First: circuit LEGS, GOBLET SQUAT + PUSH-UP → PLANK',
      'Emergency card, HALL: PHONE BY THE DOOR.',
    ]);
  });

  test('a cancelled and a moved class', () => {
    expect(countdownWords.cancelled(facts, safe)).toBe('SQUAT & PRESS, Mon 23 Nov, 18:30: cancelled.');
    const to = { ...facts.startsAt, date: '2026-11-24', time: '19:00' };
    expect(countdownWords.moved(facts, to, safe)).toBe(
      'SQUAT & PRESS, Mon 23 Nov, 18:30: moved to Tue 24 Nov, 19:00.',
    );
  });
});
