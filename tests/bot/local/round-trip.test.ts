import { createServer } from 'node:http';
import type { App } from '@slack/bolt';
import type { ModalView } from '@slack/types';
import { afterEach, describe, expect, test } from 'vitest';
import type { LocalWorkspaceServer } from '../../../bot/local/local-server.ts';
import { directPlaceId, type Message } from '../../../bot/local/workspace.ts';
import { startTestApp } from './start-test-app.ts';
import {
  botToken,
  createTestWorkspace,
  ines,
  mira,
  startTestWorkspace,
  team,
  testApp,
  tomas,
} from './start-test-workspace.ts';

const stops: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0).reverse()) await stop();
});

const startServer = async () => {
  const server = await startTestWorkspace();
  stops.push(server.stop);
  return server;
};

const startApp = async (server: LocalWorkspaceServer, listen: (app: App) => void): Promise<App> => {
  const started = await startTestApp(server, listen);
  stops.push(started.stop);
  return started.app;
};

/** What the page does, over the page's own requests. */
const gesture = async (server: LocalWorkspaceServer, path: string, body: object): Promise<unknown> => {
  const response = await fetch(`${server.url}/local/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return response.json();
};

const until = async <T>(look: () => T | undefined): Promise<T> => {
  for (let tries = 0; tries < 1_000; tries += 1) {
    const found = look();
    if (found !== undefined) return found;
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
  throw new Error('it did not come');
};

const direct = directPlaceId(mira);
const textsSeenBy = (server: LocalWorkspaceServer, person: string, place: string) =>
  server.workspace.visibleTo(person, place).map(({ text }) => text);
const button = {
  type: 'actions',
  block_id: 'next',
  elements: [
    { type: 'button', action_id: 'approve', value: 'plan-1', text: { type: 'plain_text', text: 'Approve' } },
  ],
} as const;
const form: ModalView = {
  type: 'modal',
  callback_id: 'draft_form',
  title: { type: 'plain_text', text: 'Draft' },
  submit: { type: 'plain_text', text: 'Make it' },
  notify_on_close: true,
  private_metadata: 'kept',
  blocks: [
    {
      type: 'input',
      block_id: 'class',
      label: { type: 'plain_text', text: 'Class' },
      element: { type: 'plain_text_input', action_id: 'text', multiline: true },
    },
  ],
};

describe('the real app against the workspace', () => {
  test('a message gets its answer in the thread, and its own answer comes back as an event', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    await startApp(server, (app) => {
      app.message(async ({ message, say }) => {
        heard.push(message);
        if ('text' in message) await say({ text: `Read: ${message.text}`, thread_ts: message.ts });
      });
    });
    await gesture(server, 'send', { as: mira, place: direct, text: 'Row & Squat\ngoblet squat' });
    const answer = await until(() =>
      server.workspace.listMessages(direct).find(({ authorId }) => authorId === 'U0BOT'),
    );
    await server.deliveries.idle();
    expect(answer).toMatchObject({
      text: 'Read: Row &amp; Squat\ngoblet squat',
      threadTs: '1791964800.000100',
    });
    expect(heard).toMatchObject([
      {
        type: 'message',
        channel: direct,
        channel_type: 'im',
        user: mira,
        text: 'Row &amp; Squat\ngoblet squat',
        client_msg_id: expect.stringMatching(/^[\da-f-]{36}$/),
      },
    ]);
    const toApp = server.traffic.list().filter(({ direction }) => direction === 'to-app');
    expect(toApp.map(({ name, outcome }) => [name, outcome])).toEqual([
      ['event message', 'acknowledged'],
      ['event message', 'acknowledged'],
    ]);
  });

  test('an edit of a message in the direct message is told with what it was', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    await startApp(server, (app) => {
      app.event('message', async ({ event }) => {
        heard.push(event);
      });
    });
    await gesture(server, 'send', { as: mira, place: direct, text: 'first' });
    await gesture(server, 'edit', { as: mira, place: direct, ts: '1791964800.000100', text: 'second' });
    await server.deliveries.idle();
    expect(heard.at(-1)).toMatchObject({
      subtype: 'message_changed',
      message: { text: 'second', ts: '1791964800.000100', edited: { user: mira } },
      previous_message: { text: 'first' },
    });
    expect(
      await gesture(server, 'edit', { as: tomas, place: direct, ts: '1791964800.000100', text: 'x' }),
    ).toEqual({
      kind: 'failed',
      message: 'That message is gone.',
    });
  });

  test('a mention in a channel is heard, other talk there is not', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    await startApp(server, (app) => {
      app.event('app_mention', async ({ event }) => {
        heard.push(event.text);
      });
    });
    await gesture(server, 'send', { as: ines, place: team, text: 'good morning' });
    await gesture(server, 'send', { as: ines, place: team, text: '@Evenset week' });
    await server.deliveries.idle();
    expect(heard).toEqual(['<@U0BOT> week']);
  });

  test('a command is acked with words for its sender alone', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    await startApp(server, (app) => {
      app.command('/evenset', async ({ ack, command, respond }) => {
        heard.push(command.text);
        await ack('Got it');
        await respond({ response_type: 'in_channel', text: 'For all' });
      });
    });
    await gesture(server, 'send', { as: mira, place: team, text: '/evenset Row & Squat\ngoblet squat' });
    await until(() => server.workspace.listMessages(team)[1]);
    expect(heard).toEqual(['Row &amp; Squat\ngoblet squat']);
    expect(textsSeenBy(server, mira, team).toSorted()).toEqual(['For all', 'Got it']);
    expect(textsSeenBy(server, tomas, team)).toEqual(['For all']);
  });

  test('commands need to be declared, and do not work in threads', async () => {
    const server = await startServer();
    expect(await gesture(server, 'send', { as: mira, place: team, text: '/other' })).toEqual({
      kind: 'failed',
      message: '/other is no command here. There is: /evenset',
    });
    const { ts } = server.workspace.post({ placeId: team, authorId: mira, text: 'a' });
    expect(
      await gesture(server, 'send', { as: mira, place: team, text: '/evenset', threadTs: ts }),
    ).toMatchObject({ kind: 'failed', message: expect.stringContaining('do not work in threads') });
  });

  test('what the manifest has no scope for does not arrive', async () => {
    const { workspace } = createTestWorkspace({ app: { ...testApp, scopes: ['chat:write'] } });
    const server = await startTestWorkspace({ workspace });
    stops.push(server.stop);
    await startApp(server, () => {});
    await gesture(server, 'send', { as: mira, place: direct, text: 'a' });
    await gesture(server, 'send', { as: mira, place: team, text: '@Evenset a' });
    expect(await gesture(server, 'send', { as: mira, place: team, text: '/evenset' })).toEqual({
      kind: 'failed',
      message: 'Evenset may take no commands: its manifest does not ask for the scope commands.',
    });
    await server.deliveries.idle();
    expect(server.traffic.list().filter(({ direction }) => direction === 'to-app')).toEqual([]);
  });

  test('a button tells who pressed what, on which message', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    const app = await startApp(server, (each) => {
      each.action('approve', async ({ ack, body, respond }) => {
        await ack();
        heard.push(body);
        await respond({ replace_original: true, text: 'Approved' });
      });
    });
    const posted = await app.client.chat.postMessage({ channel: team, text: 'A plan', blocks: [button] });
    const press = (as: string) =>
      gesture(server, 'act', {
        as,
        on: { kind: 'message', place: team, ts: posted.ts },
        blockId: 'next',
        actionId: 'approve',
        values: {},
      });
    expect(await press(tomas)).toEqual({ kind: 'done' });
    const changed = await until<Message>(() =>
      server.workspace.listMessages(team).find(({ text }) => text === 'Approved'),
    );
    expect(changed).not.toHaveProperty('blocks');
    expect(heard).toMatchObject([
      {
        type: 'block_actions',
        user: { id: tomas },
        team: { id: 'T0TEST' },
        container: { type: 'message', message_ts: posted.ts, channel_id: team, is_ephemeral: false },
        message: { text: 'A plan', ts: posted.ts },
        actions: [{ action_id: 'approve', block_id: 'next', type: 'button', value: 'plan-1' }],
      },
    ]);
    expect(await press(tomas)).toMatchObject({ kind: 'failed' });
  });

  test('an ephemeral message can not be pressed by anyone else, and its payload carries no message', async () => {
    const server = await startServer();
    const heard: object[] = [];
    const app = await startApp(server, (each) => {
      each.action('approve', async ({ ack, body }) => {
        await ack();
        heard.push(body);
      });
    });
    const posted = await app.client.chat.postEphemeral({
      channel: team,
      user: mira,
      text: 'For Mira',
      blocks: [button],
    });
    const press = (as: string) =>
      gesture(server, 'act', {
        as,
        on: { kind: 'message', place: team, ts: posted.message_ts },
        blockId: 'next',
        actionId: 'approve',
        values: {},
      });
    expect(await press(tomas)).toMatchObject({ kind: 'failed' });
    expect(await press(mira)).toEqual({ kind: 'done' });
    expect(heard).toHaveLength(1);
    expect(heard[0]).toMatchObject({ container: { is_ephemeral: true } });
    expect(heard[0]).not.toHaveProperty('message');
  });

  test('a modal opens, shows errors at its fields, is sent, and tells when it is closed', async () => {
    const server = await startServer();
    const sent: unknown[] = [];
    const closed: unknown[] = [];
    await startApp(server, (app) => {
      app.command('/evenset', async ({ ack, body, client }) => {
        await ack();
        await client.views.open({ trigger_id: body.trigger_id, view: form });
      });
      app.view('draft_form', async ({ ack, view }) => {
        const text = view.state.values.class?.text?.value ?? '';
        if (text.length < 5) return ack({ response_action: 'errors', errors: { class: 'Too short' } });
        sent.push([text, view.private_metadata]);
        return ack();
      });
      app.view({ callback_id: 'draft_form', type: 'view_closed' }, async ({ ack, view }) => {
        await ack();
        closed.push(view.callback_id);
      });
    });
    const open = async () => {
      await gesture(server, 'send', { as: mira, place: direct, text: '/evenset' });
      return until(() => server.workspace.modalsOf(mira)[0]?.id);
    };
    const first = await open();
    const submit = (as: string, text: string) =>
      gesture(server, 'submit', { as, view: first, values: { class: { text } } });
    expect(await submit(mira, '')).toEqual({
      kind: 'field-errors',
      errors: { class: 'Please fill this in.' },
    });
    expect(await submit(mira, 'abc')).toEqual({ kind: 'field-errors', errors: { class: 'Too short' } });
    expect(await submit(tomas, 'Row & Squat')).toMatchObject({ kind: 'failed' });
    expect(await submit(mira, 'Row & Squat')).toEqual({ kind: 'done' });
    expect(sent).toEqual([['Row & Squat', 'kept']]);
    expect(server.workspace.modalsOf(mira)).toEqual([]);
    await gesture(server, 'close', { as: mira, view: await open() });
    expect(closed).toEqual(['draft_form']);
  });

  test('a sent form can change, stack and clear the windows', async () => {
    const server = await startServer();
    const answers = ['update', 'push', 'clear'] as const;
    let turn = 0;
    await startApp(server, (app) => {
      app.command('/evenset', async ({ ack, body, client }) => {
        await ack();
        await client.views.open({ trigger_id: body.trigger_id, view: form });
      });
      app.view('draft_form', async ({ ack }) => {
        const answer = answers[turn] ?? 'clear';
        turn += 1;
        if (answer === 'clear') return ack({ response_action: answer });
        return ack({ response_action: answer, view: form });
      });
    });
    await gesture(server, 'send', { as: mira, place: direct, text: '/evenset' });
    await until(() => server.workspace.modalsOf(mira)[0]);
    const depths: number[] = [];
    for (const _answer of answers) {
      const view = server.workspace.modalsOf(mira).at(-1)?.id;
      await gesture(server, 'submit', { as: mira, view, values: { class: { text: 'a' } } });
      depths.push(server.workspace.modalsOf(mira).length);
    }
    expect(depths).toEqual([1, 2, 0]);
  });

  test('a message shortcut carries the message; the home opens with its event', async () => {
    const server = await startServer();
    const heard: unknown[] = [];
    await startApp(server, (app) => {
      app.shortcut('draft', async ({ ack, shortcut }) => {
        await ack();
        heard.push(shortcut);
      });
      app.event('app_home_opened', async ({ event, client }) => {
        await client.views.publish({
          user_id: event.user,
          view: { type: 'home', blocks: [{ type: 'divider', block_id: 'line' }] },
        });
      });
    });
    const { ts } = server.workspace.post({ placeId: team, authorId: ines, text: 'a class' });
    await gesture(server, 'shortcut', { as: tomas, place: team, ts, callbackId: 'draft' });
    expect(heard).toMatchObject([
      { type: 'message_action', callback_id: 'draft', user: { id: tomas }, message: { text: 'a class', ts } },
    ]);
    await gesture(server, 'open-app', { as: mira, tab: 'home' });
    const home = await until(() => server.workspace.homeOf(mira));
    expect(home.content.blocks).toEqual([{ type: 'divider', block_id: 'line' }]);
  });
});

describe('an app that does not answer well', () => {
  const startRaw = async (
    answer: (count: number) => number | undefined,
  ): Promise<{ server: LocalWorkspaceServer; headers: Record<string, unknown>[] }> => {
    const server = await startServer();
    const headers: Record<string, unknown>[] = [];
    const app = createServer((request, response) => {
      headers.push(request.headers);
      const status = answer(headers.length);
      if (status !== undefined) response.writeHead(status).end();
    });
    await new Promise<void>((resolve) => app.listen(0, '127.0.0.1', resolve));
    stops.push(async () => {
      app.closeAllConnections();
      app.close();
    });
    const address = app.address();
    if (typeof address !== 'object' || address === null) throw new Error('a port is bound');
    server.connectApp({ url: `http://127.0.0.1:${address.port}/` });
    return { server, headers };
  };

  test('an event comes again, with its number, until it is taken', async () => {
    const { server, headers } = await startRaw((count) => (count < 3 ? 500 : 200));
    await gesture(server, 'send', { as: mira, place: direct, text: 'a' });
    await server.deliveries.idle();
    expect(headers.map((each) => each['x-slack-retry-num'])).toEqual([undefined, '1', '2']);
    expect(headers[1]?.['x-slack-retry-reason']).toBe('http_error');
  });

  test('an event is given up after three repeats', async () => {
    const { server, headers } = await startRaw(() => 500);
    await gesture(server, 'send', { as: mira, place: direct, text: 'a' });
    await server.deliveries.idle();
    expect(headers).toHaveLength(4);
  });

  test('a command without an answer in three seconds is told to its sender alone, and not repeated', async () => {
    const { server, headers } = await startRaw(() => undefined);
    const started = performance.now();
    await gesture(server, 'send', { as: mira, place: team, text: '/evenset' });
    expect(performance.now() - started).toBeGreaterThan(2_900);
    expect(textsSeenBy(server, mira, team)).toEqual([
      '/evenset did not work: Evenset gave no answer within 3 seconds (operation timed out). Try again.',
    ]);
    expect(textsSeenBy(server, tomas, team)).toEqual([]);
    expect(headers).toHaveLength(1);
  });

  test('a refused click is told to who clicked', async () => {
    const { server } = await startRaw(() => 500);
    const accepted = await fetch(`${server.apiUrl}chat.postMessage`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', authorization: `Bearer ${botToken}` },
      body: JSON.stringify({ channel: team, text: 'a', blocks: [button] }),
    });
    const { ts } = await accepted.json();
    expect(
      await gesture(server, 'act', {
        as: mira,
        on: { kind: 'message', place: team, ts },
        blockId: 'next',
        actionId: 'approve',
        values: {},
      }),
    ).toEqual({
      kind: 'failed',
      message: 'This button did not work: Evenset answered 500 (dispatch failed).',
    });
  });

  test('nobody connected', async () => {
    const server = await startServer();
    await gesture(server, 'send', { as: mira, place: team, text: '/evenset' });
    expect(textsSeenBy(server, mira, team)).toEqual([
      "/evenset did not work: Evenset can't be reached (dispatch failed).",
    ]);
  });
});
