import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { slipPlace } from '../../../domain/catalogue/name-slip.ts';

describe('one slip', () => {
  test.each([
    ['gobet', 'goblet', 3],
    ['oblet', 'goblet', 0],
    ['goble', 'goblet', 5],
    ['gobblet', 'goblet', 2],
    ['goblett', 'goblet', 5],
    ['gohlet', 'goblet', 2],
    ['boglet', 'goglet', 0],
    ['gobelt', 'goblet', 3],
    ['ogblet', 'goblet', 0],
  ])('%s for %s is at %i', (typed, wanted, place) => {
    expect(slipPlace(typed, wanted)).toBe(place);
  });

  test.each([
    ['goblet', 'goblet'],
    ['goxblet', 'goblet'],
    ['xgoblet', 'goblet'],
    ['gbolte', 'goblet'],
    ['gob', 'goblet'],
    ['', 'goblet'],
    ['goblet squat', 'goblet'],
  ])('%s for %s is none', (typed, wanted) => {
    expect(slipPlace(typed, wanted)).toBeUndefined();
  });

  const word = fc.stringMatching(/^[a-z]{5,12}$/);
  const wordAndPlace = word.chain((wanted) => fc.tuple(fc.constant(wanted), fc.nat(wanted.length - 2)));

  test('missing, doubled and swapped characters are always seen', () => {
    fc.assert(
      fc.property(wordAndPlace, ([wanted, at]) => {
        const missing = wanted.slice(0, at) + wanted.slice(at + 1);
        const doubled = wanted.slice(0, at + 1) + wanted.slice(at);
        const swapped = wanted.slice(0, at) + wanted[at + 1] + wanted[at] + wanted.slice(at + 2);
        return [missing, doubled, swapped].every(
          (typed) => typed === wanted || slipPlace(typed, wanted) !== undefined,
        );
      }),
    );
  });
});
