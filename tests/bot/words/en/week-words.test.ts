import { describe, expect, test } from 'vitest';
import { coachWeekWords } from '../../../../bot/words/en/coach-week-words.ts';
import { weekWords } from '../../../../bot/words/en/week-words.ts';
import type { WeekComparison } from '../../../../domain/week/compare-weeks.ts';
import type { HabitWeek, WeekReport } from '../../../../domain/week/week-report.ts';

const safe = (typed: string) => typed.toUpperCase();
const habit = (name: string, facts: Partial<HabitWeek> = {}): HabitWeek => ({
  name,
  slotIds: [],
  short: [],
  missingSets: 0,
  groupsUnderTwoDays: [],
  veryHigh: [],
  ...facts,
});
const report: WeekReport = {
  week: '2026-W47',
  trust: { classes: 22, withPlan: 14, assumed: 3, patternsOnly: 0, cancelled: 1, notTaught: 0 },
  muscles: [],
  classesByPattern: {},
  underTrained: [
    { kind: 'muscle', muscle: 'hamstrings', sets: 0, missingSets: 4, range: 'none', from: [] },
    {
      kind: 'muscle',
      muscle: 'lats',
      sets: 1.5,
      missingSets: 2.5,
      range: 'low',
      from: [{ slotName: 'Monday', sets: 1.5 }],
    },
    { kind: 'group', group: 'hips', days: 1 },
  ],
  slots: [],
  exceptions: { ranOver: ['Monday'], cutShort: [], cancelled: ['Noon'], notTaught: [], covered: [] },
  mend: {
    classId: 'next',
    slotName: 'Monday',
    startsAt: {
      date: '2026-11-23',
      time: '18:30',
      zone: 'Europe/Berlin',
      instant: '2026-11-23T17:30:00.000Z',
    },
    edit: 'swap B hip hinge',
    replaces: 'goblet squat',
    muscle: 'hamstrings',
    planId: 'plan',
    version: 3,
    gainedSets: 4,
  },
};

const better: WeekComparison = {
  kind: 'better',
  missingBefore: 9,
  missingNow: 6.5,
  mended: [{ muscle: 'chest', before: 2, now: 5 }],
  fresh: [{ muscle: 'lats', before: 6, now: 1.5 }],
  withPlanBefore: 13,
  withPlanNow: 14,
};

describe('the week in words', () => {
  test('in short: trust, what was under-trained, the edit that mends it, the week before, exceptions', () => {
    expect(weekWords.short(report, better, { classes: 2, withPlan: 1 }, safe)).toBe(
      'Week 47, 2026. Plans for 14 of 22 classes, 3 assumed taught as planned, sets of the others are unknown, not zero; 2 classes to come, 1 with a plan. ' +
        'Under-trained: hamstrings: no sets, 4 short; lats: 1½ sets (MONDAY 1½), 2½ short; Under two days: hips 1. ' +
        'To mend it, in MONDAY, Mon 23 Nov, 18:30: SWAP B HIP HINGE in the place of GOBLET SQUAT (hamstrings +4). ' +
        'Better than the week before: 6½ sets missing instead of 9; with plans for 14 classes, before for 13; enough now: chest 2 → 5; short now: lats 6 → 1½. ' +
        'Ran over: MONDAY. Cancelled: NOON.',
    );
  });

  test('a week of unknown plans says so, not that all is well', () => {
    const unknown = { ...report, trust: { ...report.trust, withPlan: 0 }, underTrained: [] };
    expect(weekWords.nothingUnderTrained(unknown)).toBe(
      'No plans of this week are known, so nothing can be said of its load.',
    );
    expect(weekWords.nothingUnderTrained({ ...report, underTrained: [] })).toContain('Nothing under-trained');
  });

  test('slot habits: the worst first, then the middle and the best', () => {
    const worst = habit('Mon + Tue', {
      short: [{ muscle: 'lats', sets: 1, missingSets: 3 }],
      groupsUnderTwoDays: ['back'],
      veryHigh: ['quadriceps'],
    });
    const habits = { counted: 4, worst, median: habit('Mon + Thu'), best: habit('Tue + Thu') };
    expect(weekWords.worstHabit({ ...report, habits }, safe)).toBe(
      'MON + TUE: lats 3 sets short; back on fewer than two days; very high: quadriceps',
    );
    expect(weekWords.otherHabits({ ...report, habits }, safe)).toEqual([
      'In the middle of 4: MON + THU: nothing missing',
      'Least short: TUE + THU: nothing missing',
    ]);
    // Of two, the middle one would be one of them.
    expect(weekWords.otherHabits({ ...report, habits: { ...habits, counted: 2 } }, safe)).toEqual([
      'Least short: TUE + THU: nothing missing',
    ]);
    expect(weekWords.worstHabit(report, safe)).toBeUndefined();
  });

  test('the chart as text', () => {
    expect(weekWords.chartText([{ name: 'lats', sets: 0.5 }], 4)).toBe('lats ½; at least 4 are wanted.');
  });

  test('a correction tells what changed', () => {
    const trust = { ...report.trust, assumed: 0 };
    const changed = [
      { saying: 'muscle:lats', was: 1.5 },
      { saying: 'group:hips', was: 1, now: 0 },
      { saying: 'muscle:chest', now: 3 },
    ];
    expect(weekWords.correction('Noon', 'marked', { trust, changed })).toBe(
      'Correction, since Noon was marked: Plans for 14 of 22 classes, sets of the others are unknown, not zero.\n• lats 1½ sets → enough\n• hips 1 day → 0 days\n• chest enough → 3 sets',
    );
  });

  test('a question and its answers', () => {
    expect(weekWords.ask('muscle:lats')).toBe(
      '*lats* was said three Mondays running. Shall I go on saying it?',
    );
    expect(weekWords.decided('group:back', false)).toBe(
      '*back on fewer than two days*: left out of the first lines until it was mended once.',
    );
  });
});

describe('the coach’s part in words', () => {
  test('session load with what it can’t say', () => {
    const alike = { load: 700, told: 7, held: 7, byDay: [100, 100, 100, 100, 100, 100, 100] };
    expect(coachWeekWords.strain(alike)).toBe(
      '700, all days alike, so there is no monotony. Monday to Sunday: 100, 100, 100, 100, 100, 100, 100. Estimates for 7 of 7 classes.',
    );
    expect(coachWeekWords.strain({ ...alike, monotony: 1.2, strain: 840 })).toContain(
      'monotony 1.20, training strain 840',
    );
  });

  test('a muscle in cells holds numbers and no judgement', () => {
    const row = { muscle: 'chest', tensionSeconds: 620, days: 1, sets: 21, setsByDay: [] } as const;
    expect(coachWeekWords.cells({ ...row, range: 'very high', priority: 'first' })).toEqual([
      'chest',
      '21',
      '1',
      '10',
    ]);
  });
});
