import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { checkPlan } from '../../../domain/checks/check-plan.ts';
import { labelsByLine } from '../../../domain/plan/labels.ts';
import { arbitraryPlan } from '../../helpers/arbitrary-plan.ts';
import { goodToKnowCases } from './good-to-know-cases.ts';
import { lookAtCases } from './look-at-cases.ts';
import { mustFixCases } from './must-fix-cases.ts';
import { contextWith, planOf, subjectOf } from './subject-of.ts';

const troubled = `Trouble, 30 min, beginners, 18 people, Loft
warm-up 3:00: march
stations x2, 45/10
kettlebell swing
dead bug
reverse lunge right
amrap 14
10 push-up
10 goblet squat
cool-down 2:00`;

const codesIn = (text: string, dismissed: readonly string[] = []): readonly string[] => {
  const context = contextWith({ dismissed: new Set(dismissed) });
  return checkPlan(subjectOf(planOf(text, context), context), context).map(({ code }) => code);
};

describe('checkPlan', () => {
  test('tells must fix first, then look at, then good to know, the worst first in each', () => {
    expect(codesIn(troubled)).toEqual([
      'lying-beside-throw',
      'over-room-capacity',
      'kit-short',
      'sides-unequal',
      'all-out-too-long',
      'short-warm-up',
      'short-cool-down',
      'above-level',
      'floor-crowded',
      'time-unused',
      'no-time-to-wipe',
    ]);
  });

  test('leaves out what was dismissed', () => {
    const all = codesIn(troubled);
    const left = codesIn(troubled, ['over-room-capacity', 'above-level']);
    expect(all).toContain('above-level');
    expect(left).toEqual(all.filter((code) => code !== 'over-room-capacity' && code !== 'above-level'));
  });

  test('runs each check that has a case', () => {
    const cases = [...mustFixCases, ...lookAtCases, ...goodToKnowCases];
    const missing = cases.filter(({ bad, facts, finding }) => {
      const context = contextWith(facts);
      const found = checkPlan(subjectOf(planOf(bad, context), context), context);
      return !found.some(({ code }) => code === finding.code);
    });
    expect(missing.map(({ finding }) => finding.code)).toEqual([]);
    expect(new Set(cases.map(({ finding }) => finding.code)).size).toBe(42);
  });

  test('of any plan: never throws, keeps the order, and points at lines that are there', () => {
    const order = ['must fix', 'look at', 'good to know'];
    const context = contextWith();
    const ids = catalogue.moves.map(({ id }) => id);
    fc.assert(
      fc.property(arbitraryPlan(ids), (plan) => {
        const findings = checkPlan(subjectOf(plan, context), context);
        const ranks = findings.map(({ severity }) => order.indexOf(severity));
        expect(ranks).toEqual(ranks.toSorted((one, other) => one - other));
        const known = new Set([...labelsByLine(plan).keys(), ...plan.blocks.map(({ id }) => id)]);
        expect(findings.flatMap(({ lines }) => lines).filter((line) => !known.has(line))).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});
