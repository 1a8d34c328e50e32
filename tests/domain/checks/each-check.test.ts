import { describe, expect, test } from 'vitest';
import type { CheckCase } from './check-cases.ts';
import { goodToKnowCases } from './good-to-know-cases.ts';
import { lookAtCases } from './look-at-cases.ts';
import { mustFixCases } from './must-fix-cases.ts';
import { findingsIn } from './subject-of.ts';

const cases: readonly CheckCase[] = [...mustFixCases, ...lookAtCases, ...goodToKnowCases];

describe('each check alone', () => {
  test.each(cases)('$finding.code is found, whole', ({ check, bad, finding, facts }) => {
    expect(findingsIn(bad, check, facts)).toEqual([finding]);
  });

  test.each(
    cases.flatMap(({ check, near, nearFacts, finding }) =>
      near.map((text) => ({ code: finding.code, check, text, nearFacts })),
    ),
  )('$code is not found in: $text', ({ check, text, nearFacts }) => {
    expect(findingsIn(text, check, nearFacts)).toEqual([]);
  });
});
