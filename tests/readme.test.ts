import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readEnv } from '../bot/env.ts';
import { readSettings } from '../bot/settings-file.ts';
import { standingLine } from '../bot/words/en/finding-words.ts';
import { catalogue } from '../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../domain/class-report.ts';
import type { Context } from '../domain/context.ts';
import type { Plan } from '../domain/plan/plan.ts';
import { defaultSettings } from '../domain/settings.ts';
import { editPlan } from '../domain/shorthand/edit-plan.ts';
import { readPlan } from '../domain/shorthand/read-plan.ts';
import { samePlan } from '../domain/shorthand/same-plan.ts';
import { scopeReasons } from '../manifest/scopes.ts';
import packageFile from '../package.json' with { type: 'json' };

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
const context: Context = { catalogue, settings: defaultSettings, now: '2026-10-14T08:00:00.000Z' };

/** What stands in backticks in the lines between two texts of the README. */
const codesBetween = (from: string, to: string): readonly string[] => {
  const start = readme.indexOf(from);
  const end = readme.indexOf(to, start);
  expect(start).toBeGreaterThan(-1);
  expect(end).toBeGreaterThan(start);
  return [...readme.slice(start, end).matchAll(/`([^`\n]+)`/g)].map(([, code = '']) => code);
};

const fenced = (language: string): readonly string[] =>
  [...readme.matchAll(new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``, 'g'))].map(([, code = '']) => code);

const exampleClass = fenced('').find((code) => code.includes('Row & Squat')) ?? '';

const examplePlan = (): Plan => {
  const { plan, problems } = readPlan(exampleClass, context);
  expect(problems).toEqual([]);
  if (plan === undefined) throw new Error('The example of the README reads as no class.');
  return plan;
};

describe('each example of the README does what it says', () => {
  test('the class lasts exactly 40:00', () => {
    const report = reportOnClass(exampleClass, context);
    expect(report.kind === 'report' && report.timeline.totalSeconds).toBe(2_400);
  });

  const blockLines = codesBetween('| you write | it means |', '| `each side`').flatMap((code) =>
    code === 'straight' ? [] : [code],
  );
  test.each(blockLines)('the block %s is read', (line) => {
    const text = /^(?:warm-up|cool-down|mobility|song|rest|water|explain|set-up)/.test(line)
      ? `Try, 60 min\nwarm-up 5:00\ncircuit x2, 40/20\ngoblet squat\n${line}\n${line.startsWith('cool') ? '' : 'circuit x2, 40/20\nplank'}`
      : /^\w[\w ]*\d+x\d+$/.test(line)
        ? `Try, 60 min\nstraight x3, 40/20\n${line}`
        : `Try, 60 min\n${line}\n8 goblet squat\n10 push-up`;
    expect(readPlan(text, context).problems).toEqual([]);
  });

  const moveWords = codesBetween('| `each side`', '\n\nIn the draft');
  test.each(moveWords)('the words %s stand beside a move', (words) => {
    const line = /push-up$/.test(words) && /^\d/.test(words) ? words : `single-arm dumbbell row ${words}`;
    expect(readPlan(`Try, 60 min\ncircuit x2, 40/20\n${line}`, context).problems).toEqual([]);
  });

  // What is asked and said there is run in tests/bot/conversation/asks.test.ts.
  const edits = codesBetween('In the draft', '`undo`');
  test.each(edits)('the edit %s changes the class', (edit) => {
    const { plan, problems } = editPlan(examplePlan(), edit, context);
    expect(problems).toEqual([]);
    expect(plan === undefined || samePlan(plan, examplePlan())).toBe(false);
  });

  test('the settings file is read whole', () => {
    expect(readSettings(fenced('json')[0] ?? '').kind).toBe('read');
  });

  test('every variable it names is read, and every scope has its reason', () => {
    for (const name of codesBetween('| variable | what it is |', 'Some but not all').filter((code) =>
      /^[A-Z_]+$/.test(code),
    ))
      expect(readEnv({ [name]: '\u0000' }), name).not.toEqual(readEnv({}));
    for (const { scope, reason } of scopeReasons) expect(readme).toContain(`| \`${scope}\` | ${reason} |`);
  });

  test('the commands exist and the standing caution is word for word', () => {
    for (const [, script = ''] of readme.matchAll(/npm run (?:--silent )?(\w+)/g))
      expect(Object.keys(packageFile.scripts)).toContain(script);
    expect(readme).toContain(standingLine);
  });
});
