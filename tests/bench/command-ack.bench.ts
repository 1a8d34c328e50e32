import { createHmac } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, createServer, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { App, HTTPReceiver, LogLevel } from '@slack/bolt';
import { afterAll, beforeAll, bench, describe } from 'vitest';
import { createClient } from '../../bot/create-client.ts';
import { createHttpReceiver } from '../../bot/create-http-receiver.ts';
import { createLog } from '../../bot/log.ts';
import { realTime } from '../../bot/real-time.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';
import { commandPayload } from '../helpers/payloads.ts';
import { createTestApp, noHandlers } from '../helpers/test-app.ts';

const signingSecret = 'bench-signing-secret';
const host = '127.0.0.1';
const agent = new Agent({ keepAlive: true, maxSockets: 1 });
const folder = mkdtempSync(join(tmpdir(), 'evenset-bench-'));
const log = createLog({ secrets: [], destination: { write: () => {} } });

let storage: SqliteStorage;
let storedPort = 0;
let echoPort = 0;
const stops: (() => Promise<unknown>)[] = [];

/** One signed command; resolves when its ack is in. */
function acked(port: number): Promise<void> {
  const payload: Record<string, string> = {
    ...commandPayload('help'),
    response_url: `http://${host}:9/none`,
  };
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

/** Says who the app is, the one question asked of the workspace here. */
async function startIdentityServer(): Promise<string> {
  const server = createServer((_request, response) => {
    response.writeHead(200, { 'content-type': 'application/json' });
    response.end(JSON.stringify({ ok: true, team_id: 'T1', team: 'Morgen', user_id: 'UBOT', bot_id: 'B1' }));
  });
  await new Promise<void>((resolve) => server.listen(0, host, resolve));
  stops.push(() => new Promise((resolve) => server.close(resolve)));
  server.unref();
  const address = server.address();
  return `http://${host}:${typeof address === 'object' ? address?.port : 0}/api/`;
}

beforeAll(async () => {
  storage = openStorage({ file: join(folder, 'bench.sqlite') });
  const apiUrl = await startIdentityServer();
  const client = createClient({ token: 'xoxb-bench', log, apiUrl });
  const stored = createTestApp({
    storage,
    log,
    realTime,
    clients: { interaction: client, background: client },
    receiver: createHttpReceiver({ signingSecret, log, readiness: async () => ({ ready: true }) }),
    handlers: {
      ...noHandlers,
      commands: {
        '/evenset': async (_request, { stores, studioId, newId }) => {
          await stores.people.save(studioId, { id: newId(), roles: ['instructor'] });
          return { answers: [] };
        },
      },
    },
  });
  storedPort = (await stored.start({ port: 0, host })) ?? 0;
  stops.push(stored.stop);

  const receiver = new HTTPReceiver({ signingSecret, logLevel: LogLevel.ERROR });
  const echo = new App({
    receiver,
    authorize: async () => ({ botUserId: 'UBOT', botId: 'B1' }),
    logLevel: LogLevel.ERROR,
  });
  echo.command('/evenset', async ({ ack }) => ack());
  const server = await receiver.start({ port: 0, host });
  const address = server.address();
  echoPort = typeof address === 'object' ? (address?.port ?? 0) : 0;
  stops.push(() => receiver.stop());
});

afterAll(async () => {
  agent.destroy();
  for (const stop of stops.reverse()) await stop();
  await storage.close();
  rmSync(folder, { recursive: true });
});

describe('a command from first byte to ack', () => {
  bench('a bare echo of the library', () => acked(echoPort), { time: 3_000 });
  bench('decided and durably saved', () => acked(storedPort), { time: 3_000 });
});
