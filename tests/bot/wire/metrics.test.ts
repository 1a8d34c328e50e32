import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createCounters } from '../../../bot/counters.ts';
import { createHttpReceiver } from '../../../bot/create-http-receiver.ts';
import { handlers } from '../../../bot/handlers.ts';
import { createLog } from '../../../bot/log.ts';
import { metricsRoute } from '../../../bot/metrics-route.ts';
import { startReal } from '../../../bot/start-real.ts';
import type { Storage } from '../../../domain/ports.ts';
import { startFakeSocket } from '../../helpers/fake-socket.ts';
import { createFakeWorkspace, type Fault } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { messagePayload } from '../../helpers/payloads.ts';
import { createTestApp } from '../../helpers/test-app.ts';

const studioId = 'T1';
const classText = 'Canary Row, 20 min\nwarm-up 5:00: march\ncircuit x3, 40/20\nplank\ncool-down to the end';
const log = createLog({ secrets: [], destination: { write: () => {} } });

type Family = { type?: string; unit?: string; help?: string; samples: Record<string, number> };

/**
 * Reads a text exposition as the specification says: OpenMetrics 1.0.0 (Cloud Native Computing Foundation,
 * 2020), text format, sections ABNF, overall structure, MetricFamily metadata, Counter and Gauge. Throws where
 * a rule is broken.
 */
function readOpenMetrics(text: string): ReadonlyMap<string, Family> {
  if (/\r|^\uFEFF|\n\n/.test(text)) throw new Error('Lines end with a line feed alone; none is empty.');
  if (!text.endsWith('\n# EOF\n')) throw new Error('An exposition ends with EOF.');
  const families = new Map<string, Family>();
  let current = '';
  for (const line of text.slice(0, -'# EOF\n'.length).trimEnd().split('\n')) {
    const [, keyword = '', name = '', value = ''] =
      /^# (TYPE|UNIT|HELP) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.+)$/.exec(line) ?? [];
    if (keyword !== '') {
      if (name !== current && families.has(name)) throw new Error(`Interleaved family: ${line}`);
      current = name;
      const family: Family = families.get(name) ?? { samples: {} };
      families.set(name, family);
      const order = ['TYPE', 'UNIT', 'HELP'];
      const given = [family.type, family.unit, family.help];
      if (given.slice(order.indexOf(keyword)).some((each) => each !== undefined))
        throw new Error(`Repeated or out of order: ${line}`);
      if (keyword === 'TYPE') family.type = value;
      if (keyword === 'UNIT') family.unit = value;
      if (keyword === 'HELP') family.help = value;
      if (keyword === 'UNIT' && !name.endsWith(`_${value}`)) throw new Error(`Not the unit's name: ${line}`);
      continue;
    }
    const [, sample = '', number = ''] =
      /^([a-zA-Z_:][a-zA-Z0-9_:]*) ([-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?)$/.exec(line) ?? [];
    const family = families.get(current);
    const wanted = `${current}${family?.type === 'counter' ? '_total' : ''}`;
    if (family === undefined || sample !== wanted) throw new Error(`No sample of ${current}: ${line}`);
    if (sample in family.samples) throw new Error(`A second value: ${line}`);
    if (family.type === 'counter' && Number(number) < 0) throw new Error(`A counter below 0: ${line}`);
    family.samples[sample] = Number(number);
  }
  return families;
}

let storage: Storage;
beforeEach(async () => {
  nock.disableNetConnect();
  nock.enableNetConnect('127.0.0.1');
  storage = await openTestStorage();
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await storage.close();
});

/** The app with the route over HTTP; `ask` answers with each sample's value. */
async function started(faultFor?: (place: number) => Fault | undefined) {
  let posts = 0;
  const workspace = createFakeWorkspace(({ method }) => {
    if (method !== 'chat.postMessage') return undefined;
    posts += 1;
    return faultFor?.(posts);
  });
  const counters = createCounters();
  const app = createTestApp({ storage, handlers, counters });
  await app.start();
  const clock = { now: () => app.clock.instant };
  const receiver = createHttpReceiver({
    signingSecret: 'secret',
    log,
    readiness: async () => ({ ready: true }),
    metrics: metricsRoute({ counters, storage, clock, log }),
  });
  const server = await receiver.start({ port: 0, host: '127.0.0.1' });
  const bound = server.address();
  const address = `http://127.0.0.1:${typeof bound === 'object' ? bound?.port : ''}/metrics`;
  const ask = async () => {
    const families = readOpenMetrics(await (await fetch(address)).text());
    return Object.assign({}, ...[...families.values()].map(({ samples }) => samples));
  };
  return {
    ...app,
    workspace,
    address,
    ask,
    end: async () => {
      await receiver.stop();
      await app.stop();
    },
  };
}

const notice = (key: string, causedAt: string) =>
  ({ key, to: 'C1', action: { kind: 'post' }, payload: { text: 'Canary' }, causedAt }) as const;

describe('the metrics route', () => {
  test('answers in the open metrics text format, with no label and no word of anyone', async () => {
    const app = await started();
    await app.send(messagePayload(classText));
    await app.settle();
    const response = await fetch(app.address);
    const text = await response.text();
    expect([...readOpenMetrics(text)].map(([name, { type, unit }]) => [name, type, unit])).toEqual([
      ['evenset_drafts', 'counter', undefined],
      ['evenset_posts', 'counter', undefined],
      ['evenset_retries', 'counter', undefined],
      ['evenset_dead_notices', 'counter', undefined],
      ['evenset_waiting_notices', 'gauge', undefined],
      ['evenset_oldest_due_notice_age_seconds', 'gauge', 'seconds'],
    ]);
    expect({ status: response.status, type: response.headers.get('content-type') }).toEqual({
      status: 200,
      type: 'application/openmetrics-text; version=1.0.0; charset=utf-8',
    });
    expect(text).not.toMatch(/[{}]|Canary|Morgen|U1|T1/);
    const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
    const told = readme.match(/`evenset_\w+`/g)?.map((name) => name.slice(1, -1));
    expect(told).toEqual([...readOpenMetrics(text).values()].flatMap(({ samples }) => Object.keys(samples)));
    await app.end();
  });

  test('is read only, and tells where storage does not answer', async () => {
    const app = await started();
    expect((await fetch(app.address, { method: 'POST' })).status).toBe(404);
    const broken = metricsRoute({
      counters: createCounters(),
      storage: {
        ...storage,
        studios: { ...storage.studios, list: () => Promise.reject(new Error('disk I/O error')) },
      },
      clock: { now: () => app.clock.instant },
      log,
    });
    const server = createServer(broken.handler);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const bound = server.address();
    const response = await fetch(`http://127.0.0.1:${typeof bound === 'object' ? bound?.port : ''}`);
    expect({ status: response.status, text: await response.text() }).toEqual({ status: 503, text: '' });
    await new Promise((resolve) => server.close(resolve));
    await app.end();
  });
});

describe('what is counted', () => {
  test('a draft, the message it was posted with, and its change as a second one', async () => {
    const app = await started();
    await app.send(messagePayload(classText, { ts: '100.000001' }));
    await app.settle();
    const first = await app.ask();
    await app.send(messagePayload('rounds A x4', { ts: '100.000002', thread_ts: '100.000001' }));
    await app.settle();
    const second = await app.ask();
    expect([first.evenset_drafts_total, second.evenset_drafts_total]).toEqual([1, 1]);
    expect(first.evenset_posts_total).toBe(app.workspace.callsOf('chat.postMessage').length - 1);
    expect(second.evenset_posts_total).toBe(
      app.workspace.callsOf('chat.postMessage').length + app.workspace.callsOf('chat.update').length,
    );
    await app.end();
  });

  test('no draft that is not kept', async () => {
    const counters = createCounters();
    createFakeWorkspace();
    const app = createTestApp({
      storage,
      counters,
      handlers: {
        ...handlers,
        message: async (request, desk) => {
          await handlers.message(request, desk);
          throw new Error('after the draft was written');
        },
      },
    });
    await app.start();
    await app.send(messagePayload(classText));
    await app.stop();
    expect(await storage.plans.listByAuthor(studioId, 'U1', 9)).toEqual([]);
    expect(counters.read().drafts).toBe(0);
  });

  test.each([
    ['a rate limit', { kind: '429' }],
    ['a server’s failure', { kind: '500' }],
    ['a lost answer', { kind: 'lost' }],
  ] as const)('a post tried again after %s, and sent once', async (_name, fault) => {
    const app = await started((place) => (place === 1 ? fault : undefined));
    await storage.notices.enqueue(studioId, notice('n', app.clock.instant));
    await app.settle();
    expect(await app.ask()).toMatchObject({
      evenset_posts_total: 1,
      evenset_retries_total: 1,
      evenset_dead_notices_total: 0,
      evenset_waiting_notices: 0,
    });
    await app.end();
  });

  test('a notice that can not be posted at all', async () => {
    const app = await started(() => ({ kind: 'error', error: 'channel_not_found' }));
    await storage.notices.enqueue(studioId, notice('n', app.clock.instant));
    await app.settle();
    expect(await app.ask()).toMatchObject({
      evenset_posts_total: 0,
      evenset_retries_total: 0,
      evenset_dead_notices_total: 1,
      evenset_oldest_due_notice_age_seconds: 0,
    });
    await app.end();
  });
});

describe('the age of the oldest due notice', () => {
  test('is 0 where none waits, else that of the oldest in any studio; never below 0', async () => {
    const app = await started();
    await app.stop();
    const ages = [(await app.ask()).evenset_oldest_due_notice_age_seconds];
    await storage.studios.save({ id: 'T2', name: 'Other', createdAt: app.clock.instant });
    await storage.notices.enqueue(studioId, notice('n', '2026-11-02T08:59:30.000Z'));
    await storage.notices.enqueue('T2', notice('n', '2026-11-02T08:58:30.500Z'));
    const { evenset_waiting_notices: waiting, ...rest } = await app.ask();
    ages.push(rest.evenset_oldest_due_notice_age_seconds);
    app.clock.instant = '2026-11-01T09:00:00.000Z';
    ages.push((await app.ask()).evenset_oldest_due_notice_age_seconds);
    expect({ waiting, ages }).toEqual({ waiting: 2, ages: [0, 89.5, 0] });
    await app.end();
  });
});

test('over Socket Mode it is served beside health, where a port is set', async () => {
  const socket = await startFakeSocket(() => ({
    ok: true,
    team_id: studioId,
    team: 'Morgen',
    user_id: 'UBOT',
    bot_id: 'B1',
  }));
  const probe = createServer();
  await new Promise<void>((resolve) => probe.listen(0, '127.0.0.1', resolve));
  const bound = probe.address();
  const port = typeof bound === 'object' ? (bound?.port ?? 0) : 0;
  await new Promise((resolve) => probe.close(resolve));
  const access = { kind: 'socket', botToken: 'xoxb-1', appToken: 'xapp-1' } as const;
  const env = { access, apiUrl: socket.apiUrl, host: '127.0.0.1', port, secrets: [] };
  const running = await startReal({ env, access, storage, log });
  const statuses = await Promise.all(
    ['/health', '/health/live', '/metrics', '/other'].map(
      async (path) => (await fetch(`http://127.0.0.1:${port}${path}`)).status,
    ),
  );
  const text = await (await fetch(`http://127.0.0.1:${port}/metrics`)).text();
  expect(statuses).toEqual([200, 200, 200, 404]);
  expect(readOpenMetrics(text).size).toBe(6);
  await running.stop();
  await socket.stop();
});
