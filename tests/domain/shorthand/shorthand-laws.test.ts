import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { kitItems } from '../../../domain/catalogue/kit.ts';
import type { Block, Letter, OpenItem, Plan, PlanFacts, PlannedMove } from '../../../domain/plan/plan.ts';
import { editPlan } from '../../../domain/shorthand/edit-plan.ts';
import { printPlan } from '../../../domain/shorthand/print-plan.ts';
import { readPlan } from '../../../domain/shorthand/read-plan.ts';
import { samePlan } from '../../../domain/shorthand/same-plan.ts';
import { context } from './reading.ts';

/** Plans as the reader makes them: every shape, within the limits. */

const here = { id: '', span: { start: 0, end: 0 } };
const maybe = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });

/** Without the facts that are undefined. */
type Compact<Facts> = {
  [Key in keyof Facts as undefined extends Facts[Key] ? never : Key]: Facts[Key];
} & { [Key in keyof Facts as undefined extends Facts[Key] ? Key : never]?: Exclude<Facts[Key], undefined> };

const compact = <Facts extends object>(facts: Facts): Compact<Facts> =>
  Object.fromEntries(Object.entries(facts).filter(([, value]) => value !== undefined)) as Compact<Facts>;

const words = fc
  .array(fc.constantFrom('Steady', 'Blue', 'Dawn', '&', 'Fold', 'Ember', 'No.', 'Über', "Ann's", '24'), {
    minLength: 1,
    maxLength: 4,
  })
  .map((each) => each.join(' '))
  .filter((each) => /^[A-ZÜ]/.test(each) && !/No\.$/.test(each));
const seconds = fc.integer({ min: 1, max: 300 });

type Frame = { readonly block: Block['kind']; readonly rounds?: number };

function plannedMove({ block }: Frame): fc.Arbitrary<PlannedMove> {
  const moves = catalogue.moves.filter(({ effort }) => effort !== 'mobility');
  const kind = fc.constantFrom('move', 'move', 'move', 'open', 'words');
  return fc
    .record({
      kind,
      move: fc.constantFrom(...moves),
      wish: fc.constantFrom('', 'row', 'core no kit', 'glutes standing', 'upper body dumbbells'),
      text: fc.constantFrom('goblin squash', 'walk + talk', 'a, b'),
      sides: fc.constantFrom('each side', 'split sides', 'alternating', 'right', 'left'),
      workSeconds: maybe(seconds),
      reps: maybe(fc.integer({ min: 1, max: 10 }).map((half) => half * 2)),
      tempo: maybe(
        fc.record({
          lowerSeconds: fc.integer({ min: 1, max: 5 }),
          bottomPauseSeconds: fc.integer({ min: 0, max: 3 }),
          liftSeconds: fc.integer({ min: 1, max: 5 }),
          topPauseSeconds: fc.integer({ min: 0, max: 3 }),
        }),
      ),
      weight: maybe(
        fc.oneof(
          fc.record({
            kind: fc.constant('mass' as const),
            amount: fc.constantFrom(4, 12.5, 16, 40),
            unit: fc.constantFrom('kg' as const, 'lb' as const),
          }),
          fc.record({
            kind: fc.constant('feel' as const),
            feel: fc.constantFrom('light' as const, 'medium' as const, 'heavy' as const),
          }),
        ),
      ),
      rpe: maybe(fc.integer({ min: 1, max: 10 })),
      metres: maybe(fc.integer({ min: 1, max: 100 })),
      note: maybe(fc.constantFrom('slow', 'hands wide, + look up', 'x3 if you can', 'rest 20')),
      option: maybe(
        fc.oneof(
          fc
            .constantFrom(...moves)
            .map(({ id, name }) => ({ kind: 'easier' as const, moveId: id, text: name })),
          fc.constant({ kind: 'or' as const, text: 'hands on a step' }),
        ),
      ),
    })
    .map(({ kind: choiceKind, move, wish, text, sides, option, workSeconds, ...facts }) => {
      const open = readPlan(`T, 45 min\namrap 8\n? ${wish}`, context).plan?.blocks[0];
      const wished = open?.kind === 'amrap' ? open.letters[0]?.moves[0]?.choice : undefined;
      const choice: PlannedMove['choice'] =
        choiceKind === 'move' || wished === undefined
          ? { kind: 'move', moveId: move.id }
          : choiceKind === 'open'
            ? wished
            : { kind: 'words', text };
      const free = block === 'stations' || block === 'emom' || block === 'tabata';
      const used = free && sides === 'each side' ? 'split sides' : sides;
      const own = {
        'both at once': 'both',
        'alternating by nature': 'alternating',
        'one-sided': used,
      } as const;
      return compact({
        ...here,
        choice,
        sides: choice.kind === 'move' ? own[move.sides] : used,
        ...facts,
        ...(block === 'tabata'
          ? {}
          : { workSeconds: block === 'straight' ? (workSeconds ?? 30) : workSeconds }),
        options: option === undefined ? [] : [option],
      }) as PlannedMove;
    });
}

function letter(frame: Frame): fc.Arbitrary<Letter> {
  const ownRest = ['circuit', 'straight', 'stations', 'finisher'].includes(frame.block);
  const byRound = ownRest && frame.rounds !== undefined && frame.rounds > 1;
  const say = fc.array(fc.constantFrom('Knees out.', 'eyes up: breathe'), { maxLength: 2 });
  const wholeSet = !['stations', 'emom', 'tabata'].includes(frame.block);
  return fc
    .record({
      inTurn: fc.array(plannedMove(frame), { minLength: 1, maxLength: frame.block === 'emom' ? 1 : 4 }),
      byRound: fc.array(plannedMove(frame), { minLength: frame.rounds ?? 1, maxLength: frame.rounds ?? 1 }),
      isByRound: fc.boolean(),
      restSeconds: maybe(fc.integer({ min: 0, max: 120 })),
      wholeSetEachSide: fc.boolean(),
      burnout: fc.boolean(),
      say,
    })
    .map(({ inTurn, byRound: one, isByRound, restSeconds, ...facts }) =>
      compact({
        ...here,
        order: byRound && isByRound ? ('by round' as const) : ('in turn' as const),
        moves: byRound && isByRound ? one : inTurn,
        ...facts,
        ...(ownRest ? { restSeconds } : {}),
        wholeSetEachSide: wholeSet && facts.wholeSetEachSide,
      }),
    );
}

const letters = (frame: Frame) => fc.array(letter(frame), { minLength: 1, maxLength: 3 });

const shared = fc
  .record({
    name: maybe(words.filter((name) => !/\d/.test(name))),
    burnout: fc.boolean(),
    marchInRests: fc.boolean(),
    pairs: fc.constantFrom(undefined, 'swap' as const, 'one rests' as const),
    countInSeconds: maybe(fc.integer({ min: 0, max: 10 })),
  })
  .map((facts) => ({ ...here, ...compact(facts) }));

/** An EMOM and a tabata fix their rests, so that no pair can share them out. */
const inStep = shared.map(({ pairs, ...facts }) =>
  pairs === 'one rests' ? facts : { ...facts, ...compact({ pairs }) },
);

const interval = fc.record({
  workSeconds: fc.integer({ min: 1, max: 60 }),
  restSeconds: fc.integer({ min: 0, max: 60 }),
});

const roundsBlock: fc.Arbitrary<Block> = fc
  .record({
    kind: fc.constantFrom('circuit' as const, 'straight' as const, 'stations' as const, 'finisher' as const),
    rounds: fc.integer({ min: 1, max: 4 }),
    list: fc.boolean(),
  })
  .chain(({ kind, rounds, list }) =>
    fc
      .record({
        shared,
        each: fc.array(interval, { minLength: rounds, maxLength: rounds }),
        letters: letters({ block: kind, rounds }),
        between: maybe(seconds),
        people: maybe(fc.integer({ min: 1, max: 4 })),
      })
      .map(({ shared: base, each, letters: lines, between, people }) => {
        const alike = each.every((one) => JSON.stringify(one) === JSON.stringify(each[0]));
        return compact({
          ...base,
          kind,
          rounds,
          intervals: list && !alike ? each : each.slice(0, 1),
          letters: lines,
          ...(kind === 'straight' ? { betweenLettersSeconds: between } : { betweenRoundsSeconds: between }),
          ...(kind === 'stations' ? { peoplePerStation: people } : {}),
        }) as Block;
      }),
  );

const otherLettered: fc.Arbitrary<Block> = fc.oneof(
  fc
    .record({
      shared: inStep,
      letters: letters({ block: 'tabata' }),
      times: fc.integer({ min: 1, max: 3 }),
      between: maybe(seconds),
    })
    .map(
      ({ shared: base, letters: lines, times, between }) =>
        compact({
          ...base,
          kind: 'tabata' as const,
          letters: lines,
          times,
          betweenSeconds: between,
        }) as Block,
    ),
  fc
    .record({
      shared: inStep,
      letters: letters({ block: 'emom' }),
      intervals: fc.integer({ min: 1, max: 5 }),
      minute: fc.boolean(),
    })
    .map(({ shared: base, letters: lines, intervals, minute }) => ({
      ...base,
      kind: 'emom' as const,
      letters: lines,
      intervals,
      intervalSeconds: minute ? 600 : 630,
      workSeconds: 20,
    })),
  fc
    .record({
      shared,
      kind: fc.constantFrom('amrap' as const, 'for time' as const),
      letters: letters({ block: 'amrap' }),
      length: seconds,
      about: maybe(fc.integer({ min: 1, max: 9 })),
    })
    .map(
      ({ shared: base, kind, letters: lines, length, about }) =>
        compact({ ...base, kind, letters: lines, seconds: length, aboutRounds: about }) as Block,
    ),
  fc
    .record({
      shared,
      letters: letters({ block: 'ladder' }),
      rungs: fc.oneof(
        fc.array(fc.integer({ min: 1, max: 21 }), { minLength: 2, maxLength: 8 }),
        fc.constantFrom(
          [10, 9, 8, 7, 6],
          [2, 4, 6, 8],
          [1, 2, 3, 2, 1],
          [1, 3, 5, 3, 1],
          [9, 6, 3, 6, 9],
          [4, 4, 4],
        ),
      ),
      cap: maybe(seconds),
    })
    .map(
      ({ shared: base, letters: lines, rungs, cap }) =>
        compact({ ...base, kind: 'ladder' as const, letters: lines, rungs, capSeconds: cap }) as Block,
    ),
);

const item: fc.Arbitrary<OpenItem> = fc
  .record({
    what: fc.oneof(
      fc.constantFrom(...catalogue.moves).map(({ id }) => ({ kind: 'move' as const, moveId: id })),
      fc
        .constantFrom('Shake it out', 'roll + fold', 'rest 20 if you like')
        .map((text) => ({ kind: 'words' as const, text })),
    ),
    workSeconds: maybe(seconds),
  })
  .map((facts) => ({ ...here, ...compact(facts) }));

const openBlock: fc.Arbitrary<Block> = fc.record({
  ...{ id: fc.constant(''), span: fc.constant(here.span) },
  kind: fc.constantFrom('warm-up' as const, 'cool-down' as const, 'mobility' as const, 'song' as const),
  length: fc.record({ kind: fc.constant('fixed' as const), seconds }),
  items: fc.array(item, { maxLength: 4 }),
  say: fc.array(fc.constantFrom('Easy; not'.replace(';', ','), 'big arms'), { maxLength: 1 }),
});

const timeBlock: fc.Arbitrary<Block> = fc
  .record({
    kind: fc.constantFrom('rest' as const, 'water' as const, 'explain' as const, 'set-up' as const),
    seconds: fc.integer({ min: 0, max: 120 }),
    explain: fc.boolean(),
  })
  .map((facts) => ({
    ...here,
    ...facts,
    explain: facts.explain && (facts.kind === 'rest' || facts.kind === 'water'),
  }));

const facts: fc.Arbitrary<PlanFacts> = fc
  .record({
    title: maybe(words),
    slotSeconds: fc.integer({ min: 5, max: 180 }).map((minutes) => minutes * 60),
    level: fc.constantFrom(undefined, 1 as const, 2 as const, 3 as const, 'mixed' as const),
    people: maybe(fc.integer({ min: 1, max: 40 })),
    focus: maybe(fc.constantFrom('lower body', 'push & pull 45 min')),
    aim: maybe(fc.constant('steady pace')),
    beginners: fc.boolean(),
    olderAdults: fc.boolean(),
    hotRoom: fc.boolean(),
    startsAt: maybe(
      fc.constantFrom({ date: '2026-03-05', time: '18:30' }, { date: '2027-01-01', time: '06:05' }),
    ),
    room: maybe(fc.constantFrom('Loft', 'Long Room')),
    kit: maybe(fc.uniqueArray(fc.constantFrom(...kitItems), { maxLength: 4 })),
  })
  .map(compact) as fc.Arbitrary<PlanFacts>;

const plan: fc.Arbitrary<Plan> = fc
  .record({
    facts,
    blocks: fc.array(fc.oneof(roundsBlock, otherLettered, openBlock), { minLength: 1, maxLength: 4 }),
    time: maybe(timeBlock),
  })
  .map(({ facts: said, blocks, time }) => ({
    facts: said,
    blocks:
      time === undefined || blocks.length < 2 ? blocks : [...blocks.slice(0, 1), time, ...blocks.slice(1)],
  }));

const blockStart = /^(?:circuit|emom|tabata|ladder|warm-up)/;

/** Composed words that draw near the language, and any other text. */
const draft = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 400 }),
  fc
    .array(
      fc.constantFrom(
        ...[
          'circuit',
          'x3',
          '40/20',
          '\n',
          'goblet squat',
          '+',
          ',',
          '(',
          ')',
          '"',
          '?',
          'rest 60',
          'each round',
          ':',
        ],
        ...[
          'emom 10',
          'tabata',
          '-',
          'A1',
          '10',
          'say:',
          'kit:',
          'by round',
          'work',
          'between',
          ';',
          'ladder 1 to',
          '99999999999',
        ],
        ...[
          'warm-up',
          '6:00',
          'and',
          '/',
          'easier',
          'tempo',
          '3-1-1',
          '@',
          'each side',
          '&amp;',
          '\r\n',
          '\u00a0',
          '💪',
          'Thu 18:30',
        ],
      ),
      { maxLength: 60 },
    )
    .map(
      (parts) => `T, 45 min\n${parts.map((part) => (blockStart.test(part) ? `\n${part}` : part)).join(' ')}`,
    ),
);

describe('laws of the shorthand', () => {
  test('reading what was printed gives the same plan, without a problem', () => {
    fc.assert(
      fc.property(plan, (each) => {
        const printed = printPlan(each);
        const again = readPlan(printed, context);
        expect(again.problems.filter(({ code }) => code !== 'out-of-range')).toEqual([]);
        expect(again.plan && samePlan(again.plan, each) ? 'same' : printed).toBe('same');
      }),
      { numRuns: 150 },
    );
  });

  test('whatever is read prints to a form that reads the same, and is its own print', () => {
    fc.assert(
      fc.property(draft, (text) => {
        const first = readPlan(text, context).plan;
        if (first === undefined) return;
        const printed = printPlan(first);
        const again = readPlan(printed, context);
        expect(again.problems.map(({ code }) => code)).toEqual([]);
        expect(again.plan && printPlan(again.plan)).toBe(printed);
        expect(again.plan && samePlan(again.plan, first)).toBe(true);
      }),
      { numRuns: 1_500 },
    );
  });

  test('hostile text of up to 100 KB is answered, fast, with spans inside the draft', () => {
    const huge = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 100_000, minLength: 50_000 }),
      fc
        .constantFrom(
          '(',
          '+ ',
          'a\n',
          '?\n',
          '"',
          '&',
          'circuit x3, 40/20\n',
          '1 ',
          ', ',
          '- - ',
          'squat and ',
        )
        .map((part) => part.repeat(Math.floor(100_000 / part.length))),
      draft,
    );
    fc.assert(
      fc.property(huge, fc.constantFrom(100_000, 8_000), (text, most) => {
        const started = performance.now();
        const { problems } = readPlan(text.slice(0, most), context);
        const took = performance.now() - started;
        for (const { span, line } of problems) {
          expect(span.start).toBeLessThanOrEqual(span.end);
          expect(span.end).toBeLessThanOrEqual(text.length);
          expect(line).toBeGreaterThan(0);
        }
        expect(took).toBeLessThan(2_000);
      }),
      { numRuns: 40 },
    );
  });

  test('an edit never changes the plan it is made on, and leaves a plan that reads the same', () => {
    const base = readPlan(
      'Class, 45 min\nwarm-up 6:00: march\ncircuit x3, 40/20\ngoblet squat\npush-up + plank\nreverse lunge\nrest 60\nemom 6\n8 burpee\n? core 10 reps\nfinisher, 60/0\nsquat jump\ncool-down to the end',
      context,
    ).plan;
    if (base === undefined) throw new Error('the class must read');
    const before = JSON.stringify(base);
    const label = fc.constantFrom('A', 'B', 'B1', 'B2', 'C', 'D', 'E', 'F', 'G');
    const line = fc.oneof(
      fc.tuple(fc.constantFrom('drop', 'easier', 'harder'), label).map((parts) => parts.join(' ')),
      fc
        .tuple(fc.constantFrom('swap', 'move'), label, fc.constantFrom('with', 'before', 'after'), label)
        .map((parts) => parts.join(' ')),
      fc
        .tuple(
          fc.constantFrom('work', 'rest', 'rounds', 'rest after', 'between rounds'),
          label,
          fc.integer({ min: 0, max: 90 }),
        )
        .map((parts) => parts.join(' ')),
      fc
        .tuple(fc.constant('swap'), label, fc.constantFrom('front squat', 'side plank', 'dead bug heavy'))
        .map((parts) => parts.join(' ')),
      fc
        .tuple(
          fc.constant('add'),
          fc.constantFrom('side plank 30s', 'amrap 6', 'rest 30'),
          fc.constantFrom('after', 'before'),
          label,
        )
        .map((parts) => parts.join(' ')),
      fc.constantFrom(
        'cut finisher',
        'warm-up 7:00',
        'cool-down 5:00',
        '18 now',
        'slot 50',
        'title Ember',
        'kit: mats',
        'level 3',
      ),
    );
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 4 }), (lines) => {
        const { plan: edited, problems, changes } = editPlan(base, lines.join('\n'), context);
        expect(JSON.stringify(base)).toBe(before);
        expect(edited === undefined).toBe(problems.length > 0);
        expect(edited === undefined ? changes : []).toEqual([]);
        if (edited === undefined) return;
        const again = readPlan(printPlan(edited), context);
        expect(again.problems).toEqual([]);
        expect(again.plan && samePlan(again.plan, edited)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
});

test('a class in everyday words, once read, prints in a form that reads the same and assumes nothing of its heads', () => {
  const head = fc.constantFrom(
    'superset x3 40/20',
    'super sets x3, 10 reps',
    'tri-set x2, 30/30',
    'giant set x2 30/60',
    'E2MOM x5',
    'e3mom 9',
    'every 2 min for 10 min',
    'every 2 x5',
    '21 15 9',
    '21-15-9, in 6:00',
    '10 to 1',
    'for time 10-8-6, cap 8:00',
    'straight sets x4, 10 reps',
    'emom x5 2:00',
    '40 20',
  );
  const line = fc.constantFrom(
    '8 push-up',
    'goblet squat',
    'plank 30s',
    'plank + dead bug',
    'side plank',
    'xqzv',
    'rest 60',
  );
  const section = fc.record({ head, lines: fc.array(line, { maxLength: 6 }) });
  let read = 0;
  fc.assert(
    fc.property(fc.array(section, { minLength: 1, maxLength: 4 }), (sections) => {
      const text = ['Any class, 90 min', ...sections.flatMap(({ head, lines }) => [head, ...lines])].join(
        '\n',
      );
      const first = readPlan(text, context);
      if (first.plan === undefined || first.problems.length > 0) return;
      read += 1;
      const again = readPlan(printPlan(first.plan, catalogue), context);
      expect(again.problems).toEqual([]);
      expect(again.plan !== undefined && samePlan(first.plan, again.plan)).toBe(true);
      expect(again.notes.filter(({ code }) => code === 'read-as' || code === 'joined')).toEqual([]);
    }),
    { numRuns: 400 },
  );
  expect(read).toBeGreaterThan(10);
});
