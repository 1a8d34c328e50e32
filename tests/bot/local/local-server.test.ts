import { request } from 'node:http';
import webApi from '@slack/web-api';
import { afterEach, describe, expect, test } from 'vitest';
import type { LocalWorkspaceServer } from '../../../bot/local/local-server.ts';
import { botToken, mira, startTestWorkspace, team } from './start-test-workspace.ts';

const { LogLevel, WebClient } = webApi;

const stops: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0)) await stop();
});

const start = async () => {
  const server = await startTestWorkspace();
  stops.push(server.stop);
  return server;
};
const clientOf = (server: LocalWorkspaceServer) =>
  new WebClient(botToken, {
    slackApiUrl: server.apiUrl,
    retryConfig: { retries: 0 },
    rejectRateLimitedCalls: true,
    timeout: 300,
    logLevel: LogLevel.ERROR,
    logger: {
      debug: () => {},
      info: () => {},
      warn: () => {},
      error: () => {},
      setLevel: () => {},
      getLevel: () => LogLevel.ERROR,
      setName: () => {},
    },
  });
const textsIn = (server: LocalWorkspaceServer) => server.workspace.listMessages(team).map(({ text }) => text);

describe('the client of the platform against the workspace', () => {
  test('posts and reads back', async () => {
    const server = await start();
    const client = clientOf(server);
    const metadata = { event_type: 'notice', event_payload: { key: 'k1' } };
    const posted = await client.chat.postMessage({ channel: team, text: 'a', metadata });
    const history = await client.conversations.history({ channel: team, include_all_metadata: true });
    expect(history.messages).toMatchObject([{ ts: posted.ts, text: 'a', metadata }]);
  });

  test('a refusal comes as an error of the platform', async () => {
    const client = clientOf(await start());
    await expect(client.chat.postMessage({ channel: 'C0NONE', text: 'a' })).rejects.toMatchObject({
      data: { ok: false, error: 'channel_not_found' },
    });
  });

  test('a picture goes up in three steps and comes back', async () => {
    const server = await start();
    const bytes = Buffer.from([0x89, 0x50, 0x4e, 0x47, 1, 2, 3]);
    await clientOf(server).filesUploadV2({ file: bytes, filename: 'chart.png', channel_id: team });
    const [fileId = ''] = server.workspace.listMessages(team)[0]?.fileIds ?? [];
    const response = await fetch(`${server.url}/files/${fileId}`);
    expect(response.headers.get('content-type')).toBe('image/png');
    expect(Buffer.from(await response.arrayBuffer())).toEqual(bytes);
  });
});

describe('faults on the wire', () => {
  test.each([
    ['429', [], { code: 'slack_webapi_rate_limited_error', retryAfter: 1 }],
    ['500', [], { code: 'slack_webapi_http_error', statusCode: 500 }],
    ['hang', [], { code: 'slack_webapi_request_error' }],
    ['lost-answer', ['first'], { code: 'slack_webapi_request_error' }],
    ['broken-json', ['first'], { code: 'slack_webapi_platform_error' }],
  ] as const)('%s: once, then all is well', async (kind, kept, expected) => {
    const server = await start();
    const client = clientOf(server);
    server.failNext('chat.postMessage', kind);
    await expect(client.chat.postMessage({ channel: team, text: 'first' })).rejects.toMatchObject(expected);
    expect(textsIn(server)).toEqual(kept);
    await client.chat.postMessage({ channel: team, text: 'second' });
    expect(textsIn(server)).toEqual([...kept, 'second']);
  });

  test('one post a second and channel, when switched on', async () => {
    const server = await start();
    const client = clientOf(server);
    server.limitPosts(true);
    await client.chat.postMessage({ channel: team, text: 'first' });
    await client.chat.postMessage({ channel: mira, text: 'elsewhere' });
    await expect(client.chat.postMessage({ channel: team, text: 'second' })).rejects.toMatchObject({
      retryAfter: 1,
    });
  });
});

describe('response addresses over HTTP', () => {
  test('five answers, then refused', async () => {
    const server = await start();
    const id = server.workspace.issueResponse({ userId: mira, placeId: team });
    const statuses: number[] = [];
    for (const text of ['1', '2', '3', '4', '5', '6']) {
      const response = await fetch(`${server.url}/response/${id}`, {
        method: 'POST',
        body: JSON.stringify({ text }),
      });
      statuses.push(response.status);
    }
    expect(statuses).toEqual([200, 200, 200, 200, 200, 404]);
    expect(server.workspace.visibleTo(mira, team)).toHaveLength(5);
  });
});

const statusOf = (
  server: LocalWorkspaceServer,
  method: string,
  path: string,
  headers: Record<string, string>,
) =>
  new Promise<number | undefined>((resolve, reject) => {
    const { hostname, port } = new URL(server.url);
    request({ hostname, port, path, method, headers }, (response) => {
      response.resume();
      resolve(response.statusCode);
    })
      .on('error', reject)
      .end(method === 'POST' ? '{}' : undefined);
  });

describe('only this machine', () => {
  test.each<[string, Record<string, string>, number]>([
    ['another name for the address', { host: 'evil.example' }, 403],
    ['another name with the port', { host: 'evil.example:4600' }, 403],
    ['a page of another origin', { origin: 'http://evil.example' }, 403],
    ['a page of another port', { origin: 'http://127.0.0.1:1' }, 403],
    ['a name of this machine', { host: 'localhost:4600' }, 200],
  ])('%s', async (_name, headers, status) => {
    expect(await statusOf(await start(), 'GET', '/local/traffic', headers)).toBe(status);
  });

  test('a form of another page is refused by its type', async () => {
    const server = await start();
    expect(await statusOf(server, 'POST', '/local/reset', { 'content-type': 'text/plain' })).toBe(415);
    expect(await statusOf(server, 'POST', '/local/reset', { 'content-type': 'application/json' })).toBe(200);
  });

  test('a malformed request is no fault of the server', async () => {
    const server = await start();
    expect(await statusOf(server, 'POST', '/local/send', { 'content-type': 'application/json' })).toBe(400);
    expect(await statusOf(server, 'POST', '/local/nothing', { 'content-type': 'application/json' })).toBe(
      404,
    );
    expect(await statusOf(server, 'GET', '/page/../../package.json', {})).toBe(404);
  });
});

describe('the clock and the way back', () => {
  const move = (server: LocalWorkspaceServer, target: object) =>
    fetch(`${server.url}/local/clock`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(target),
    }).then((response) => response.json());

  test.each([
    [{ kind: 'minutes', minutes: 15 }, '2026-10-14T08:15:00.000Z'],
    [{ kind: 'next-due' }, '2026-10-14T17:30:00.000Z'],
    [{ kind: 'monday-seven' }, '2026-10-19T06:00:00.000Z'],
    [{ kind: 'wall-time', wallTime: '2026-10-25T12:00' }, '2026-10-25T12:00:00.000Z'],
  ])('%o', async (target, expected) => {
    const server = await start();
    server.connectApp({
      url: 'http://127.0.0.1:1/',
      dueMoments: {
        nextDueAt: async (after) => ['2026-10-14T17:30:00.000Z'].find((instant) => instant > after),
        settle: async () => {},
      },
    });
    expect(await move(server, target)).toEqual({ kind: 'done' });
    expect(server.clock.now()).toBe(expected);
  });

  test('nothing due, and no way back', async () => {
    const server = await start();
    expect(await move(server, { kind: 'next-due' })).toEqual({ kind: 'failed', message: 'Nothing is due.' });
    expect(await move(server, { kind: 'wall-time', wallTime: '2026-10-01T12:00' })).toMatchObject({
      kind: 'failed',
    });
  });

  test('no reset where the app has no way back', async () => {
    const server = await start();
    server.connectApp({ url: 'http://127.0.0.1:1/' });
    server.workspace.post({ placeId: team, authorId: mira, text: 'a' });
    const response = await fetch(`${server.url}/local/reset`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    });
    expect(await response.json()).toMatchObject({ kind: 'failed' });
    expect(textsIn(server)).toEqual(['a']);
  });

  test('a reset forgets all and tells the app', async () => {
    const server = await start();
    const told: string[] = [];
    server.connectApp({
      url: 'http://127.0.0.1:1/',
      onReset: async () => {
        told.push(server.clock.now());
      },
    });
    server.workspace.post({ placeId: team, authorId: mira, text: 'a' });
    await move(server, { kind: 'minutes', minutes: 15 });
    await fetch(`${server.url}/local/reset`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    });
    expect(textsIn(server)).toEqual([]);
    expect(told).toEqual(['2026-10-14T08:00:00.000Z']);
  });
});

describe('what the page is told', () => {
  const state = (server: LocalWorkspaceServer, as: string) =>
    fetch(`${server.url}/local/state?as=${as}`).then((response) => response.json());

  test('unread messages, until they are looked at', async () => {
    const server = await start();
    server.workspace.post({ placeId: team, authorId: 'U0BOT', text: 'a' });
    server.workspace.post({ placeId: team, authorId: 'U0BOT', text: 'b', onlyFor: 'U0TOMAS' });
    const unreadOf = async () => {
      const told = await state(server, mira);
      return told.people.map(({ unread }: { unread: number }) => unread);
    };
    expect(await unreadOf()).toEqual([1, 2, 1]);
    server.workspace.markRead(mira, team);
    expect(await unreadOf()).toEqual([0, 2, 1]);
  });

  test('new replies of others in a thread, until that thread is opened', async () => {
    const server = await start();
    const post = (authorId: string, threadTs?: string) =>
      server.workspace.post({
        placeId: team,
        authorId,
        text: 'a',
        ...(threadTs === undefined ? {} : { threadTs }),
      }).ts;
    const [first, second] = [post(mira), post(mira)];
    post('U0BOT', first);
    post('U0BOT', first);
    post(mira, second);
    const newReplies = async (as: string) => {
      const response = await fetch(`${server.url}/local/messages?as=${as}&place=${team}`);
      const shown: readonly { readonly newReplies: number }[] = await response.json();
      return shown.slice(0, 2).map((message) => message.newReplies);
    };
    const read = (body: object) =>
      fetch(`${server.url}/local/read`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
    expect(await newReplies(mira)).toEqual([2, 0]);
    expect(await newReplies('U0TOMAS')).toEqual([2, 1]);
    await read({ as: mira, place: team });
    expect(await newReplies(mira)).toEqual([2, 0]);
    await read({ as: mira, place: team, threadTs: first });
    expect(await newReplies(mira)).toEqual([0, 0]);
    post('U0BOT', first);
    expect(await newReplies(mira)).toEqual([1, 0]);
    expect(await newReplies('U0TOMAS')).toEqual([3, 1]);
  });

  test('nobody sees a place they are not in', async () => {
    const server = await start();
    server.workspace.post({ placeId: 'C0REVIEW', authorId: mira, text: 'a' });
    const read = (as: string) => fetch(`${server.url}/local/messages?as=${as}&place=C0REVIEW`);
    expect((await read('U0INES')).status).toBe(404);
    expect((await read('U0TOMAS')).status).toBe(200);
  });

  test('changes as they happen', async () => {
    const server = await start();
    const live = await fetch(`${server.url}/local/live`);
    const reader = live.body?.getReader();
    await reader?.read();
    server.workspace.post({ placeId: team, authorId: mira, text: 'a' });
    const told = await reader?.read();
    expect(new TextDecoder().decode(told?.value)).toBe('data: change\n\n');
    await reader?.cancel();
  });
});
