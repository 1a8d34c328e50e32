import fc from 'fast-check';
import { expect, test } from 'vitest';
import { learnFactor } from '../../../domain/timing/learn-factor.ts';

const at = '2026-11-23T12:00:00.000Z';
const said = (over: number, short: number, onTime: number) => [
  ...Array.from({ length: over }, () => 'over' as const),
  ...Array.from({ length: short }, () => 'short' as const),
  ...Array.from({ length: onTime }, () => 'on time' as const),
];

test.each([
  ['four classes are too few', said(4, 0, 0), 1, undefined],
  ['five that ran over', said(5, 0, 0), 1, 1.05],
  ['two of five', said(2, 0, 3), 1, 1.05],
  ['one of five', said(1, 0, 4), 1, undefined],
  ['of two minds', said(3, 3, 0), 1, undefined],
  ['five that ended short', said(0, 5, 0), 1, 0.95],
  ['on time', said(0, 0, 9), 1.1, undefined],
  ['at the upper bound', said(9, 0, 0), 1.3, undefined],
  ['at the lower bound', said(0, 9, 0), 0.8, undefined],
])('%s', (_, lengths, from, to) => {
  const move = learnFactor(lengths, from, at);
  expect(move?.to).toBe(to);
  if (move !== undefined)
    expect(move).toMatchObject({
      at,
      from,
      classes: lengths.length,
      over: lengths.filter((each) => each === 'over').length,
    });
});

test('a law: one small step at most, within the bounds, towards what was said', () => {
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('over' as const, 'short' as const, 'on time' as const), { maxLength: 40 }),
      fc.integer({ min: 80, max: 130 }),
      (lengths, hundredths) => {
        const from = hundredths / 100;
        const move = learnFactor(lengths, from, at);
        if (move === undefined) return;
        expect(lengths.length).toBeGreaterThanOrEqual(5);
        expect(Math.abs(move.to - from)).toBeCloseTo(0.05, 6);
        expect(move.to).toBeGreaterThanOrEqual(0.8);
        expect(move.to).toBeLessThanOrEqual(1.3);
        expect(Math.sign(move.to - from)).toBe(Math.sign(move.over - move.short));
      },
    ),
  );
});
