import { createHmac } from 'node:crypto';
import { request } from 'node:http';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createHttpReceiver } from '../../../bot/create-http-receiver.ts';
import { createLog } from '../../../bot/log.ts';

const signingSecret = 'canary-signing-secret';
const atMs = 1_780_000_000_000;
const lines: string[] = [];
let nowMs = atMs;
let isReady = true;
let bodies: unknown[] = [];
let address = '';

const receiver = createHttpReceiver({
  signingSecret,
  log: createLog({
    secrets: [signingSecret],
    destination: {
      write: (line) => {
        lines.push(line);
      },
    },
  }),
  readiness: async () => (isReady ? { ready: true } : { ready: false, reason: 'stopping' }),
  nowMs: () => nowMs,
});

beforeEach(async () => {
  nowMs = Date.now();
  isReady = true;
  bodies = [];
  const app: Parameters<typeof receiver.init>[0] = Object.create(null, {
    processEvent: {
      value: async ({ body, ack }: { body: unknown; ack: () => Promise<void> }) => {
        bodies.push(body);
        await ack();
      },
    },
  });
  receiver.init(app);
  const server = await receiver.start({ port: 0, host: '127.0.0.1' });
  const bound = server.address();
  address = `http://127.0.0.1:${typeof bound === 'object' ? bound?.port : ''}`;
});
afterEach(() => receiver.stop());

type Signed = { readonly body: string; readonly headers: Readonly<Record<string, string>> };

function signed(body: string, skewSeconds = 0, secret = signingSecret): Signed {
  const timestamp = String(Math.floor(nowMs / 1_000) + skewSeconds);
  const signature = createHmac('sha256', secret).update(`v0:${timestamp}:${body}`).digest('hex');
  return {
    body,
    headers: {
      'content-type': 'application/json',
      'x-slack-request-timestamp': timestamp,
      'x-slack-signature': `v0=${signature}`,
    },
  };
}

let count = 0;
const fresh = () => {
  count += 1;
  return JSON.stringify({ type: 'event_callback', count });
};

const send = async ({ body, headers }: Signed): Promise<number> =>
  (await fetch(`${address}/slack/events`, { method: 'POST', body, headers })).status;

describe('the guard in front of HTTP', () => {
  test.each([
    ['now', 0, 200],
    ['five minutes old', -299, 200],
    ['older than five minutes', -302, 401],
    ['five minutes ahead', 299, 200],
    ['six minutes ahead', 360, 401],
    ['an hour ahead', 3_600, 401],
    ['ten years ahead', 315_360_000, 401],
  ])('a request signed %s', async (_name, skewSeconds, status) => {
    expect(await send(signed(fresh(), skewSeconds))).toBe(status);
    expect(bodies.length).toBe(status === 200 ? 1 : 0);
  });

  test.each([['nonsense'], [''], ['Infinity'], ['NaN']])('a timestamp “%s” is refused', async (timestamp) => {
    const { body, headers } = signed(fresh());
    expect(await send({ body, headers: { ...headers, 'x-slack-request-timestamp': timestamp } })).toBe(401);
    expect(bodies).toEqual([]);
  });

  test('a signature passes once in ten minutes', async () => {
    const request = signed(fresh());
    expect(await send(request)).toBe(200);
    expect(await send(request)).toBe(401);
    nowMs += 299_000;
    expect(await send(request)).toBe(401);
    expect(bodies.length).toBe(1);
  });

  test('a forged signature is refused and blocks nothing', async () => {
    const body = fresh();
    expect(await send(signed(body, 0, 'another secret'))).toBe(401);
    expect(await send(signed(body, 0, 'another secret'))).toBe(401);
    expect(await send(signed(body))).toBe(200);
    expect(bodies.length).toBe(1);
  });

  test('a request without a signature is refused', async () => {
    expect(await send({ body: fresh(), headers: { 'content-type': 'application/json' } })).toBe(401);
    expect(bodies).toEqual([]);
  });

  test.each([
    ['1 MiB', 1_048_576, 200],
    ['a byte more', 1_048_577, 413],
  ])('a body of %s', async (_name, length, status) => {
    const empty = JSON.stringify({ pad: '' });
    const body = JSON.stringify({ pad: 'x'.repeat(length - empty.length) });
    expect(Buffer.byteLength(body)).toBe(length);
    expect(await send(signed(body))).toBe(status);
  });

  test('a body past 1 MiB that names no length is refused', async () => {
    const body = JSON.stringify({ pad: 'x'.repeat(1_200_000) });
    const { headers } = signed(body);
    const status = await new Promise((resolve, reject) => {
      const outgoing = request(`${address}/slack/events`, { method: 'POST', headers });
      outgoing.once('response', (response) => resolve(response.statusCode));
      outgoing.once('error', reject);
      outgoing.write(body.slice(0, 600_000));
      outgoing.end(body.slice(600_000));
    });
    expect(status).toBe(413);
  });

  test('what is refused is logged without the secret', () => {
    expect(lines.join('')).toContain('signature seen before');
    expect(lines.join('')).not.toContain(signingSecret);
  });
});

describe('health', () => {
  const get = async (path: string) => {
    const response = await fetch(`${address}${path}`);
    return { status: response.status, body: await response.json() };
  };

  test('tells that it can serve', async () => {
    expect(await get('/health')).toEqual({ status: 200, body: { live: true, ready: true } });
  });
  test('tells why it can not, while it is alive', async () => {
    isReady = false;
    expect(await get('/health')).toEqual({
      status: 503,
      body: { live: true, ready: false, reason: 'stopping' },
    });
    expect(await get('/health/live')).toEqual({ status: 200, body: { live: true } });
  });
});
