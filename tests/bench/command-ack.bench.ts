import { createHmac } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { App, HTTPReceiver, LogLevel } from '@slack/bolt';
import { afterAll, beforeAll, bench, describe } from 'vitest';
import { createClient } from '../../bot/create-client.ts';
import { createHttpReceiver } from '../../bot/create-http-receiver.ts';
import { handlers } from '../../bot/handlers.ts';
import type { Handlers } from '../../bot/handling.ts';
import { demoSettings } from '../../bot/local/demo/demo-studio.ts';
import { createLog } from '../../bot/log.ts';
import { realTime } from '../../bot/real-time.ts';
import { openDatabase } from '../../storage/open-database.ts';
import { openStorage } from '../../storage/open-storage.ts';
import { longClass } from '../classes/long-class.ts';
import { commandPayload } from '../helpers/payloads.ts';
import { createTestApp, noHandlers } from '../helpers/test-app.ts';

const signingSecret = 'bench-signing-secret';
const host = '127.0.0.1';
const agent = new Agent({ keepAlive: true, maxSockets: 1 });
const folder = mkdtempSync(join(tmpdir(), 'evenset-bench-'));
const log = createLog({ secrets: [], destination: { write: () => {} } });

/** After an ack the app goes on working; the next request is sent when that is over, and a moment later. */
const quietMs = 8;
const rounds = 250;
const classRounds = 30;
const warmUpRounds = 10;

const stops: (() => Promise<unknown> | unknown)[] = [];
const portOf: { [name: string]: number } = {};
const settleOf = new Map<string, () => Promise<void>>();

const saveOnePerson: Handlers = {
  ...noHandlers,
  commands: {
    '/evenset': async (_request, { stores, studioId, newId }) => {
      await stores.people.save(studioId, { id: newId(), roles: ['instructor'] });
      return { answers: [] };
    },
  },
};

const cases = [
  { name: 'a bare echo of the library', server: 'echo', text: 'help' },
  { name: 'the echo, one durable row', server: 'row', text: 'help' },
  { name: 'one small change', server: 'small', text: 'help' },
  { name: 'all handlers, bare command', server: 'all', text: '' },
  { name: 'all handlers, help', server: 'all', text: 'help' },
] as const;
/** Beside them: most of its time is the class's own reading and report. */
const classCase = { name: 'all handlers, a whole class', server: 'class', text: longClass } as const;
const allCases = [...cases, classCase];
const millisecondsOf = new Map<string, number[]>(allCases.map(({ name }) => [name, []]));

/** One signed command; resolves when its ack is in. The client's own share is the same in every case. */
function acked(port: number, text: string): Promise<void> {
  const payload: Record<string, string> = { ...commandPayload(text), response_url: `http://${host}:9/none` };
  const body = new URLSearchParams(payload).toString();
  const timestamp = String(Math.floor(Date.now() / 1_000));
  const signature = createHmac('sha256', signingSecret).update(`v0:${timestamp}:${body}`).digest('hex');
  const headers = {
    'content-type': 'application/x-www-form-urlencoded',
    'content-length': Buffer.byteLength(body),
    'x-slack-request-timestamp': timestamp,
    'x-slack-signature': `v0=${signature}`,
  };
  return new Promise((resolve, reject) => {
    const outgoing = request(
      { host, port, path: '/slack/events', method: 'POST', headers, agent },
      (response) => {
        if (response.statusCode !== 200) reject(new Error(`answered ${response.statusCode}`));
        response.resume().once('end', resolve);
      },
    );
    outgoing.once('error', reject);
    outgoing.end(body);
  });
}

/** A workspace that says yes to every call. */
async function startWorkspace(): Promise<string> {
  const server = createServer((_request, response) => {
    response.writeHead(200, { 'content-type': 'application/json' });
    const self = { team_id: 'T1', team: 'Morgen', user_id: 'UBOT', bot_id: 'B1' };
    response.end(
      JSON.stringify({ ok: true, ...self, channel: 'D1', ts: '1.1', permalink: 'https://none.test' }),
    );
  });
  await new Promise<void>((resolve) => server.listen(0, host, resolve));
  stops.push(
    () => server.closeAllConnections(),
    () => server.close(),
  );
  const address = server.address();
  return `http://${host}:${typeof address === 'object' ? address?.port : 0}/api/`;
}

async function startOurs(name: string, apiUrl: string, ownHandlers: Handlers): Promise<number> {
  const storage = openStorage({ file: join(folder, `${name}.sqlite`) });
  const savedAt = '2026-11-02T09:00:00.000Z';
  await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: savedAt });
  await storage.settings.save('T1', demoSettings, 'bench', savedAt);
  const client = createClient({ token: 'xoxb-bench', log, apiUrl });
  const app = createTestApp({
    storage,
    log,
    realTime,
    clients: { interaction: client, background: client },
    receiver: createHttpReceiver({ signingSecret, log, readiness: async () => ({ ready: true }) }),
    handlers: ownHandlers,
  });
  stops.push(() => storage.close(), app.stop);
  settleOf.set(name, app.settle);
  return (await app.start({ port: 0, host })) ?? 0;
}

async function startEcho(beforeAck: (triggerId: string) => void): Promise<number> {
  const receiver = new HTTPReceiver({ signingSecret, logLevel: LogLevel.ERROR });
  const echo = new App({
    receiver,
    authorize: async () => ({ botUserId: 'UBOT', botId: 'B1' }),
    logLevel: LogLevel.ERROR,
  });
  echo.command('/evenset', async ({ body, ack }) => {
    beforeAck(body.trigger_id);
    await ack();
  });
  const server = await receiver.start({ port: 0, host });
  stops.push(() => receiver.stop());
  const address = server.address();
  return typeof address === 'object' ? (address?.port ?? 0) : 0;
}

beforeAll(async () => {
  const apiUrl = await startWorkspace();
  const database = openDatabase(join(folder, 'row.sqlite'));
  database.exec('CREATE TABLE seen (key TEXT PRIMARY KEY) STRICT');
  const keep = database.prepare('INSERT INTO seen VALUES (?)');
  stops.push(() => database.close());
  portOf.echo = await startEcho(() => {});
  portOf.row = await startEcho((triggerId) => keep.run(triggerId));
  portOf.small = await startOurs('small', apiUrl, saveOnePerson);
  portOf.all = await startOurs('all', apiUrl, handlers);
  portOf.class = await startOurs('class', apiUrl, handlers);
});

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;

afterAll(async () => {
  const counted = allCases.map(({ name }) => (millisecondsOf.get(name) ?? []).slice(warmUpRounds));
  const [echo = [], row = []] = counted;
  for (const [place, { name }] of allCases.entries()) {
    const own = median(counted[place] ?? []);
    const rateBeside = (other: readonly number[]) => (median(other) / own).toFixed(2);
    console.log(
      `${name.padEnd(28)} median ${own.toFixed(3)} ms; of the echo's rate ${rateBeside(echo)}, of the durable row's ${rateBeside(row)}`,
    );
  }
  agent.destroy();
  for (const stop of stops.reverse()) await stop();
  rmSync(folder, { recursive: true });
}, 60_000);

async function measure({ name, server, text }: (typeof allCases)[number]): Promise<void> {
  if (server !== 'class') await settleOf.get(server)?.();
  await wait(quietMs);
  const began = performance.now();
  await acked(portOf[server] ?? 0, text);
  millisecondsOf.get(name)?.push(performance.now() - began);
}

const once = { time: 0, warmupIterations: 0, warmupTime: 0 };

describe('small commands from first byte to ack', () => {
  bench(
    'one round of them, one after the other',
    async () => {
      for (const each of cases) await measure(each);
    },
    { ...once, iterations: rounds },
  );
});

describe('a whole class from first byte to ack', () => {
  bench('all handlers', () => measure(classCase), { ...once, iterations: classRounds });
});
