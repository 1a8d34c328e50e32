import { describe, expect, test } from 'vitest';
import { countdownWords } from '../../../../bot/words/en/countdown-words.ts';
import type { ClassFacts, ClassMoment } from '../../../../domain/calendar/countdown-for.ts';

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
  layOut: [
    { item: 'dumbbell', pieces: 24 },
    { item: 'box', pieces: 2 },
    { item: 'mat', pieces: 1 },
  ],
  firstBlock: { kind: 'circuit', name: 'Legs', letters: [['goblet squat', 'push-up'], ['plank']] },
};
const countdown: ClassMoment = {
  kind: 'countdown',
  minutesBefore: 15,
  key: 'key',
  at: '2026-11-23T17:15:00.000Z',
  usefulUntil: '2026-11-23T17:25:00.000Z',
  facts,
};

describe('a countdown in words', () => {
  test.each([
    ['2026-11-23T17:15:00.000Z', 'in 15 min'],
    ['2026-11-23T17:18:10.000Z', 'in 12 min'],
    ['2026-11-23T17:30:00.000Z', 'on now'],
  ])('said at %s it tells the time that is left', (now, left) => {
    expect(countdownWords.lead(countdown, now, safe)).toBe(
      `SQUAT & PRESS, 18:30, ${left}: <@U1>, HALL, 12 people`,
    );
  });

  test('at the start it says on now', () => {
    const onNow: ClassMoment = { ...countdown, kind: 'on now' };
    expect(countdownWords.lead(onNow, facts.startsAt.instant, safe)).toContain(', on now: ');
  });

  test('what to lay out and what comes first', () => {
    expect(countdownWords.lines(countdown, safe)).toEqual([
      'Lay out for 12: 24 dumbbells, 2 boxes, 1 mat',
      'First: circuit LEGS, GOBLET SQUAT + PUSH-UP → PLANK',
    ]);
  });

  test.each([
    ['none', 'No plan yet.'],
    ['not approved', 'Plan in change.'],
    ['change waits', 'Shown is the last approved plan; a change waits for review.'],
  ] as const)('a plan that is %s', (plan, line) => {
    const { firstBlock: _, ...bare } = facts;
    expect(countdownWords.lines({ ...countdown, facts: { ...bare, layOut: [], plan } }, safe)).toEqual([
      line,
    ]);
  });
});
