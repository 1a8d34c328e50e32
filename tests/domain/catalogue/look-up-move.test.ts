import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { extendCatalogue } from '../../../domain/catalogue/extend-catalogue.ts';
import { lookUpMove, type MoveLookUp } from '../../../domain/catalogue/look-up-move.ts';
import type { Move } from '../../../domain/catalogue/move.ts';
import { nearNames } from '../../../domain/catalogue/near-names.ts';
import { sharedSpellings, spellings, unknownSpellings } from './spellings.ts';

const lookUp = (words: string): MoveLookUp => lookUpMove(words, catalogue);

const toldAs = (found: MoveLookUp): unknown => {
  switch (found.kind) {
    case 'found':
      return found.move.id;
    case 'choices':
      return found.moves.map((move) => move.id);
    case 'unknown':
      return { near: found.near.map((move) => move.id) };
  }
};

const cases = spellings.flatMap(([id, typed]) => typed.map((words) => [words, id] as const));

describe('spellings as people type them', () => {
  test('are at least 300', () => {
    expect(new Set(cases.map(([words]) => words)).size).toBeGreaterThanOrEqual(300);
  });

  test.each(cases)('%s is %s', (words, id) => {
    expect(toldAs(lookUp(words))).toBe(id);
  });

  test.each(sharedSpellings)('%s is asked', (words, ids) => {
    expect(toldAs(lookUp(words))).toEqual(ids);
  });

  test.each(unknownSpellings)('%s is unknown, likeliest %s', (words, id) => {
    const found = lookUp(words);
    expect(found.kind).toBe('unknown');
    expect(nearNames(words, catalogue).map((move) => move.id)[0]).toBe(id);
    expect(found.kind === 'unknown' && found.near.length <= 3).toBe(true);
  });
});

describe('what was forgiven', () => {
  test.each([
    ['Goblet Squats', 'name', 'goblet squat'],
    ['pushup', 'name', 'push-up'],
    ['thrusters', 'nickname', 'thruster'],
    ['row bent over', 'word order', 'bent-over row'],
    ['gobelt squat', 'slip', 'goblet squat'],
    ['thrustr', 'slip', 'thruster'],
    ['squat gobelt', 'slip', 'goblet squat'],
    ['db gobelt squat', 'slip', 'goblet squat'],
    ['kettlebell goblet squat', 'nickname', 'goblet squat'],
  ])('%s: %s, read as %s', (words, how, readAs) => {
    expect(lookUp(words)).toMatchObject({ kind: 'found', how, readAs });
  });
});

describe('slips', () => {
  test.each([
    ['a character missing', 'superan', 'superman'],
    ['a character doubled', 'superrman', 'superman'],
    ['a character wrong', 'supernan', 'superman'],
    ['neighbours swapped', 'suepr man', 'superman'],
  ])('%s is forgiven', (_, words, id) => {
    expect(lookUp(words)).toMatchObject({ kind: 'found', how: 'slip', move: { id } });
  });

  test.each([
    ['two slips', 'spuermna'],
    ['a strange character put in', 'supxerman'],
    ['a slip in a word of four letters', 'crab wilk'],
    ['one slip in each of two words', 'gobelt sqaut'],
  ])('%s is not', (_, words) => {
    expect(lookUp(words).kind).toBe('unknown');
  });

  test('is not guessed where two moves are near', () => {
    const base = catalogue.moves[0];
    if (base === undefined) throw new Error('the catalogue is empty');
    const own = (name: string, id: string): Move => ({ ...base, id, name, nicknames: [] });
    const extended = extendCatalogue(
      catalogue,
      [own('zircon', 'zircon'), own('zirkon', 'zirkon')],
      new Map(),
    );
    expect(lookUpMove('zirpon', extended)).toEqual({ kind: 'unknown', near: nearNames('zirpon', extended) });
    expect(nearNames('zirpon', extended, 2).map((move) => move.id)).toEqual(['zircon', 'zirkon']);
  });
});

describe('names in the catalogue', () => {
  const written = catalogue.moves.flatMap((move) =>
    [move.name, ...move.nicknames].map((name) => ({ id: move.id, name })),
  );

  test('are each found as written, shouted, hyphenated and run together', () => {
    const lost = written.flatMap(({ id, name }) => {
      const ways = [
        name,
        name.toUpperCase(),
        name.replaceAll(' ', '-'),
        `  ${name} `,
        name.replaceAll('-', ' '),
      ];
      return ways.filter((way) => toldAs(lookUp(way)) !== id);
    });
    expect(lost).toEqual([]);
  });

  test('canonical names are found in the plural and in reversed word order', () => {
    const lost = catalogue.moves.flatMap((move) => {
      const reversed = move.name.split(' ').reverse().join(' ');
      const plural = /s$/.test(move.name) ? move.name : `${move.name}s`;
      return [reversed, plural].filter((way) => toldAs(lookUp(way)) !== move.id);
    });
    expect(lost).toEqual([]);
  });
});

describe('a studio’s own names', () => {
  const base = catalogue.byId.get('goblet-squat');
  if (base === undefined) throw new Error('no goblet squat');
  const ownMove: Move = {
    ...base,
    id: 'lighthouse-turn',
    name: 'lighthouse turn',
    nicknames: ['lighthouse'],
  };
  const extended = extendCatalogue(
    catalogue,
    [ownMove],
    new Map([
      ['the grinder', 'burpee'],
      ['press', 'push-press'],
      ['lost one', 'no-such-move'],
    ]),
  );

  test.each([
    ['Lighthouse turns', 'lighthouse-turn'],
    ['turn lighthouse', 'lighthouse-turn'],
    ['ligthhouse', 'lighthouse-turn'],
    ['the grinder', 'burpee'],
    ['grnider', 'burpee'],
    ['press', 'push-press'],
    ['goblet squat', 'goblet-squat'],
  ])('%s is %s', (words, id) => {
    expect(toldAs(lookUpMove(words, extended))).toBe(id);
  });

  test('leave the catalogue they extend as it is', () => {
    expect(lookUp('lighthouse turn').kind).toBe('unknown');
    expect(toldAs(lookUp('press'))).toHaveLength(3);
    expect(extended.moves.length).toBe(catalogue.moves.length + 1);
    expect(extended.edition).toBe(catalogue.edition);
  });

  test('that point at no known move are not read', () => {
    expect(lookUpMove('lost one', extended).kind).toBe('unknown');
  });
});

describe('hostile text', () => {
  test.each(['', '   ', '🙂🙂', '///', '—', '\u0000', 'ß', 'a'.repeat(100_000), 'up '.repeat(20_000)])(
    'is unknown: %#',
    (words) => {
      expect(lookUp(words)).toMatchObject({ kind: 'unknown' });
    },
  );

  test('never throws and never names more than three near moves', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120, unit: 'grapheme' }), (words) => {
        const found = lookUp(words);
        return found.kind !== 'unknown' || found.near.length <= 3;
      }),
    );
  });
});
