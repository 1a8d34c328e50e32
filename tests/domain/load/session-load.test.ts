import { expect, test } from 'vitest';
import { sessionLoad, weekStrain } from '../../../domain/load/session-load.ts';

test('RPE 7 × 60 min is 420', () => {
  expect(sessionLoad(7, 3600)).toBe(420);
});

test('Foster C et al. J Strength Cond Res 2001;15:109–15, table 5: load 3,400, monotony 1.26, strain 4,284', () => {
  // A reading of the table: which row is which day is inferred.
  expect(weekStrain([940, 50, 1120, 570, 50, 390, 280])).toEqual({
    load: 3400,
    monotony: 1.26,
    strain: 4284,
  });
});

test('zero SD has no monotony', () => {
  expect(weekStrain([300, 300, 300, 300, 300, 300, 300])).toEqual({ load: 2100 });
  expect(weekStrain([0, 0, 0, 0, 0, 0, 0])).toEqual({ load: 0 });
});
