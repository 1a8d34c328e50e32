import { expect, test } from 'vitest';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { type ChangeSize, sizeOfChange } from '../../../domain/plan/size-of-change.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { editPlan } from '../../../domain/shorthand/edit-plan.ts';
import { readPlan } from '../../../domain/shorthand/read-plan.ts';

const context = { catalogue, settings: defaultSettings, now: '2026-11-02T09:00:00.000Z' };
const text = `Push & Hinge, 30 min, level 2, 10 people, Thu 18:30
warm-up 6:00: march
circuit x3, 40/20
push-up
kettlebell swing, rest 15
plank 30s
rest 60
cool-down 5:00`;
const { plan } = readPlan(text, context);

// Common practice, no published source: the domain page's own rule.
test.each<[string, ChangeSize]>([
  ['rounds A x2', 'small'],
  ['rounds A x4', 'large'],
  ['block A 45/20', 'small'],
  ['block A 50/30', 'small'],
  ['block A 51/20', 'large'],
  ['block A 40/31', 'large'],
  ['rest B 25', 'small'],
  ['rest B 26', 'large'],
  ['work C 40', 'small'],
  ['work C 41', 'large'],
  ['rest after C 70', 'small'],
  ['rest after C 71', 'large'],
  ['cool-down 5:10', 'small'],
  ['cool-down 5:11', 'large'],
  ['swap A bear crawl', 'large'],
  ['swap A knee push-up', 'large'],
  ['drop C', 'large'],
  ['add squat after C', 'large'],
  ['move C before A', 'large'],
  ['weight B heavy', 'large'],
  ['level 1', 'large'],
  ['12 now', 'large'],
  ['title Another', 'large'],
  ['rounds A x2\nswap A bear crawl', 'large'],
])('%s is %s', (edit, size) => {
  if (plan === undefined) throw new Error('not read');
  const edited = editPlan(plan, edit, context);
  expect(edited.problems).toEqual([]);
  expect(sizeOfChange(plan, edited.plan ?? plan)).toBe(size);
});

test.each<[string, string, ChangeSize]>([
  ['an easier option named', text.replace('push-up', 'push-up easier knee push-up'), 'small'],
  ['a harder one named', text.replace('push-up', 'push-up harder decline push-up'), 'large'],
  ['another day', text.replace('Thu 18:30', 'Sat 10:00'), 'same class'],
  ['the same text', text, 'same class'],
  [
    'another day and a move',
    text.replace('Thu 18:30', 'Sat 10:00').replace('push-up', 'bear crawl'),
    'large',
  ],
])('%s', (_what, rewritten, size) => {
  const after = readPlan(rewritten, context).plan;
  if (plan === undefined || after === undefined) throw new Error('not read');
  expect(sizeOfChange(plan, after)).toBe(size);
});
