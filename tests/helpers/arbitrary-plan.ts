import fc from 'fast-check';
import type { Block, Letter, Plan, PlannedMove } from '../../domain/plan/plan.ts';
import { amrap, emom, ladder, letter, move, on, open, plan, rounds, tabata, time } from './plan-builder.ts';

/** Plans of any shape over the moves given, for laws; ids are unique over the plan. */
export const arbitraryPlan = (moveIds: readonly string[]): fc.Arbitrary<Plan> => {
  const seconds = fc.integer({ min: 1, max: 90 });
  const planned: fc.Arbitrary<PlannedMove> = fc
    .record({
      id: fc.constantFrom(...moveIds),
      sides: fc.constantFrom('both', 'each side', 'split sides', 'alternating', 'right', 'left'),
      reps: fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined }),
      own: fc.option(seconds, { nil: undefined, freq: 5 }),
    })
    .map(({ id, sides, reps, own }) =>
      move(id, {
        sides,
        ...(reps === undefined ? {} : { reps }),
        ...(own === undefined ? {} : { workSeconds: own }),
      }),
    );
  const line: fc.Arbitrary<Letter> = fc
    .record({
      moves: fc.array(planned, { minLength: 1, maxLength: 4 }),
      order: fc.constantFrom('in turn' as const, 'in turn' as const, 'by round' as const),
      wholeSetEachSide: fc.boolean(),
      rest: fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined, freq: 5 }),
    })
    .map(({ moves, order, wholeSetEachSide, rest }) =>
      letter(moves, { order, wholeSetEachSide, ...(rest === undefined ? {} : { restSeconds: rest }) }),
    );
  const lines = fc.array(line, { minLength: 1, maxLength: 4 });
  const count = fc.integer({ min: 1, max: 5 });
  const interval = fc.tuple(seconds, fc.integer({ min: 0, max: 60 })).map(([work, rest]) => on(work, rest));
  const some = fc.option(fc.integer({ min: 0, max: 120 }), { nil: undefined });
  const block: fc.Arbitrary<Block> = fc.oneof(
    fc
      .record({
        kind: fc.constantFrom('circuit', 'straight', 'stations', 'finisher'),
        count,
        interval,
        lines,
        between: some,
        pairs: fc.constantFrom(undefined, undefined, 'swap' as const, 'one rests' as const),
        countIn: fc.constantFrom(0, 5),
      })
      .map(({ kind, count: times, interval: each, lines: ls, between, pairs, countIn }) =>
        rounds(kind, times, each, ls, {
          countInSeconds: countIn,
          ...(between === undefined
            ? {}
            : kind === 'straight'
              ? { betweenLettersSeconds: between }
              : { betweenRoundsSeconds: between }),
          ...(pairs === undefined ? {} : { pairs }),
        }),
      ),
    fc
      .tuple(count, lines, fc.option(seconds, { nil: undefined }))
      .map(([times, ls, work]) => emom(times, ls, work === undefined ? {} : { workSeconds: work })),
    fc
      .tuple(count, lines, some)
      .map(([times, ls, between]) =>
        tabata(times, ls, between === undefined ? {} : { betweenSeconds: between }),
      ),
    fc
      .tuple(fc.integer({ min: 60, max: 900 }), lines, fc.constantFrom('amrap', 'for time'))
      .map(([length, ls, kind]) => amrap(length, ls, { kind })),
    fc
      .tuple(fc.array(fc.integer({ min: 1, max: 21 }), { minLength: 1, maxLength: 10 }), lines)
      .map(([rungs, ls]) => ladder(rungs, ls)),
    fc
      .tuple(fc.constantFrom('warm-up', 'mobility', 'song', 'cool-down'), fc.integer({ min: 60, max: 600 }))
      .map(([kind, length]) => open(kind, length)),
    fc
      .tuple(fc.constantFrom('rest', 'water', 'explain', 'set-up'), fc.integer({ min: 1, max: 120 }))
      .map(([kind, length]) => time(kind, length)),
  );
  return fc.array(block, { minLength: 1, maxLength: 6 }).map((blocks) => plan(blocks.map(withOwnIds)));
};

const withOwnIds = (block: Block, index: number): Block => {
  const id = `block ${index}`;
  if (!('letters' in block)) return { ...block, id };
  const own = block.letters.map((line, place) => ({
    ...line,
    id: `${id} letter ${place}`,
    moves: line.moves.map((planned, turn) => ({ ...planned, id: `${id} letter ${place} move ${turn}` })),
  }));
  return { ...block, id, letters: own };
};
