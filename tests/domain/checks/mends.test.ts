import { expect, test } from 'vitest';
import { editPlan } from '../../../domain/shorthand/edit-plan.ts';
import { goodToKnowCases } from './good-to-know-cases.ts';
import { lookAtCases } from './look-at-cases.ts';
import { mustFixCases } from './must-fix-cases.ts';
import { contextWith, planOf, subjectOf, withLabels } from './subject-of.ts';

const cases = [...mustFixCases, ...lookAtCases, ...goodToKnowCases].filter(
  ({ finding }) => 'mend' in finding,
);

test.each(cases)('the mend of $finding.code removes it: $bad', ({ check, bad, facts }) => {
  const context = contextWith(facts);
  const plan = planOf(bad, context);
  const mend = check(subjectOf(plan, context), context)[0]?.mend;
  const { plan: mended, problems } = editPlan(plan, mend ?? '', context);
  expect({ mend, problems }).toEqual({ mend: expect.any(String), problems: [] });
  expect(
    mended && check(subjectOf(mended, context), context).map((finding) => withLabels(finding, mended)),
  ).toEqual([]);
});
