import type { HomeView, ModalView } from '@slack/types';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Answer, type Handlers, noReaction, type Reaction } from '../../../bot/handling.ts';
import { english } from '../../../bot/words/en.ts';
import type { Storage } from '../../../domain/ports.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import {
  actionPayload,
  commandPayload,
  eventPayload,
  messagePayload,
  shortcutPayload,
  viewPayload,
} from '../../helpers/payloads.ts';
import { createTestApp, noHandlers } from '../../helpers/test-app.ts';

let storage: Storage;

beforeEach(async () => {
  nock.disableNetConnect();
  storage = await openTestStorage();
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await storage.close();
});

/** Handlers that keep each request, with one reaction for all. */
function recording(reaction: Reaction = noReaction) {
  const requests: unknown[] = [];
  const keep = async (request: unknown) => {
    requests.push(request);
    return reaction;
  };
  const handlers: Handlers = {
    commands: { '/evenset': keep },
    actions: { undo: keep },
    views: { 'draft-form': keep },
    shortcuts: { 'draft-from-message': keep },
    message: keep,
    home: keep,
    left: keep,
    groups: keep,
  };
  return { requests, handlers };
}

async function started(handlers: Handlers) {
  const workspace = createFakeWorkspace();
  const app = createTestApp({ storage, handlers });
  await app.start();
  return { ...app, workspace };
}

describe('what a handler is given', () => {
  test('a command', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const { acks } = await send(commandPayload('week &amp; more', { trigger_id: 'tr' }));
    expect(acks).toEqual([undefined]);
    expect(requests).toEqual([
      { kind: 'command', personId: 'U1', place: 'C1', text: 'week &amp; more', triggerId: 'tr' },
    ]);
    await stop();
  });

  test('a click, found by what stands before the colon', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    await send(actionPayload('undo:2', 'p1/3', { trigger_id: 'tr' }));
    expect(requests).toEqual([
      {
        kind: 'action',
        actionId: 'undo:2',
        value: 'p1/3',
        personId: 'U1',
        message: { place: 'C1', stamp: '1.1', thread: '1.0' },
        triggerId: 'tr',
      },
    ]);
    await stop();
  });

  test.each([
    ['an option', { selected_option: { value: '7' } }, '7'],
    ['several options', { selected_options: [{ value: 'a' }, { value: 'b' }] }, 'a,b'],
    ['a date', { selected_date: '2026-11-09' }, '2026-11-09'],
    ['a person', { selected_user: 'U9' }, 'U9'],
    ['nothing', {}, ''],
  ])('a choice in a modal: %s', async (_name, chosen, value) => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const view = { id: 'V7', private_metadata: 'm', state: { values: { b: { e: { value: 'x' } } } } };
    await send(
      actionPayload('undo', '', {
        trigger_id: 'tr',
        channel: undefined,
        message: undefined,
        response_url: undefined,
        container: { type: 'view', view_id: 'V7' },
        view,
        actions: [{ type: 'any', action_id: 'undo', block_id: 'b', ...chosen }],
      }),
    );
    expect(requests).toEqual([
      {
        kind: 'action',
        actionId: 'undo',
        value,
        personId: 'U1',
        view: { id: 'V7', metadata: 'm', values: { b: 'x' } },
        triggerId: 'tr',
      },
    ]);
    await stop();
  });

  test('a form, its values by block', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const values = {
      class: { any: { type: 'plain_text_input', value: '4 rounds' } },
      room: { any: { type: 'static_select', selected_option: { value: 'big' } } },
      days: { any: { type: 'checkboxes', selected_options: [{ value: 'Mon' }, { value: 'Tue' }] } },
      time: { any: { type: 'timepicker', selected_time: '18:30' } },
      empty: { any: { type: 'plain_text_input', value: null } },
    };
    await send(viewPayload('draft-form', values, { trigger_id: 'tr' }));
    expect(requests).toEqual([
      {
        kind: 'view',
        callbackId: 'draft-form',
        viewId: 'V1',
        metadata: 'kept',
        values: { class: '4 rounds', room: 'big', days: ['Mon', 'Tue'], time: '18:30', empty: undefined },
        personId: 'U1',
        triggerId: 'tr',
      },
    ]);
    await stop();
  });

  test('a message shortcut', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    await send({ ...shortcutPayload('draft-from-message', 'swing 40/20'), trigger_id: 'tr' });
    expect(requests).toEqual([
      {
        kind: 'shortcut',
        callbackId: 'draft-from-message',
        personId: 'U1',
        triggerId: 'tr',
        message: { place: 'C1', stamp: '9.9', text: 'swing 40/20' },
      },
    ]);
    await stop();
  });

  const dm = {
    kind: 'message',
    source: 'direct message',
    personId: 'U1',
    place: 'D1',
    edited: false,
  } as const;
  const edit = {
    type: 'message',
    subtype: 'message_changed',
    channel_type: 'im',
    channel: 'D1',
    message: { user: 'U1', text: 'new', ts: '5.5', edited: { user: 'U1', ts: '6.6' } },
    previous_message: { user: 'U1', text: 'old', ts: '5.5' },
  };
  const mention = {
    type: 'app_mention',
    channel: 'C1',
    user: 'U1',
    text: '<@UBOT> undo',
    ts: '7.7',
    thread_ts: '7.0',
  };

  test.each([
    ['a direct message', messagePayload('hi', { ts: '5.5' }), { ...dm, text: 'hi', stamp: '5.5' }],
    [
      'a reply in a thread',
      messagePayload('undo', { ts: '5.6', thread_ts: '5.5' }),
      { ...dm, text: 'undo', stamp: '5.6', thread: '5.5' },
    ],
    [
      'an edit by a person',
      eventPayload(edit),
      { ...dm, text: 'new', stamp: '5.5', edited: true, editedStamp: '6.6', before: 'old' },
    ],
    [
      'a mention, without the name that opens it',
      eventPayload(mention),
      {
        ...dm,
        source: 'mention',
        place: 'C1',
        text: 'undo',
        stamp: '7.7',
        thread: '7.0',
      },
    ],
    [
      'home',
      eventPayload({ type: 'app_home_opened', tab: 'home', user: 'U1' }),
      { kind: 'home', personId: 'U1' },
    ],
    [
      'its messages, opened',
      eventPayload({ type: 'app_home_opened', tab: 'messages', user: 'U1' }),
      { kind: 'home', personId: 'U1', messages: true },
    ],
    ['that it was taken away', eventPayload({ type: 'app_uninstalled' }), { kind: 'left' }],
  ])('%s', async (_name, payload, request) => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const { acks } = await send(payload);
    expect(acks).toEqual([undefined]);
    expect(requests).toEqual([request]);
    await stop();
  });

  test.each(['file_share', 'me_message', 'thread_broadcast'])('words that come as %s', async (subtype) => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    await send(messagePayload('plank 40', { subtype }));
    expect(requests).toMatchObject([{ kind: 'message', source: 'direct message', text: 'plank 40' }]);
    await stop();
  });

  test.each([
    ['its own message', messagePayload('card', { user: 'UBOT', bot_id: 'B1' })],
    ["another app's message", messagePayload('spam', { bot_id: 'B9' })],
    ['a join', messagePayload('has joined', { subtype: 'group_join' })],
    ['a deletion', messagePayload('', { subtype: 'message_deleted' })],
    ['a message in a channel', messagePayload('hi', { channel_type: 'channel', channel: 'C1' })],
    ['its own edit', eventPayload({ ...edit, message: { ...edit.message, user: 'UBOT', bot_id: 'B1' } })],
    ['a link that unfurled', eventPayload({ ...edit, previous_message: { text: 'new' } })],
    ['home on its about tab', eventPayload({ type: 'app_home_opened', tab: 'about', user: 'U1' })],
    ['a kind it did not ask for', eventPayload({ type: 'reaction_added', user: 'U1' })],
  ])('nothing for %s, which is acked and not kept', async (_name, payload) => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const { acks } = await send(payload);
    expect({ acks, requests, kept: await storage.deliveries.listUnfinished('T1') }).toEqual({
      acks: [undefined],
      requests: [],
      kept: [],
    });
    await stop();
  });
});

describe('what a form is answered', () => {
  const view: ModalView = { type: 'modal', title: { type: 'plain_text', text: 'Next' }, blocks: [] };

  const forms: readonly (readonly [string, Reaction, unknown])[] = [
    ['nothing', noReaction, undefined],
    ['close', { ack: { kind: 'close' }, answers: [] }, undefined],
    [
      'errors',
      { ack: { kind: 'errors', byBlock: { b: 'no' } }, answers: [] },
      { response_action: 'errors', errors: { b: 'no' } },
    ],
    ['update', { ack: { kind: 'update', view }, answers: [] }, { response_action: 'update', view }],
  ];

  test.each(forms)('%s', async (_name, reaction, sent) => {
    const { handlers } = recording(reaction);
    const { send, stop } = await started(handlers);
    expect((await send(viewPayload('draft-form', {}))).acks).toEqual([sent]);
    await stop();
  });
});

describe('a delivery that comes again', () => {
  test.each([
    ['command', commandPayload('x')],
    ['click', actionPayload('undo')],
    ['form', viewPayload('draft-form', {})],
    ['event', messagePayload('hi')],
  ])('%s: acked each time, decided once', async (_name, payload) => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const all = [await send(payload), await send(payload), await send(payload)];
    expect(all.map(({ acks }) => acks)).toEqual([[undefined], [undefined], [undefined]]);
    expect(requests.length).toBe(1);
    await stop();
  });

  test('at the same time: decided once', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    const payload = messagePayload('hi');
    await Promise.all([send(payload), send(payload)]);
    expect(requests.length).toBe(1);
    await stop();
  });

  test('one gesture as two events: decided once', async () => {
    const { requests, handlers } = recording();
    const { send, stop } = await started(handlers);
    await send(messagePayload('hi', { client_msg_id: 'same' }));
    await send(messagePayload('hi', { client_msg_id: 'same' }));
    expect(requests.length).toBe(1);
    expect(await storage.deliveries.listUnfinished('T1')).toEqual([]);
    await stop();
  });

  test('a form handed in again after field errors counts as new', async () => {
    const { requests, handlers } = recording({ ack: { kind: 'errors', byBlock: { b: 'no' } }, answers: [] });
    const { send, stop } = await started(handlers);
    await send(viewPayload('draft-form', {}));
    await send(viewPayload('draft-form', {}));
    expect(requests.length).toBe(2);
    await stop();
  });
});

describe('answers', () => {
  const view: ModalView = { type: 'modal', title: { type: 'plain_text', text: 'Draft' }, blocks: [] };
  const home: HomeView = { type: 'home', blocks: [] };

  const answering = async (payload: Record<string, unknown>, answers: readonly Answer[]) => {
    const { handlers } = recording({ answers });
    const made = await started(handlers);
    await made.send(payload);
    await made.settle();
    await made.stop();
    return made.workspace;
  };

  test('open, update and publish views', async () => {
    const { calls } = await answering(commandPayload(), [
      { kind: 'open view', triggerId: 'tr', view },
      { kind: 'update view', viewId: 'V1', view },
      { kind: 'publish home', personId: 'U1', view: home },
    ]);
    expect(calls.slice(1)).toMatchObject([
      { method: 'views.open', args: { trigger_id: 'tr', view: JSON.stringify(view) } },
      { method: 'views.update', args: { view_id: 'V1', view: JSON.stringify(view) } },
      { method: 'views.publish', args: { user_id: 'U1', view: JSON.stringify(home) } },
    ]);
  });

  const note: Answer = { kind: 'only to you', message: { text: 'psst' } };

  test('only to you, after a command: at its response address', async () => {
    const { responses } = await answering(commandPayload(), [note]);
    expect(responses).toEqual([
      {
        path: '/commands/T1/1/secretpart',
        body: { text: 'psst', response_type: 'ephemeral', replace_original: false },
      },
    ]);
  });

  test.each([
    ['a click in a thread', actionPayload('undo'), { channel: 'C1', thread: '1.0' }],
    ['a direct message', messagePayload('hi'), { channel: 'D1' }],
    ['a reply in a thread', messagePayload('hi', { thread_ts: '5.5' }), { channel: 'D1', thread: '5.5' }],
  ])('only to you, after %s: there', async (_name, payload, where) => {
    const { told, responses } = await answering(payload, [note]);
    expect({ told, responses }).toEqual({
      told: [{ personId: 'U1', text: 'psst', ...where }],
      responses: [],
    });
  });

  test('only to you, after a form: in the direct message', async () => {
    const { posts } = await answering(viewPayload('draft-form', {}), [note]);
    expect(posts).toMatchObject([{ channel: 'D1', text: 'psst' }]);
  });

  test('link to you waits for the notice and gives its link', async () => {
    const workspace = createFakeWorkspace();
    const handlers: Handlers = {
      ...noHandlers,
      commands: {
        '/evenset': async (_request, { stores, studioId, now }) => {
          const payload = { text: 'the class' };
          await stores.notices.enqueue(studioId, {
            key: 'n1',
            to: 'U1',
            action: { kind: 'post' },
            payload,
            causedAt: now,
          });
          const message = (link: string) => ({ text: `It stands here: ${link}` });
          return { answers: [{ kind: 'link to you', noticeKey: 'n1', message }] };
        },
      },
    };
    const app = createTestApp({ storage, handlers });
    await app.start();
    await app.send(commandPayload());
    expect(workspace.responses.map(({ body }) => body.text)).toEqual([
      `It stands here: https://morgen.example/D1/${workspace.posts[0]?.ts}`,
    ]);
    await app.stop();
  });

  test('nothing is asked of the workspace before the ack', async () => {
    const order: string[] = [];
    createFakeWorkspace(
      () => undefined,
      ({ method }) => order.push(method),
    );
    const { handlers } = recording({ answers: [{ kind: 'open view', triggerId: 'tr', view }] });
    const app = createTestApp({ storage, handlers });
    await app.start();
    order.length = 0;
    await app.send(commandPayload(), () => order.push('ack'));
    expect(order).toEqual(['ack', 'views.open']);
    await app.stop();
  });
});

describe('names the app does not know', () => {
  test.each([
    ['command', commandPayload('', { command: '/other' }), english.faults.unknownCommand('/other')],
    [
      'button',
      actionPayload('gone', '', { message: undefined, container: undefined }),
      english.faults.unknownControl,
    ],
  ])('%s: told to the asker alone', async (_name, payload, text) => {
    const { send, stop, workspace } = await started(noHandlers);
    const { acks } = await send(payload);
    expect({ acks, texts: workspace.responses.map(({ body }) => body.text) }).toEqual({
      acks: [undefined],
      texts: [text],
    });
    await stop();
  });
});
