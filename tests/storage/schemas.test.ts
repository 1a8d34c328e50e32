import { describe, expect, expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import type { Plan } from '../../domain/plan/plan.ts';
import { defaultSettings, type Settings } from '../../domain/settings.ts';
import { planSchema } from '../../storage/plan-schema.ts';
import { settingsSchema } from '../../storage/settings-schema.ts';
import { fullPlan, fullSettings } from './whole-values.ts';

/** The same shape without `readonly`, which zod does not say. */
type Plain<T> = T extends readonly (infer Item)[]
  ? Plain<Item>[]
  : T extends object
    ? { -readonly [Key in keyof T]: Plain<T[Key]> }
    : T;

describe('schemas stand in lock-step with the types', () => {
  test('plan', () => {
    expectTypeOf<Plain<z.output<typeof planSchema>>>().toEqualTypeOf<Plain<Plan>>();
    expect(planSchema.parse(structuredClone(fullPlan))).toEqual(fullPlan);
  });

  test('settings', () => {
    expectTypeOf<Plain<z.output<typeof settingsSchema>>>().toEqualTypeOf<Plain<Settings>>();
    expect(settingsSchema.parse(structuredClone(fullSettings))).toEqual(fullSettings);
  });

  test('a missing or an optional field is told apart', () => {
    type Short = Omit<Plan['facts'], 'aim'>;
    expectTypeOf<Plain<z.output<typeof planSchema>['facts']>>().not.toEqualTypeOf<Plain<Short>>();
    type Loose = Omit<Plan['facts'], 'aim'> & { readonly aim?: string | undefined };
    expectTypeOf<Plain<z.output<typeof planSchema>['facts']>>().not.toEqualTypeOf<Plain<Loose>>();
  });
});

describe('schemas refuse', () => {
  test.each([
    ['an unknown field', { ...fullPlan, other: 1 }],
    ['an unknown kind of block', { ...fullPlan, blocks: [{ kind: 'dance', id: 'b', seconds: 1 }] }],
    ['an undefined field', { ...fullPlan, facts: { ...fullPlan.facts, aim: undefined } }],
    ['nothing', undefined],
  ])('%s in a plan', (_, plan) => {
    expect(planSchema.safeParse(plan).success).toBe(false);
  });

  test.each([
    ['an unknown field', { ...defaultSettings, other: 1 }],
    ['an unknown limit', { ...defaultSettings, checks: { ...defaultSettings.checks, other: 1 } }],
    ['a limit that is text', { ...defaultSettings, dose: { ...defaultSettings.dose, low: '4' } }],
  ])('%s in settings', (_, settings) => {
    expect(settingsSchema.safeParse(settings).success).toBe(false);
  });
});
