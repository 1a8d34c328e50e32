import { AsyncLocalStorage } from 'node:async_hooks';
import type { ModalView } from '@slack/types';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Desk, Handlers, Reaction } from '../../../bot/handling.ts';
import { english } from '../../../bot/words/en.ts';
import type { Storage } from '../../../domain/ports.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { actionPayload, commandPayload, messagePayload, viewPayload } from '../../helpers/payloads.ts';
import { canaryToken, createTestApp, noHandlers } from '../../helpers/test-app.ts';

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

/** The same work behind every name. */
function everywhere(work: (desk: Desk) => Promise<Reaction>): Handlers {
  const handler = (_request: unknown, desk: Desk) => work(desk);
  return {
    commands: { '/evenset': handler },
    actions: { undo: handler },
    views: { 'draft-form': handler },
    shortcuts: {},
    message: handler,
    home: handler,
    left: handler,
    groups: handler,
  };
}

async function started(handlers: Handlers, given: Storage = storage) {
  const workspace = createFakeWorkspace();
  const app = createTestApp({ storage: given, handlers });
  await app.start();
  return { ...app, workspace };
}

const diskFull = () => Object.assign(new Error('database or disk is full'), { code: 'SQLITE_FULL' });
const form = { class: { any: { type: 'plain_text_input', value: 'swing 40/20' } } };
const idIn = (text: string | undefined) => /[0-9a-z]+(?=\D*$)/.exec(text ?? '')?.[0] ?? 'none';

describe('a handler that fails', () => {
  const failing = everywhere(async () => {
    throw new Error('canary of what a person wrote');
  });

  test('after a command: told at its response address, with the number in the log', async () => {
    const { send, stop, workspace, lines } = await started(failing);
    const { acks } = await send(commandPayload());
    const text = workspace.responses[0]?.body.text;
    const id = idIn(text);
    expect(acks).toEqual([undefined]);
    expect(text).toBe(english.faults.unexpected(id));
    expect(lines.filter((line) => line.includes(`"faultId":"${id}"`)).length).toBe(1);
    await stop();
  });

  test('after a click: told in the thread', async () => {
    const { send, stop, workspace } = await started(failing);
    await send(actionPayload('undo'));
    expect(workspace.told).toEqual([
      {
        personId: 'U1',
        channel: 'C1',
        thread: '1.0',
        text: english.faults.unexpected(idIn(workspace.told[0]?.text)),
      },
    ]);
    await stop();
  });

  test('after a form: told in the form, whose fields stay filled in', async () => {
    const { send, stop } = await started(failing);
    const { acks } = await send(viewPayload('draft-form', form));
    expect(acks).toMatchObject([
      { response_action: 'errors', errors: { class: expect.stringContaining('fault is on my side') } },
    ]);
    await stop();
  });

  test('after a message: told there, and the event is not run again', async () => {
    const { send, stop, workspace } = await started(failing);
    await send(messagePayload('swing 40/20', { thread_ts: '5.5' }));
    expect(workspace.told.map(({ channel, thread }) => ({ channel, thread }))).toEqual([
      { channel: 'D1', thread: '5.5' },
    ]);
    expect(await storage.deliveries.listUnfinished('T1')).toEqual([]);
    await stop();
  });

  test('leaves nothing of its work behind', async () => {
    const { send, stop } = await started(
      everywhere(async ({ stores, studioId, now }) => {
        const payload = { text: 'half' };
        await stores.notices.enqueue(studioId, {
          key: 'n',
          to: 'C1',
          action: { kind: 'post' },
          payload,
          causedAt: now,
        });
        throw new Error('after the first write');
      }),
    );
    await send(commandPayload());
    expect(await storage.notices.find('T1', 'n')).toBeUndefined();
    await stop();
  });

  test('is told by direct message where the place takes no note', async () => {
    const workspace = createFakeWorkspace(({ method }) =>
      method === 'chat.postEphemeral' ? { kind: 'error', error: 'user_not_in_channel' } : undefined,
    );
    const app = createTestApp({ storage, handlers: failing });
    await app.start();
    await app.send(messagePayload('hi'));
    expect(workspace.posts.map(({ channel }) => channel)).toEqual(['D1']);
    await app.stop();
  });
});

describe('a payload that can not be read', () => {
  test('is acked, told and logged without its content', async () => {
    const { send, stop, workspace, lines } = await started(noHandlers);
    const { acks } = await send(actionPayload('undo', '', { trigger_id: 7 }));
    expect(acks).toEqual([undefined]);
    expect(workspace.responses.length + workspace.told.length).toBe(1);
    expect(lines.join('')).toContain('"errorPaths":["trigger_id"]');
    await stop();
  });
});

describe('a form that does not open', () => {
  test('is told: tap again', async () => {
    const view: ModalView = { type: 'modal', title: { type: 'plain_text', text: 'x' }, blocks: [] };
    const workspace = createFakeWorkspace(({ method }) =>
      method === 'views.open' ? { kind: 'error', error: 'expired_trigger_id' } : undefined,
    );
    const handlers = everywhere(async () => ({ answers: [{ kind: 'open view', triggerId: 'tr', view }] }));
    const app = createTestApp({ storage, handlers });
    await app.start();
    await app.send(commandPayload());
    const text = workspace.responses[0]?.body.text;
    expect(text).toBe(english.faults.formNotOpened(idIn(text?.replace(').', ''))));
    await app.stop();
  });
});

describe('storage that can not write', () => {
  /** The same storage, whose transactions fail while `isFull`. */
  function filling(): { storage: Storage; isFull: boolean } {
    const state = {
      isFull: false,
      storage: {
        ...storage,
        inTransaction: <Result>(work: Parameters<typeof storage.inTransaction<Result>>[0]) =>
          state.isFull ? Promise.reject<Result>(diskFull()) : storage.inTransaction(work),
      },
    };
    return state;
  }

  test('a command: not saved, nothing lost, try again', async () => {
    const disk = filling();
    const { send, stop, workspace } = await started(
      everywhere(async () => ({ answers: [] })),
      disk.storage,
    );
    disk.isFull = true;
    await send(commandPayload());
    const text = workspace.responses[0]?.body.text;
    expect(text).toBe(english.faults.notSaved(idIn(text?.replace(').', ''))));
    disk.isFull = false;
    await stop();
  });

  test('an event that could not be written has no ack, so that it comes again, and is told once', async () => {
    const disk = filling();
    let runs = 0;
    const handlers = everywhere(async () => {
      runs += 1;
      return { answers: [] };
    });
    const { send, stop, workspace } = await started(handlers, disk.storage);
    const payload = messagePayload('hi');
    disk.isFull = true;
    expect(await send(payload)).toMatchObject({ acks: [], failed: { code: 'SQLITE_FULL' } });
    expect(await send(payload)).toMatchObject({ acks: [] });
    disk.isFull = false;
    expect(await send(payload)).toEqual({ acks: [undefined] });
    expect({ runs, told: workspace.told.length }).toEqual({ runs: 1, told: 1 });
    await stop();
  });

  test('a kept event is decided by itself once space is back', async () => {
    const disk = filling();
    let runs = 0;
    const handlers = everywhere(async () => {
      runs += 1;
      return { answers: [] };
    });
    const { send, stop, settle, workspace } = await started(handlers, disk.storage);
    await send(messagePayload('hi'), () => {
      disk.isFull = true;
    });
    expect(runs).toBe(0);
    expect(workspace.told.map(({ text }) => text)).toEqual([expect.stringContaining('Your message is kept')]);
    disk.isFull = false;
    await settle();
    expect({ runs, unfinished: await storage.deliveries.listUnfinished('T1') }).toEqual({
      runs: 1,
      unfinished: [],
    });
    await stop();
  });
});

describe('a process that ends between', () => {
  test('the write of an event and its ack: it is written by then', async () => {
    const { send, stop } = await started(everywhere(async () => ({ answers: [] })));
    const keptAtAck: unknown[] = [];
    await send(messagePayload('hi'), async () => {
      keptAtAck.push(...(await storage.deliveries.listUnfinished('T1')));
    });
    expect(keptAtAck).toMatchObject([{ kind: 'event', body: expect.stringContaining('"text":"hi"') }]);
    await stop();
  });

  test('leaves an event that the next start runs, once', async () => {
    let isDying = true;
    let runs = 0;
    const handlers = everywhere(async () => {
      if (isDying) throw diskFull();
      runs += 1;
      return { answers: [] };
    });
    const payload = messagePayload('hi');
    const first = await started(handlers);
    await first.send(payload);
    await first.stop();
    isDying = false;
    nock.cleanAll();
    const second = await started(handlers);
    await second.send(payload);
    await second.stop();
    expect({ runs, unfinished: await storage.deliveries.listUnfinished('T1') }).toEqual({
      runs: 1,
      unfinished: [],
    });
  });

  test('a command’s change and its ack: the change is there, the answer is not', async () => {
    const handlers = everywhere(async ({ stores, studioId, now }) => {
      const payload = { text: 'kept' };
      await stores.notices.enqueue(studioId, {
        key: 'n',
        to: 'C1',
        action: { kind: 'post' },
        payload,
        causedAt: now,
      });
      return { answers: [] };
    });
    const { send, stop, workspace } = await started(handlers);
    await send(commandPayload(), () => {
      throw new Error('the connection is gone');
    });
    expect(workspace.responses).toEqual([]);
    expect((await storage.notices.find('T1', 'n'))?.key).toBe('n');
    await stop();
  });
});

describe('no call to the workspace is made inside a transaction', () => {
  const inside = new AsyncLocalStorage<true>();
  const watched = (): Storage => ({
    ...storage,
    inTransaction: (work) => storage.inTransaction((stores) => inside.run(true, () => work(stores))),
  });

  async function callsInside(handlers: Handlers): Promise<readonly string[]> {
    const calls: string[] = [];
    const real = globalThis.fetch;
    globalThis.fetch = (input, init) => {
      if (inside.getStore() === true) calls.push(String(input));
      return real(input, init);
    };
    try {
      const { send, settle, stop } = await started(handlers, watched());
      for (const payload of [commandPayload(), actionPayload('undo'), messagePayload('hi')])
        await send(payload);
      await settle();
      await stop();
    } finally {
      globalThis.fetch = real;
    }
    return calls;
  }

  test('with posts, views and notes after every kind of request', async () => {
    let keys = 0;
    const handlers = everywhere(async ({ stores, studioId, now }) => {
      keys += 1;
      const payload = { text: 'post' };
      const key = `n${keys}`;
      await stores.notices.enqueue(studioId, {
        key,
        to: 'C1',
        action: { kind: 'post' },
        payload,
        causedAt: now,
      });
      return { answers: [{ kind: 'only to you', message: { text: 'note' } }] };
    });
    expect(await callsInside(handlers)).toEqual([]);
  });

  test('and the watch would see one', async () => {
    const handlers = everywhere(async () => {
      await fetch('https://slack.com/api/auth.test', { method: 'POST' });
      return { answers: [] };
    });
    expect((await callsInside(handlers)).length).toBe(3);
  });
});

describe('the log', () => {
  test('holds no secret, no response address and nothing a person wrote', async () => {
    const written = 'canary of what a person wrote';
    const handlers = everywhere(async () => {
      throw new Error(`${written} ${canaryToken}`);
    });
    const { send, stop, lines } = await started(handlers);
    await send(commandPayload(written));
    await send(messagePayload(written));
    await send(actionPayload('undo', written));
    await send(viewPayload('draft-form', { class: { any: { value: written } } }));
    await stop();
    const log = lines.join('');
    expect(lines.length).toBeGreaterThan(3);
    expect(lines.map((line) => JSON.parse(line).level)).not.toContain(undefined);
    for (const secret of ['canary', canaryToken, 'secretpart', 'verification'])
      expect(log).not.toContain(secret);
  });
});
