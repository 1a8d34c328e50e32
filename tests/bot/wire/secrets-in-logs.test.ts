import { spawn } from 'node:child_process';
import { createHmac } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createBoltLogger } from '../../../bot/bolt-logger.ts';
import { createHttpReceiver } from '../../../bot/create-http-receiver.ts';
import { handlers } from '../../../bot/handlers.ts';
import { createLog, errorFacts, type Log } from '../../../bot/log.ts';
import { applySettings, readSettings } from '../../../bot/settings-file.ts';
import { startReal } from '../../../bot/start-real.ts';
import type { SqliteStorage } from '../../../storage/open-storage.ts';
import { startFakeSocket } from '../../helpers/fake-socket.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { actionPayload, commandPayload, messagePayload, viewPayload } from '../../helpers/payloads.ts';
import { canaryToken, createTestApp } from '../../helpers/test-app.ts';

const canary = 'canary of what a person wrote';
const canarySecret = 'canary-signing-secret';
const botToken = 'xoxb-1-canary';
const appToken = 'xapp-1-canary';

let storage: SqliteStorage;
let lines: string[];
let log: Log;
beforeEach(async () => {
  storage = await openTestStorage();
  lines = [];
  log = createLog({
    secrets: [canarySecret, botToken, appToken],
    destination: { write: (line) => lines.push(line) },
  });
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await storage.close();
});

/** Each line is JSON, there are some, and none has a canary. */
function expectClean(least: number): void {
  expect(lines.length).toBeGreaterThanOrEqual(least);
  for (const line of lines) expect(JSON.parse(line)).toMatchObject({ msg: expect.any(String) });
  expect(lines.filter((line) => /canary/i.test(line))).toEqual([]);
}

describe('no log line holds a secret or what a person wrote', () => {
  test('over the socket: payloads of every kind, broken ones, a connection that ends and a token that is refused', async () => {
    let isRefused = false;
    const self = { team_id: 'T1', team: 'Canary studio', user_id: 'UBOT', bot_id: 'B1' };
    const socket = await startFakeSocket(() =>
      isRefused
        ? { ok: false, error: 'invalid_auth' }
        : { ok: true, ...self, channel: { id: 'D1' }, ts: '9.9', view: { id: 'V1' } },
    );
    const access = { kind: 'socket', botToken, appToken } as const;
    const env = { access, apiUrl: socket.apiUrl, host: '127.0.0.1', secrets: [botToken, appToken] };
    const running = await startReal({ env, access, storage, log });
    const responseUrl = { response_url: `${socket.apiUrl}canary` };
    const envelope = (type: string, payload: unknown) => ({
      type,
      envelope_id: `e-${type}-${lines.length}`,
      payload,
    });
    for (const each of [
      envelope('slash_commands', commandPayload(canary, responseUrl)),
      envelope('slash_commands', commandPayload(canary, { ...responseUrl, team_id: canary })),
      envelope('events_api', messagePayload(`${canary}, 20 min\ncircuit x3, 40/20\n${canary}`)),
      envelope('interactive', actionPayload('undo', canary, responseUrl)),
      envelope('interactive', actionPayload('undo', canary, { ...responseUrl, trigger_id: [canary] })),
      envelope('interactive', viewPayload('draft-form', { class: { any: { value: canary } } })),
      envelope('interactive', { type: canary }),
    ])
      socket.send(each);
    await expect.poll(() => lines.filter((line) => line.includes('"served"')).length).toBeGreaterThan(3);
    isRefused = true;
    socket.drop();
    await expect.poll(() => socket.open(), { timeout: 5_000 }).toBe(0);
    await new Promise((resolve) => setTimeout(resolve, 300));
    await running.stop();
    await socket.stop();
    expectClean(5);
  }, 30_000);

  test('over HTTP: a signed body that is no JSON, one that is not signed, one that is too long', async () => {
    const receiver = createHttpReceiver({
      signingSecret: canarySecret,
      log,
      readiness: async () => ({ ready: true }),
    });
    const server = await receiver.start({ port: 0, host: '127.0.0.1' });
    const bound = server.address();
    const address = `http://127.0.0.1:${typeof bound === 'object' ? bound?.port : ''}/slack/events`;
    const send = (body: string, type: string, secret: string) => {
      const timestamp = String(Math.floor(Date.now() / 1_000));
      const signature = createHmac('sha256', secret).update(`v0:${timestamp}:${body}`).digest('hex');
      const headers = {
        'content-type': type,
        'x-slack-request-timestamp': timestamp,
        'x-slack-signature': `v0=${signature}`,
      };
      return fetch(address, { method: 'POST', body, headers });
    };
    const json = 'application/json';
    const statuses = [
      (await send(`${canary} {"text":`, json, canarySecret)).status,
      (await send(`payload=${canary}`, 'application/x-www-form-urlencoded', canarySecret)).status,
      (await send(JSON.stringify({ text: canary }), json, 'another secret')).status,
      (await send(`"${canary.repeat(40_000)}"`, json, canarySecret)).status,
    ];
    expect(statuses.every((status) => status >= 400)).toBe(true);
    await receiver.stop();
    expectClean(3);
  });

  test('where calls fail in every way, with the answer quoting what was sent', async () => {
    nock.disableNetConnect();
    const faults = ['429', '500', 'lost', 'broken'] as const;
    createFakeWorkspace((_call, place) =>
      place < 2
        ? undefined
        : place < 10
          ? { kind: faults[place % 4] ?? '500' }
          : { kind: 'error', error: canary },
    );
    const backOff = { firstMs: 1, mostMs: 1, mostAttempts: 4 };
    const app = createTestApp({ storage, handlers, log, backOff });
    await app.start();
    for (const payload of [
      messagePayload(`${canary}, 20 min\nwarm-up 5:00\ncircuit x3, 40/20\nplank`),
      commandPayload(canary),
      actionPayload('undo', canary),
    ])
      await app.send(payload);
    await app.settle();
    await app.stop();
    expectClean(5);
    expect(lines.join('')).not.toContain(canaryToken);
  });

  test('where settings are applied, and where stored ones can not be read', async () => {
    await storage.studios.save({ id: 'T1', name: canary, createdAt: '2026-11-01T09:00:00.000Z' });
    const read = readSettings(
      JSON.stringify({ rooms: [{ name: canary, emergencyCard: canary }], ownNames: { [canary]: 'plank' } }),
    );
    if (read.kind !== 'read') throw new Error('The file is read.');
    await applySettings(storage, 'T1', read, '2026-11-01T09:00:00.000Z', log);
    storage.database.exec(
      `UPDATE settings SET settings = json_set(settings, '$.zone', json('["${canary}"]'))`,
    );
    nock.disableNetConnect();
    createFakeWorkspace();
    const app = createTestApp({ storage, handlers, log });
    await app.start();
    await app.send(commandPayload('help'));
    await app.stop();
    expect(lines.join('')).toContain('"changed":["rooms","ownNames"]');
    expect(lines.join('')).toContain('"errorPaths":["zone"]');
    expectClean(3);
  });
});

test('a process that ends on a fault nobody caught says its name and place alone', async () => {
  const self = { team_id: 'T1', team: 'Canary studio', user_id: 'UBOT', bot_id: 'B1' };
  const socket = await startFakeSocket(() => ({ ok: true, ...self }));
  const folder = mkdtempSync(join(tmpdir(), 'evenset-'));
  const entry = new URL('../../../bot/main.ts', import.meta.url).pathname;
  const child = spawn(process.execPath, ['--import', 'tsx', entry], {
    env: {
      PATH: process.env.PATH ?? '',
      SLACK_API_URL: socket.apiUrl,
      SLACK_BOT_TOKEN: botToken,
      SLACK_APP_TOKEN: appToken,
      EVENSET_DATA: folder,
    },
  });
  let output = '';
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => (output += String(chunk)));
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  await expect.poll(() => output, { timeout: 15_000 }).toContain('over Socket Mode');
  output = '';
  // The library gives up on an event without an event.
  socket.send({ type: 'events_api', envelope_id: 'e', payload: canary });
  expect(await ended).toBe(1);
  const last = output.trim().split('\n').at(-1) ?? '';
  expect(JSON.parse(last)).toMatchObject({ msg: 'ended on a fault', errorName: 'TypeError' });
  expect(output).not.toMatch(/canary/i);
  await socket.stop();
  rmSync(folder, { recursive: true });
}, 30_000);

describe('what is kept of an error and of a library’s line', () => {
  test('frames of the code, none that a message pretends to', () => {
    const error = new Error(`x\n    at ${canary} (file.ts:1:1)`);
    const { errorFrames } = errorFacts(error);
    expect(errorFrames).not.toEqual([]);
    expect(JSON.stringify(errorFrames)).not.toContain('canary');
  });

  test.each([
    [
      `Malformed request body: Unexpected token 'c', "${canary}" is not valid JSON`,
      'Malformed request body',
      undefined,
    ],
    [
      'Failed to retrieve a new WSS URL (error: Error: An API error occurred: invalid_auth)',
      'Failed to retrieve a new WSS URL',
      'invalid_auth',
    ],
    [
      `WebSocket error occurred: connect ECONNREFUSED wss://host/?ticket=${canary}`,
      'WebSocket error occurred',
      'ECONNREFUSED',
    ],
    ['A ping wasn’t received', 'A ping wasn’t received', undefined],
  ])('%s', (line, detail, code) => {
    createBoltLogger(log).error(line);
    const [written = '{}'] = lines;
    expect(JSON.parse(written)).toMatchObject({
      msg: 'library',
      detail,
      ...(code === undefined ? {} : { code }),
    });
    expectClean(1);
  });
});
