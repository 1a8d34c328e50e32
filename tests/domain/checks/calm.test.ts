import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkPlan, type Finding } from '../../../domain/checks/check-plan.ts';
import { contextWith, planOf, subjectOf } from './subject-of.ts';

/** Sensible classes of our own making, over all kinds of block, kit, level and length. */
const folder = new URL('./calm-classes/', import.meta.url);
const classes = readdirSync(folder).map((name) => ({
  name: name.replace('.txt', ''),
  text: readFileSync(new URL(name, folder), 'utf8'),
}));

const findingsIn = (text: string): readonly Finding[] => {
  const context = contextWith();
  return checkPlan(subjectOf(planOf(text, context), context), context);
};

describe('calm', () => {
  test('at least 40 classes, at most a quarter of them circuits with a finisher', () => {
    const withFinisher = classes.filter(({ text }) => /^circuit/m.test(text) && /^finisher/m.test(text));
    expect(classes.length).toBeGreaterThanOrEqual(40);
    expect(withFinisher.length).toBeLessThanOrEqual(classes.length / 4);
  });

  test.each(classes)('nothing must be fixed in $name', ({ text }) => {
    expect(findingsIn(text).filter(({ severity }) => severity === 'must fix')).toEqual([]);
  });

  test('at most two findings a class on average, and what they are', () => {
    const told = classes.flatMap(({ name, text }) => findingsIn(text).map(({ code }) => `${name}: ${code}`));
    expect(told.length / classes.length).toBeLessThanOrEqual(2);
    expect(told).toEqual([
      'bands-and-mat-40: bands-to-check',
      'for-time-45: out-of-step-throw',
      'stations-six-40: bands-to-check',
      'straps-full-body-45: bands-to-check',
    ]);
  });
});
