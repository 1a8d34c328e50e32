import { describe, expect, test } from 'vitest';
import { muscles } from '../../../domain/catalogue/muscles.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { balanceOfWeek } from '../../../domain/week/balance-of-week.ts';
import { doseRange } from '../../../domain/week/dose-range.ts';
import { weekChart } from '../../../domain/week/week-chart.ts';
import type { WeekClass } from '../../../domain/week/week-class.ts';
import { letters, on, plan, rounds, testContext, testMove } from '../../helpers/plan-builder.ts';
import { reportTime, slot, studio, taught, week } from './week-builder.ts';

const [monday, thursday] = [slot('Mon'), slot('Thu')];
const settings = studio([monday, thursday]);
const { catalogue } = testContext(
  testMove('squat', { primeMovers: ['quadriceps'], traits: ['compound'] }),
  testMove('press', { primeMovers: ['shoulders'] }),
  testMove('heavy hinge', { primeMovers: ['hamstrings'], level: 3, traits: ['compound'] }),
  testMove('bar hinge', { primeMovers: ['hamstrings'], kit: [{ item: 'barbell', pieces: 1 }] }),
  testMove('leg curl', { primeMovers: ['hamstrings'], position: 'supine' }),
  testMove('hinge', { primeMovers: ['hamstrings'], traits: ['compound'] }),
);
const balance = (classes: readonly WeekClass[], facts: Partial<Settings> = {}, now = reportTime) =>
  balanceOfWeek(classes, { week, now, catalogue, settings: { ...settings, ...facts } });

describe('ranges of weekly sets', () => {
  // 4: Iversen VM et al. Sports Med 2021;51:2079–95. 10: ACSM position stand 2026, Med Sci Sports Exerc.
  // 20: Baz-Valle E et al. J Hum Kinet 2022;81:199–210.
  test.each([
    [0, 'none'],
    [0.5, 'low'],
    [3.5, 'low'],
    [4, 'moderate'],
    [9.5, 'moderate'],
    [10, 'high'],
    [20, 'high'],
    [20.5, 'very high'],
  ] as const)('%d sets are %s', (sets, range) => {
    expect(doseRange(sets, defaultSettings.dose)).toBe(range);
  });
});

describe('the balance of a week', () => {
  // The fractional counting of Pelland JC et al. Sports Med 2025, worked for push-up 4, shoulder press 3,
  // row 4, squat 4.
  const worked = {
    chest: 4,
    shoulders: 7,
    triceps: 3.5,
    'upper back': 4,
    lats: 2,
    biceps: 2,
    quadriceps: 4,
    glutes: 2,
    hamstrings: 2,
  } as const;

  test('sums sets, tension and days by muscle, each in its range', () => {
    const report = balance([taught(monday, worked), taught(thursday, { shoulders: 3, chest: 0.5 })]);
    expect(report.muscles.map(({ muscle }) => muscle)).toEqual(muscles);
    expect(report.muscles.find(({ muscle }) => muscle === 'shoulders')).toEqual({
      muscle: 'shoulders',
      sets: 10,
      tensionSeconds: 400,
      days: 2,
      setsByDay: [7, 0, 0, 3, 0, 0, 0],
      range: 'high',
      priority: 'first',
    });
    expect(report.muscles.find(({ muscle }) => muscle === 'chest')).toMatchObject({ sets: 4.5, days: 1 });
  });

  test('names what is under-trained: most missing first, with the slots that gave', () => {
    const { underTrained } = balance([taught(monday, worked), taught(thursday, worked)]);
    expect(underTrained.filter(({ kind }) => kind === 'muscle')).toEqual([
      { kind: 'muscle', muscle: 'abdominals', sets: 0, missingSets: 4, range: 'none', from: [] },
      { kind: 'muscle', muscle: 'obliques', sets: 0, missingSets: 4, range: 'none', from: [] },
      { kind: 'muscle', muscle: 'lower back', sets: 0, missingSets: 4, range: 'none', from: [] },
    ]);
    const low = balance([taught(monday, worked)]).underTrained.find(
      (each) => each.kind === 'muscle' && each.muscle === 'lats',
    );
    expect(low).toEqual({
      kind: 'muscle',
      muscle: 'lats',
      sets: 2,
      missingSets: 2,
      range: 'low',
      from: [{ slotName: 'Mon class', sets: 2 }],
    });
  });

  // WHO 2020, Bull FC et al. Br J Sports Med 2020;54:1451–62: all major muscle groups on 2 or more days.
  test('says of each guideline group whether it had two days', () => {
    const groups = (classes: readonly WeekClass[]) =>
      balance(classes).underTrained.flatMap((each) =>
        each.kind === 'group' ? [[each.group, each.days]] : [],
      );
    expect(groups([taught(monday, worked)])).toEqual([
      ['legs', 1],
      ['hips', 1],
      ['back', 1],
      ['abdomen', 0],
      ['chest', 1],
      ['shoulders', 1],
      ['arms', 1],
    ]);
    expect(groups([taught(monday, worked), taught(thursday, worked)])).toEqual([['abdomen', 0]]);
    expect(groups([taught(monday, worked), taught(slot('Mon', '20:00'), worked)])).toHaveLength(7);
    expect(
      groups([taught(monday, { ...worked, obliques: 1 }), taught(thursday, { ...worked, obliques: 0.5 })]),
    ).toEqual([['abdomen', 1]]);
  });

  test('second-priority muscles and upper ranges are not said of the whole studio', () => {
    const all = Object.fromEntries(settings.firstPriority.map((muscle) => [muscle, 30]));
    const said = balance([taught(monday, all), taught(thursday, all)]).underTrained;
    expect(said).toEqual([{ kind: 'group', group: 'arms', days: 0 }]);
  });

  test('a day is a day in the zone of the studio', () => {
    const late = taught(slot('Mon', '00:15'), { chest: 2 });
    expect(late.scheduled.startsAt.instant).toBe('2026-11-15T23:15:00.000Z');
    expect(balance([late]).muscles.find(({ muscle }) => muscle === 'chest')?.setsByDay).toEqual([
      2, 0, 0, 0, 0, 0, 0,
    ]);
  });
});

describe('how far to trust a week', () => {
  const { outcome: _, ...silent } = taught(thursday).scheduled;
  const unsaid: WeekClass = { scheduled: { ...silent, state: 'planned' } };

  test('counts what was said, assumed, cancelled and not taught', () => {
    const report = balance([
      taught(monday, { chest: 4 }),
      unsaid,
      { ...taught(slot('Tue')), setsByPattern: { squat: 1 } },
      taught(slot('Wed'), undefined, { state: 'cancelled' }),
      taught(slot('Fri'), undefined, { state: 'not taught' }),
    ]);
    expect(report.trust).toEqual({
      classes: 3,
      withPlan: 1,
      assumed: 1,
      patternsOnly: 1,
      cancelled: 1,
      notTaught: 1,
    });
    expect(report.classesByPattern).toEqual({ squat: 1 });
    expect(report.slots).toEqual([
      { slotName: 'Mon class', classes: 1, sets: 4 },
      { slotName: 'Thu class', classes: 1, sets: 0 },
      { slotName: 'single class', classes: 1, sets: 0 },
    ]);
  });

  test('a class counts as taught three hours after its end, not before', () => {
    const at = (now: string) => balance([unsaid], {}, now).trust;
    expect(at('2026-11-19T20:44:59.000Z')).toMatchObject({ classes: 0, assumed: 0 });
    expect(at('2026-11-19T20:45:00.000Z')).toMatchObject({ classes: 1, assumed: 1 });
  });

  test('a class whose cover nobody took is not known until someone says how it went', () => {
    const open: WeekClass = { ...unsaid, load: [{ muscle: 'chest', sets: 9, tensionSeconds: 270 }] };
    const offered = { ...open, scheduled: { ...open.scheduled, coverOpen: true } } as const;
    expect(balance([open]).trust).toMatchObject({ classes: 1, assumed: 1 });
    expect(balance([offered]).trust).toMatchObject({ classes: 0, assumed: 0 });
    expect(balance([offered]).muscles.find(({ muscle }) => muscle === 'chest')?.sets).toBe(0);
  });

  test('a week of unknown classes has nothing under-trained: unknown is not zero', () => {
    expect(balance([taught(monday), taught(thursday)]).underTrained).toEqual([]);
    expect(balance([]).underTrained).toEqual([]);
  });

  test('a cancelled class adds no load', () => {
    const cancelled = taught(monday, { chest: 9 }, { state: 'cancelled' });
    expect(balance([cancelled]).muscles.find(({ muscle }) => muscle === 'chest')?.sets).toBe(0);
  });
});

describe('one thing to do about it', () => {
  const missingHamstrings = { firstPriority: ['hamstrings', 'quadriceps', 'shoulders'] } as const;
  const next = { ...taught(monday).scheduled, id: 'next', state: 'planned', planId: 'plan' } as const;
  const circuit = rounds('circuit', 3, on(40, 20), letters('press', 'squat'));
  const mend = (
    facts: Parameters<typeof plan>[1],
    blocks = [circuit],
    sets = { quadriceps: 12, shoulders: 5 },
  ) =>
    balanceOfWeek([taught(monday, sets)], {
      week,
      now: reportTime,
      catalogue,
      settings: { ...settings, ...missingHamstrings },
      upcoming: [{ scheduled: next, plan: plan(blocks, facts), version: 3 }],
    }).mend;

  test('is a swap for a class to come, in the place of what had most', () => {
    expect(mend({ level: 1, kit: [] })).toEqual({
      classId: 'next',
      slotName: 'Mon class',
      startsAt: next.startsAt,
      edit: 'swap B hinge',
      replaces: 'squat',
      muscle: 'hamstrings',
      planId: 'plan',
      version: 3,
      gainedSets: 3,
    });
  });

  test('keeps to level and kit', () => {
    expect(mend({ level: 3, kit: ['barbell'] })?.edit).toBe('swap B heavy hinge');
    expect(mend({ level: 3, kit: [] })?.edit).toBe('swap B heavy hinge');
    expect(mend({ level: 2, kit: [] })?.edit).toBe('swap B hinge');
  });

  test('is none where the class trains the muscle with all it has, or nothing is missing', () => {
    expect(
      mend({ level: 1 }, [rounds('circuit', 3, on(40, 20), letters('hinge', 'leg curl'))]),
    ).toBeUndefined();
    const report = balanceOfWeek([taught(monday, { hamstrings: 9, quadriceps: 9, shoulders: 9 })], {
      week,
      now: reportTime,
      catalogue,
      settings: { ...settings, ...missingHamstrings },
      upcoming: [{ scheduled: next, plan: plan([circuit]), version: 3 }],
    });
    expect(report.mend).toBeUndefined();
  });
});

test('the chart shows first-priority muscles, fewest sets first', () => {
  const chart = weekChart(balance([taught(monday, { chest: 4, biceps: 9 })]), settings.dose);
  expect(chart.leastSets).toBe(4);
  expect(chart.bars).toHaveLength(settings.firstPriority.length);
  expect(chart.bars.at(-1)).toEqual({ muscle: 'chest', sets: 4 });
  const quarters = weekChart(balance([taught(monday, { chest: 11.25, lats: 27.75 })]), settings.dose);
  expect(quarters.bars.slice(-2).map(({ sets }) => sets)).toEqual([11.5, 28]);
});
