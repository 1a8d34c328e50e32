import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { Context } from '../../../domain/context.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { keepText } from '../../../domain/shorthand/keep-text.ts';
import { printPlan } from '../../../domain/shorthand/print-plan.ts';
import { type PlanReading, readPlan } from '../../../domain/shorthand/read-plan.ts';

/** Monday, 2 March 2026, 09:00 in an invented studio with two rooms. */
export const context: Context = {
  catalogue,
  settings: {
    ...defaultSettings,
    rooms: ['Loft', 'Long Room'].map((name) => ({ name, kit: {}, doorSeconds: 0, clearUpSeconds: 0 })),
  },
  now: '2026-03-02T09:00:00Z',
};

export function read(text: string, facts: Partial<Context> = {}): PlanReading {
  return readPlan(text, { ...context, ...facts });
}

/** The canonical lines of what could be read, without the first line. */
export function linesOf(text: string): readonly string[] {
  const { plan } = read(text);
  return plan === undefined ? [] : printPlan(plan).split('\n').slice(1);
}

/** Problems as code and the words under the span, in the order told. */
export function problemsOf(text: string): readonly (readonly [string, string])[] {
  const kept = keepText(text);
  return read(text).problems.map(({ code, span }) => [code, kept.slice(span.start, span.end)]);
}

/** Notes by code, without those every class without a length or with a rest has. */
export function notesOf(text: string): readonly unknown[] {
  return read(text)
    .notes.map(({ span: _, ...note }) => note)
    .filter(({ code }) => code !== 'slot-assumed');
}

/** Lines below a title and a block line, as one class. */
export function classOf(...lines: readonly string[]): string {
  return ['Class, 45 min', ...lines].join('\n');
}
