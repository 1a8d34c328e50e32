import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { extendCatalogue } from '../../../domain/catalogue/extend-catalogue.ts';
import { lookUpMove } from '../../../domain/catalogue/look-up-move.ts';
import { changeOwnMove, makeOwnMove } from '../../../domain/catalogue/make-own-move.ts';
import type { Move } from '../../../domain/catalogue/move.ts';
import { moveProblems } from '../../../domain/catalogue/move-problems.ts';
import { readMoveFacts } from '../../../domain/catalogue/read-move-facts.ts';
import { reportOnClass } from '../../../domain/class-report.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import { readMoveOrder } from '../../../domain/shorthand/read-move-order.ts';
import { readsAsMove } from '../../../domain/shorthand/reads-as-move.ts';

const known = (id: string): Move => {
  const move = catalogue.byId.get(id);
  if (move === undefined) throw new Error(`No such move: ${id}`);
  return move;
};

const withOwn = (...moves: readonly Move[]) => extendCatalogue(catalogue, moves, new Map());
const codesOf = (move: Move) => moveProblems(move, catalogue).map(({ code }) => code);

test('every move of the catalogue keeps its laws', () => {
  const broken = catalogue.moves.flatMap((move) =>
    moveProblems(move, catalogue).map(({ code }) => [move.id, code]),
  );
  expect(broken).toEqual([]);
});

describe('a move of the studio’s own', () => {
  test('has the facts of the one it works like, but for what is said', () => {
    const move = makeOwnMove('yard crawl', known('bear-crawl'), { level: 3, assisting: ['triceps'] });
    expect(move).toMatchObject({
      id: 'yard-crawl',
      name: 'yard crawl',
      nicknames: [],
      level: 3,
      easier: 'bear-crawl',
      assisting: ['triceps'],
      primeMovers: known('bear-crawl').primeMovers,
      source: 'common practice',
    });
    expect(codesOf(move)).toEqual([]);
  });

  test('as a jump it lands hard and says so', () => {
    const move = makeOwnMove('yard leap', known('bodyweight-squat'), { pattern: 'jump' });
    expect(move.traits).toContain('impact');
    expect(move.cautions).toContain('land softly');
  });

  test('a prime mover assists no more', () => {
    const row = known('bent-over-row');
    const move = makeOwnMove('yard row', row, { primeMovers: [...row.assisting.slice(0, 1)] });
    expect(codesOf(move)).toEqual([]);
  });

  test('changed, it keeps its id and name', () => {
    const move = makeOwnMove('yard crawl', known('bear-crawl'), {});
    expect(changeOwnMove(move, { level: 1 })).toEqual({ ...move, level: 1 });
  });

  const base = makeOwnMove('yard crawl', known('plank'), {});
  test.each<[string, Move, Move['id'][] | readonly string[]]>([
    ['a number in its name', { ...base, name: 'crawl 45', id: 'crawl-45' }, ['name-unusable']],
    [
      'a word the reader takes for a mark',
      { ...base, name: 'heavy crawl', id: 'heavy-crawl' },
      ['name-holds-a-mark'],
    ],
    ['a name that is taken', { ...base, name: 'Push ups', id: 'push-ups' }, ['name-taken']],
    ['a nickname that is taken', { ...base, nicknames: ['press up'] }, ['name-taken']],
    ['no prime mover', { ...base, primeMovers: [] }, ['no-prime-mover']],
    ['a muscle twice', { ...base, primeMovers: ['chest'], assisting: ['chest'] }, ['muscle-twice']],
    ['a repetition that never ends', { ...base, tempo: { ...base.tempo, lowerSeconds: 9 } }, ['rep-length']],
    ['five dumbbells', { ...base, kit: [{ item: 'dumbbell', pieces: 5 }] }, ['kit-pieces']],
    [
      'mobility that counts reps',
      { ...base, pattern: 'mobility', effort: 'reps' },
      ['mobility-is-effort-too'],
    ],
    ['one side of one side', { ...base, sides: 'one-sided', oneSideAtATime: true }, ['one-side-of-one-side']],
    ['a cue without an end', { ...base, cue: 'go' }, ['cue-length']],
    ['an option nobody knows', { ...base, easier: 'nowhere' }, ['option-unknown']],
    ['an easier option that is harder', { ...base, level: 1, easier: 'pull-up' }, ['easier-is-harder']],
    [
      'a harder option that is easier',
      { ...base, level: 3, easier: 'plank', harder: 'plank' },
      ['harder-is-easier', 'options-in-a-circle'],
    ],
    ['itself as easier option', { ...base, easier: 'yard-crawl' }, ['options-in-a-circle']],
  ])('is refused with %s', (_, move, codes) => {
    expect(codesOf(move)).toEqual(codes);
  });

  test('above level 1 without an easier option it is refused', () => {
    const { easier: _, ...alone } = base;
    expect(codesOf({ ...alone, level: 2 })).toEqual(['easier-missing']);
  });
});

describe('retired', () => {
  const crawl: Move = { ...makeOwnMove('yard crawl', known('bear-crawl'), {}), retired: true };
  const at = withOwn(crawl);
  const settings: Settings = { ...defaultSettings, ownMoves: [crawl] };

  test('it is read by its whole name, and never near another', () => {
    expect(lookUpMove('yard crawls', at)).toMatchObject({ kind: 'found', move: { id: 'yard-crawl' } });
    const near = lookUpMove('yard crawling', at);
    expect(near.kind === 'unknown' && near.near.map(({ id }) => id).includes('yard-crawl')).toBe(false);
    expect(at.moves).not.toContain(crawl);
  });

  test('a class with it is timed and counted as before, and says so', () => {
    const text =
      'Try, 30 min\nwarm-up 6:00\ncircuit x2, 40/20\nyard crawl\ngoblet squat\ncool-down to the end';
    const report = reportOnClass(text, { catalogue: at, settings, now: '2026-10-14T08:00:00.000Z' });
    expect(report.kind).toBe('report');
    expect(report.notes).toContainEqual(
      expect.objectContaining({ code: 'retired-move', move: 'yard crawl' }),
    );
  });
});

describe('short messages', () => {
  test.each([
    [
      'new move yard crawl like bear crawl',
      { kind: 'new', name: 'yard crawl', like: 'bear crawl', facts: '' },
    ],
    [
      'New move: yard crawl, like bear crawl, level 3, no kit',
      { kind: 'new', name: 'yard crawl', like: 'bear crawl', facts: 'level 3, no kit' },
    ],
    ['new move yard crawl', { kind: 'new, like what?', name: 'yard crawl' }],
    ['change move yard crawl: level 2', { kind: 'change', name: 'yard crawl', facts: 'level 2' }],
    ['retire move yard crawl', { kind: 'retire', name: 'yard crawl' }],
    ['bring back move yard crawl', { kind: 'bring back', name: 'yard crawl' }],
    ['nickname yardie = goblet squat', { kind: 'nickname', nickname: 'yardie', name: 'goblet squat' }],
    ['nickname yardie for goblet squat', { kind: 'nickname', nickname: 'yardie', name: 'goblet squat' }],
    ['drop nickname yardie', { kind: 'drop nickname', nickname: 'yardie' }],
    ['our moves', { kind: 'list' }],
  ])('%s', (text, order) => {
    expect(readMoveOrder(text)).toEqual(order);
  });

  test.each(['Row & Squat, 40 min', 'move C before A', 'new move a like b\ncircuit x3', 'hello'])(
    'a message about something else is no order: %s',
    (text) => {
      expect(readMoveOrder(text)).toBeUndefined();
    },
  );

  test('facts in any order; what says none is named', () => {
    const text =
      'level 2, Kneeling, each side, chest + triceps, assists lats and biceps, two dumbbells, mat, easier knee push-up, also Yardie, anti-rotation, hold, cue Hips low, sparkling';
    expect(readMoveFacts(text, catalogue)).toEqual({
      facts: {
        level: 2,
        position: 'kneeling',
        sides: 'one-sided',
        primeMovers: ['chest', 'triceps'],
        assisting: ['lats', 'biceps'],
        kit: [
          { item: 'dumbbell', pieces: 2 },
          { item: 'mat', pieces: 1 },
        ],
        easier: 'knee-push-up',
        nicknames: ['Yardie'],
        pattern: 'anti-rotation',
        effort: 'hold',
        cue: 'Hips low.',
      },
      unread: ['sparkling'],
    });
  });

  test('a name that the reader would take for something else is told', () => {
    const context = { settings: defaultSettings, now: '2026-10-14T08:00:00.000Z' };
    const own = makeOwnMove('yard crawl', known('bear-crawl'), {});
    expect(readsAsMove('yard crawl', own, { ...context, catalogue: withOwn(own) })).toBe(true);
    const water = makeOwnMove('water', known('bear-crawl'), {});
    expect(readsAsMove('water', water, { ...context, catalogue: withOwn(water) })).toBe(false);
  });
});
