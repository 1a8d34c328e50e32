import { describe, expect, test } from 'vitest';
import { weekWords } from '../../../../bot/words/en/week-words.ts';
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
  setsByPattern: {},
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
  mend: {
    classId: 'next',
    slotName: 'Monday',
    startsAt: '2026-11-23T17:30:00.000Z',
    edit: 'swap B hip hinge',
    muscle: 'hamstrings',
    planId: 'plan',
    version: 3,
  },
};

describe('the week in words', () => {
  test('in short: trust, what was under-trained, one thing to do', () => {
    expect(weekWords.short(report, safe)).toBe(
      'Week 47, 2026, plans for 14 of 22 classes, 3 assumed taught as planned, 1 cancelled. ' +
        'Under-trained: hamstrings: no sets, 4 short; lats: 1½ sets (MONDAY 1½), 2½ short; hips: 1 day, two are wanted. ' +
        'One thing to do: SWAP B HIP HINGE in MONDAY, for more hamstrings.',
    );
  });

  test('a week of unknown plans says so, not that all is well', () => {
    const unknown = { ...report, trust: { ...report.trust, withPlan: 0 }, underTrained: [] };
    expect(weekWords.nothingUnderTrained(unknown)).toBe(
      'No plans of this week are known, so nothing can be said of its load.',
    );
    expect(weekWords.nothingUnderTrained({ ...report, underTrained: [] })).toContain('Nothing under-trained');
  });

  test('the studio as a whole is never called high', () => {
    const muscle = {
      muscle: 'chest',
      tensionSeconds: 600,
      days: 1,
      setsByDay: [],
      priority: 'first',
    } as const;
    expect(weekWords.muscle({ ...muscle, sets: 21, range: 'very high' })).toBe(
      'chest: 21 sets on 1 day, 10 min under tension',
    );
    expect(weekWords.muscle({ ...muscle, sets: 1, range: 'low' })).toBe(
      'chest: 1 set on 1 day, 10 min under tension, low',
    );
  });

  test('slot habits: worst, middle and best', () => {
    const worst = habit('Mon + Tue', {
      short: [{ muscle: 'lats', sets: 1, missingSets: 3 }],
      groupsUnderTwoDays: ['back'],
      veryHigh: ['quadriceps'],
    });
    const habits = { counted: 4, worst, median: habit('Mon + Thu'), best: habit('Tue + Thu') };
    expect(weekWords.habits({ ...report, habits }, safe)).toEqual([
      'Of 4 slot habits, left shortest: MON + TUE: lats 3 short, under two days: back, very high: quadriceps',
      'In the middle: MON + THU: nothing missing',
      'Least short: TUE + THU: nothing missing',
    ]);
    expect(weekWords.habits(report, safe)).toEqual([]);
  });

  test('the chart as text', () => {
    expect(weekWords.chartText([{ muscle: 'lats', sets: 0.5 }], 4)).toBe('lats ½; at least 4 are wanted.');
  });
});
