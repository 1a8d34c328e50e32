import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPlan } from '../../../domain/checks/check-plan.ts';
import type { Plan } from '../../../domain/plan/plan.ts';
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

const moves = [
  'goblet squat',
  'reverse lunge right',
  'reverse lunge',
  'push-up',
  'dumbbell floor press',
  'bent-over row heavy',
  'Romanian deadlift heavy',
  'kettlebell deadlift',
  'kettlebell swing',
  'squat jump',
  'burpee',
  'dead bug',
  'glute bridge',
  'plank',
  'mountain climber',
  'side plank',
  'dumbbell shoulder press light',
  'biceps curl',
];

const letterText = fc
  .array(fc.constantFrom(...moves), { minLength: 1, maxLength: 2 })
  .map((line) => line.join(' + '));
const blockText = fc
  .record({
    head: fc.constantFrom(
      'circuit x3, 40/20',
      'circuit x2, 30/0',
      'straight x3, 45/15',
      'stations x2, 40/20',
      'amrap 8',
      'tabata',
      'finisher, 40/0',
    ),
    letters: fc.array(letterText, { minLength: 1, maxLength: 5 }),
  })
  .map(({ head, letters }) => [head, ...letters].join('\n'));
const classText = fc
  .record({
    facts: fc.constantFrom(
      '30 min, beginners, 12 people, Loft',
      '45 min, level 2, 16 people, Loft',
      '60 min, level 3',
    ),
    start: fc.constantFrom('warm-up 6:00', 'warm-up 3:00', 'explain 30'),
    blocks: fc.array(blockText, { minLength: 1, maxLength: 3 }),
    end: fc.constantFrom('cool-down to the end', 'cool-down 3:00'),
  })
  .map(({ facts, start, blocks, end }) => [`Any class, ${facts}`, start, ...blocks, end].join('\n'));

test('in any class, a mend reads as an edit and leaves one finding of its kind less', () => {
  const context = contextWith();
  const codesOf = (plan: Plan): readonly string[] =>
    checkPlan(subjectOf(plan, context), context).map(({ code }) => code);
  const countOf = (code: string, plan: Plan): number => codesOf(plan).filter((one) => one === code).length;
  fc.assert(
    fc.property(classText, (text) => {
      const plan = planOf(text, context);
      for (const { code, mend } of checkPlan(subjectOf(plan, context), context)) {
        if (mend === undefined) continue;
        const edited = editPlan(plan, mend, context);
        expect({ mend, problems: edited.problems }).toEqual({ mend, problems: [] });
        const left = edited.plan === undefined ? Number.POSITIVE_INFINITY : countOf(code, edited.plan);
        expect({ mend, left }).toEqual({ mend, left: countOf(code, plan) - 1 });
      }
    }),
    { numRuns: 60, seed: 1 },
  );
}, 30_000);
