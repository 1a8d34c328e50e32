import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { describe, expect, test } from 'vitest';
import { createCounters } from '../bot/counters.ts';
import { readEnv } from '../bot/env.ts';
import { readAgain } from '../bot/flows/start-again.ts';
import { healthRoutes } from '../bot/health.ts';
import { demoSettings } from '../bot/local/demo/demo-studio.ts';
import { createLog } from '../bot/log.ts';
import { belongsInThread } from '../bot/messages/say-in-thread.ts';
import { metricsRoute } from '../bot/metrics-route.ts';
import { readSettings } from '../bot/settings-file.ts';
import { standingLine } from '../bot/words/en/finding-words.ts';
import { readClassRequest } from '../domain/calendar/read-class-request.ts';
import { catalogue } from '../domain/catalogue/catalogue.ts';
import { reportOnClass, reportOnPlan } from '../domain/class-report.ts';
import type { Context } from '../domain/context.ts';
import type { Plan } from '../domain/plan/plan.ts';
import { defaultSettings } from '../domain/settings.ts';
import { editPlan } from '../domain/shorthand/edit-plan.ts';
import { readMoveOrder } from '../domain/shorthand/read-move-order.ts';
import { readPlan } from '../domain/shorthand/read-plan.ts';
import { samePlan } from '../domain/shorthand/same-plan.ts';
import { readTaughtLine } from '../domain/week/taught-patterns.ts';
import { buildManifest } from '../manifest/manifest.ts';
import { scopeReasons } from '../manifest/scopes.ts';
import packageFile from '../package.json' with { type: 'json' };
import { openTestStorage } from './helpers/open-test-storage.ts';

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
const developers = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');
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

  const moveWords = codesBetween('| `each side`', '\n\nA class may come');
  test.each(moveWords)('the words %s stand beside a move', (words) => {
    const line = /push-up$/.test(words) && /^\d/.test(words) ? words : `single-arm dumbbell row ${words}`;
    expect(readPlan(`Try, 60 min\ncircuit x2, 40/20\n${line}`, context).problems).toEqual([]);
  });

  // What is asked and said there is run in tests/bot/conversation/asks.test.ts.
  const edits = codesBetween('| change it, a line each |', '| go back and forth |');
  test.each(edits)('the edit %s changes the class', (edit) => {
    const { plan, problems } = editPlan(examplePlan(), edit, context);
    expect(problems).toEqual([]);
    expect(plan === undefined || samePlan(plan, examplePlan())).toBe(false);
  });

  test('the class that is tried first can be sent once its open line is filled', () => {
    const [swap, rounds, undo, fill = ''] = codesBetween('2. Change it there', 'Ask it');
    expect([swap, rounds, undo]).toEqual(['swap B1 front squat', 'rounds A x4', 'undo']);
    const { plan } = editPlan(examplePlan(), `${swap}\n${fill}`, context);
    if (plan === undefined) throw new Error('The edits of the README make no class.');
    const mustFix = (each: Plan) =>
      reportOnPlan(each, { ...context, settings: demoSettings, sendingForReview: true }).findings.filter(
        ({ severity }) => severity === 'must fix',
      );
    expect(mustFix(plan)).toEqual([]);
    expect(mustFix(examplePlan()).map(({ code }) => code)).toEqual(['open-line-left']);
  });

  const inThread = codesBetween('| go back and forth |', '\n\nEach answer');
  test.each(inThread)('%s means something in the thread of a class', (words) => {
    expect(belongsInThread(words)).toBe(true);
  });

  test('the first line is read whole, in any order', () => {
    const [line = ''] = codesBetween('The first line is the title', '\n\n|');
    const { plan, problems } = readPlan(`${line}\ncircuit x2, 40/20\nplank`, {
      ...context,
      settings: demoSettings,
    });
    expect(problems).toEqual([]);
    expect(plan?.facts).toMatchObject({
      title: 'Row & Squat',
      slotSeconds: 2_700,
      people: 14,
      room: 'Mill Room',
      focus: 'glutes',
      startsAt: { date: '2026-10-15', time: '18:30' },
    });
  });

  // What they do is run in tests/bot/conversation and tests/bot/timetable.
  const anywhere = codesBetween('| words | what happens |', '\n\nA class is changed').filter(
    (words) => !['open', 'publicUrl'].includes(words),
  );
  const plainWords = /^(?:week|help|my data|forget me|notices)\b/;
  test.each(anywhere)('%s is read outside a thread', (words) => {
    const typed = words.replace('@name', '<@U0INES>');
    const read = readClassRequest(typed) ?? readMoveOrder(typed) ?? readAgain(typed);
    expect(read !== undefined || plainWords.test(words)).toBe(true);
  });

  test.each(codesBetween('A day reads as it is printed', 'where two days fit'))(
    'the day %s is read',
    (day) => {
      expect(readClassRequest(`cancel ${day} 18:30`)?.kind).toBe('cancel');
    },
  );

  test('a taught line is read', () => {
    const [line = ''] = codesBetween('counted from the reply', ' | the instructor |');
    expect(readTaughtLine(line)).toEqual({
      patterns: ['squat', 'hinge', 'horizontal push', 'anti-extension'],
      unknown: [],
    });
  });

  test('every button and place it names is called so', () => {
    const said = readdirSync(new URL('../bot/words/en/', import.meta.url))
      .map((file) => readFileSync(new URL(`../bot/words/en/${file}`, import.meta.url), 'utf8'))
      .join('\n')
      .concat(JSON.stringify(buildManifest({ kind: 'socket' })));
    const named = [...readme.matchAll(/(?<!\*)\*([A-Z][^*\n]+)\*(?!\*)/g)].map(([, name = '']) => name);
    expect(named.length).toBeGreaterThan(10);
    expect(named.filter((name) => name !== 'Common practice' && !said.includes(name))).toEqual([]);
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
    for (const [, script = ''] of `${readme}${developers}`.matchAll(/npm run (?:--silent )?([\w-]+)/g))
      expect(Object.keys(packageFile.scripts)).toContain(script);
    expect(readme).toContain(standingLine);
  });

  test('the routes and numbers it names are served, all of them', async () => {
    const storage = await openTestStorage();
    const route = metricsRoute({
      counters: createCounters(),
      storage,
      clock: { now: () => context.now },
      log: createLog({ secrets: [], destination: { write: () => {} } }),
    });
    const server = createServer(route.handler);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const address = server.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    const text = await (await fetch(`http://127.0.0.1:${port}${route.path}`)).text();
    await new Promise((resolve) => server.close(resolve));
    await storage.close();
    const served = text.split('\n').flatMap((line) => /^(evenset_\w+) /.exec(line)?.[1] ?? []);
    expect(
      codesBetween('`GET /metrics`', '- **Logs**').filter((code) => code.startsWith('evenset_')),
    ).toEqual(served);
    const paths = [route, ...healthRoutes(async () => ({ ready: true }))].map(({ path }) => path);
    for (const path of paths) expect(readme).toContain(`\`GET ${path}\``);
  });
});

describe('the notes for contributors', () => {
  const paths = [...developers.matchAll(/`((?:bot|domain|manifest|storage|tests)\/[^`*]*)`/g)].map(
    ([, path = '']) => path,
  );
  test.each(paths)('%s is there', (path) => {
    expect(existsSync(new URL(`../${path}`, import.meta.url))).toBe(true);
  });
});
