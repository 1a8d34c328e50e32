import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Settings } from '../../../domain/settings.ts';
import { balanceOfWeek } from '../../../domain/week/balance-of-week.ts';
import { comingWeek } from '../../../domain/week/coming-week.ts';
import { compareWeeks } from '../../../domain/week/compare-weeks.ts';
import { plannedAndTaught } from '../../../domain/week/planned-and-taught.ts';
import { recoveryConflicts } from '../../../domain/week/recovery-conflicts.ts';
import { type SayingDecision, standingOfSaying } from '../../../domain/week/sayings.ts';
import { strainOfWeek } from '../../../domain/week/strain-of-week.ts';
import { readTaughtLine } from '../../../domain/week/taught-patterns.ts';
import { correctionOf, toldWeek } from '../../../domain/week/told-week.ts';
import { judge, type WeekClass } from '../../../domain/week/week-class.ts';
import { weekTrend } from '../../../domain/week/week-trend.ts';
import { reportTime, slot, studio, taught, week } from './week-builder.ts';

const [mon, tue, wed, thu] = [slot('Mon'), slot('Tue'), slot('Wed'), slot('Thu')];
const settings = studio([mon, tue, wed, thu], { firstPriority: ['chest', 'lats'] });
const context = (now = reportTime, facts: Settings = settings) => ({ week, now, settings: facts, catalogue });
const judged = (classes: readonly WeekClass[]) => classes.map((one) => judge(one, context()));
const balance = (classes: readonly WeekClass[]) => balanceOfWeek(classes, context());

describe('what went otherwise', () => {
  test('is told by slot: over, short, cancelled, not taught, covered', () => {
    const said = { how: 'as planned', saidAt: reportTime } as const;
    const report = balance([
      taught(mon, {}, { outcome: { ...said, length: 'over' } }),
      taught(tue, {}, { outcome: { ...said, length: 'short' }, instructorId: 'another' }),
      taught(wed, {}, { state: 'cancelled' }),
      taught(thu, {}, { state: 'not taught', outcome: { how: 'not taught', length: 'over', saidAt: 'x' } }),
    ]);
    expect(report.exceptions).toEqual({
      ranOver: ['Mon class'],
      cutShort: ['Tue class'],
      cancelled: ['Wed class'],
      notTaught: ['Thu class'],
      covered: ['Tue class'],
    });
  });
});

describe('a week beside the one before', () => {
  const low = balance([taught(mon, { chest: 2, lats: 4 }), taught(thu, { chest: 1, lats: 4 })]);
  const good = balance([taught(mon, { chest: 4, lats: 4 }), taught(thu, { chest: 4, lats: 1 })]);

  test('is better where fewer sets are missing, and says which muscles have enough now', () => {
    expect(compareWeeks(low, good)).toEqual({
      kind: 'better',
      missingBefore: 1,
      missingNow: 0,
      mended: [{ muscle: 'chest', before: 3, now: 8 }],
      fresh: [],
      withPlanBefore: 2,
      withPlanNow: 2,
    });
    expect(compareWeeks(good, low)).toMatchObject({
      kind: 'worse',
      fresh: [{ muscle: 'chest', before: 8, now: 3 }],
    });
    expect(compareWeeks(low, low)).toMatchObject({ kind: 'alike', mended: [], fresh: [] });
  });

  test('is not compared with a week that is not known', () => {
    expect(compareWeeks(balance([taught(mon)]), good)).toEqual({ kind: 'unknown' });
    expect(compareWeeks(good, balance([]))).toEqual({ kind: 'unknown' });
  });

  test('in a trend an unknown week has no number, not zero', () => {
    const { weeks, setsByMuscle } = weekTrend([balance([]), low, good]);
    expect(weeks).toEqual([week, week, week]);
    expect(setsByMuscle.get('chest')).toEqual([undefined, 3, 8]);
    expect(setsByMuscle.get('calves')).toEqual([undefined, 0, 0]);
  });
});

describe('under 48 hours apart', () => {
  // Garber CE et al. Med Sci Sports Exerc 2011;43:1334–59: 48 h between sessions of a muscle group.
  test.each([
    ['24 h, both hard', [taught(mon, { chest: 6 }), taught(tue, { chest: 6 })], [24]],
    ['48 h', [taught(mon, { chest: 9 }), taught(wed, { chest: 9 })], []],
    ['24 h, one below six sets', [taught(mon, { chest: 6 }), taught(tue, { chest: 5.5 })], []],
    [
      '24 h, one cancelled',
      [taught(mon, { chest: 6 }), taught(tue, { chest: 6 }, { state: 'cancelled' })],
      [],
    ],
    ['twice one slot', [taught(mon, { chest: 6 }), taught(mon, { chest: 6 })], []],
  ])('%s', (_, classes, hours) => {
    expect(recoveryConflicts(judged(classes), settings).map((each) => each.hours)).toEqual(hours);
  });

  test('only slots of a shared habit count', () => {
    const classes = judged([taught(mon, { chest: 6, lats: 7 }), taught(tue, { chest: 6, lats: 7 })]);
    expect(recoveryConflicts(classes, settings)).toEqual([
      { first: 'Mon class', second: 'Tue class', hours: 24, muscles: ['lats', 'chest'] },
    ]);
    const apart = { ...settings, slotHabits: [{ name: 'early', slotIds: ['Mon', 'Thu'] }] };
    expect(recoveryConflicts(classes, apart)).toEqual([]);
  });
});

describe('session load', () => {
  // Foster C et al. J Strength Cond Res 2001;15:109–15, table 5: week load 3,400, monotony 1.26, strain 4,284.
  test('of the published week, given as seven classes of ten minutes’ estimates', () => {
    const days = [940, 50, 1120, 570, 50, 390, 280];
    const slots = (['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const).map((day) => slot(day));
    const classes = slots.map((each, day) =>
      taught(
        each,
        {},
        {
          slotSeconds: (days[day] ?? 0) * 6,
          outcome: { how: 'as planned', effort: 10, saidAt: reportTime },
        },
      ),
    );
    const strain = strainOfWeek(classes.map((one) => judge(one, context(reportTime, studio(slots)))));
    expect(strain).toEqual({ load: 3400, monotony: 1.26, strain: 4284, told: 7, held: 7, byDay: days });
  });

  test('is absent without an estimate, and says how many have one', () => {
    const said = taught(
      mon,
      {},
      { outcome: { how: 'as planned', effort: 7, saidAt: reportTime }, slotSeconds: 3600 },
    );
    expect(strainOfWeek(judged([taught(tue)]))).toBeUndefined();
    // RPE 7 × 60 min = 420 (Foster 2001).
    expect(strainOfWeek(judged([said, taught(tue)]))).toMatchObject({ load: 420, told: 1, held: 2 });
  });
});

describe('planned against taught', () => {
  test('counts sets of plans, and of what was held', () => {
    const rows = (sets: number) => [{ muscle: 'chest', sets, tensionSeconds: 40 }] as const;
    const classes = judged([
      { ...taught(mon, { chest: 6 }), planned: rows(6) },
      { ...taught(tue, {}, { state: 'cancelled' }), planned: rows(5) },
      {
        ...taught(wed, { chest: 4 }, { outcome: { how: 'with changes', saidAt: reportTime } }),
        planned: rows(4),
      },
      taught(thu),
    ]);
    expect(plannedAndTaught(classes, settings)).toEqual({
      planned: 3,
      taught: 2,
      plannedSets: 15,
      taughtSets: 10,
      withChanges: ['Wed class'],
    });
  });
});

describe('the coming week', () => {
  test('as approved so far: open slots, and what approved plans leave short', () => {
    const load = [{ muscle: 'chest', sets: 5, tensionSeconds: 200 }] as const;
    const coming = comingWeek(
      '2026-W48',
      [
        { scheduled: taught(mon).scheduled, standing: 'approved', approvedLoad: load },
        { scheduled: taught(tue).scheduled, standing: 'waits' },
        { scheduled: { ...taught(wed).scheduled, state: 'cancelled' }, standing: 'no plan' },
      ],
      settings,
    );
    expect(coming).toEqual({
      week: '2026-W48',
      classes: 2,
      approved: 1,
      open: [{ slotName: 'Tue class', standing: 'waits' }],
      short: [{ muscle: 'lats', sets: 0 }],
    });
  });

  test('nothing approved leaves nothing short: unknown is not zero', () => {
    const coming = comingWeek(
      '2026-W48',
      [{ scheduled: taught(mon).scheduled, standing: 'draft' }],
      settings,
    );
    expect(coming).toMatchObject({ approved: 0, short: [] });
  });
});

describe('a saying', () => {
  const lats = 'muscle:lats';
  const said = (...weeks: readonly string[]) => weeks.map((each) => ({ week: each, sayings: [lats] }));
  const stands = (weeks: readonly string[], decisions: readonly SayingDecision[] = []) =>
    standingOfSaying(lats, '2026-W50', said(...weeks), decisions);

  test.each([
    ['the first time', [], 'said'],
    ['the second', ['2026-W49'], 'said'],
    ['the third running', ['2026-W49', '2026-W48'], 'asked'],
    ['after a week without it', ['2026-W48', '2026-W47'], 'said'],
    ['the fourth, unanswered', ['2026-W49', '2026-W48', '2026-W47'], 'said'],
    ['the sixth, unanswered', ['2026-W49', '2026-W48', '2026-W47', '2026-W46', '2026-W45'], 'asked'],
  ] as const)('%s', (_, weeks, standing) => {
    expect(stands(weeks)).toBe(standing);
  });

  test('that goes on is asked about after three more', () => {
    const goesOn = { saying: lats, goesOn: true, week: '2026-W48' };
    expect(stands(['2026-W49', '2026-W48', '2026-W47'], [goesOn])).toBe('said');
    const earlier = { ...goesOn, week: '2026-W47' };
    expect(stands(['2026-W49', '2026-W48', '2026-W47'], [earlier])).toBe('asked');
  });

  test('that was stopped is quiet until it was mended once', () => {
    const stopped = { saying: lats, goesOn: false, week: '2026-W48' };
    expect(stands(['2026-W49', '2026-W48', '2026-W47'], [stopped])).toBe('quiet');
    expect(stands(['2026-W48', '2026-W47'], [stopped])).toBe('said');
  });

  test('an answer about this very week does not change how the week was told', () => {
    const now = { saying: lats, goesOn: false, week: '2026-W50' };
    expect(stands(['2026-W49', '2026-W48'], [now])).toBe('asked');
  });

  test('runs over the turn of the year', () => {
    const running = said('2026-W53', '2026-W52');
    expect(standingOfSaying(lats, '2027-W01', running, [])).toBe('asked');
  });
});

describe('a correction', () => {
  const told = toldWeek(balance([taught(mon, { chest: 2, lats: 4 }), taught(thu, { chest: 1, lats: 4 })]));

  test('is none where all stands as told', () => {
    expect(correctionOf(told, structuredClone(told))).toBeUndefined();
  });

  test('names what is otherwise, with was and now', () => {
    const now = toldWeek(balance([taught(mon, { chest: 4, lats: 1 })]));
    expect(correctionOf(told, now)).toEqual({
      trust: now.trust,
      changed: [
        { saying: 'muscle:chest', was: 3 },
        { saying: 'muscle:lats', now: 1 },
        { saying: 'group:back', now: 1 },
        { saying: 'group:chest', now: 1 },
      ],
    });
  });
});

describe('taught: a line of patterns', () => {
  test.each([
    ['taught: squat, hinge, push, core', ['squat', 'hinge', 'horizontal push', 'anti-extension'], []],
    ['Taught: squats and lunges', ['squat', 'lunge'], []],
    ['taught: horizontal pull, vertical push, presses', ['horizontal pull', 'vertical push'], []],
    ['taught: pull + carries', ['horizontal pull', 'carry'], []],
    ['taught: yoga', [], ['yoga']],
  ])('%s', (text, patterns, unknown) => {
    const line = readTaughtLine(text);
    expect(line?.unknown).toEqual(unknown);
    expect([...(line?.patterns ?? [])].sort()).toEqual([...patterns].sort());
  });

  test.each(['taught', 'taught:', 'we taught: squat', ''])('is not: %s', (text) => {
    expect(readTaughtLine(text)).toBeUndefined();
  });

  test('any text is read without harm', () => {
    fc.assert(fc.property(fc.string(), (text) => void readTaughtLine(`taught: ${text}`)));
  });
});
