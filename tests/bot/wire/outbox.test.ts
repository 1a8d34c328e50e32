import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Notice, Storage } from '../../../domain/ports.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { type Call, createFakeWorkspace, type Fault, type Posted } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { createFastTime, createTestApp } from '../../helpers/test-app.ts';

const causedAt = '2026-11-02T09:00:00.000Z';
const backOff = { firstMs: 1_000, mostMs: 8_000, mostAttempts: 6 };
const opened: Storage[] = [];

beforeEach(() => {
  nock.disableNetConnect();
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await Promise.all(opened.splice(0).map((storage) => storage.close()));
});

const post = (key: string, to: string, text = key): Notice => ({
  key,
  to,
  action: { kind: 'post' },
  payload: { text },
  causedAt,
});
const reply = (key: string, to: string, noticeKey: string): Notice => ({
  ...post(key, to),
  action: { kind: 'post', thread: { noticeKey } },
});
const update = (key: string, to: string, of: string): Notice => ({
  ...post(key, to),
  action: { kind: 'update', of },
});

/** A class text and its card, a countdown with two changes, a note to the coach. */
const story: readonly Notice[] = [
  post('class', 'U1'),
  reply('card', 'U1', 'class'),
  post('countdown', 'C1'),
  update('countdown-15', 'C1', 'countdown'),
  reply('details', 'C1', 'countdown'),
  post('note', 'U7'),
  update('countdown-5', 'C1', 'countdown'),
];

async function opens(
  notices: readonly Notice[],
  faultFor?: (call: Call, place: number) => Fault | undefined,
) {
  const storage = await openTestStorage();
  opened.push(storage);
  const workspace = createFakeWorkspace(faultFor);
  const time = createFastTime(15_000);
  const app = createTestApp({ storage, backOff, realTime: time });
  await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: causedAt });
  await storage.settings.save('T1', { ...defaultSettings, headCoaches: ['U9'] }, 'f', causedAt);
  for (const notice of notices) await storage.notices.enqueue('T1', notice);
  return { ...app, storage, workspace, time };
}

async function run(notices: readonly Notice[], faultFor?: (call: Call, place: number) => Fault | undefined) {
  const made = await opens(notices, faultFor);
  await made.start();
  await made.settle();
  await made.stop();
  return made;
}

/** What people see, whatever the stamps: threads by the text they hang under. */
function seen(posts: readonly Posted[]) {
  return posts
    .map(({ channel, key, text, thread }) => ({
      channel,
      key,
      text,
      under: posts.find(({ ts }) => ts === thread)?.key,
    }))
    .sort((a, b) => `${a.channel}${a.key}`.localeCompare(`${b.channel}${b.key}`));
}

const expected = [
  { channel: 'C1', key: 'countdown', text: 'countdown-5', under: undefined },
  { channel: 'C1', key: 'details', text: 'details', under: 'countdown' },
  { channel: 'D1', key: 'card', text: 'card', under: 'class' },
  { channel: 'D1', key: 'class', text: 'class', under: undefined },
  { channel: 'D7', key: 'note', text: 'note', under: undefined },
];

describe('the outbox', () => {
  test('posts each notice once, in its thread, and later changes in its place', async () => {
    const { workspace, storage } = await run(story);
    expect(seen(workspace.posts)).toEqual(expected);
    expect((await storage.notices.find('T1', 'card'))?.sentTo).toEqual({
      place: 'D1',
      stamp: workspace.posts.find(({ key }) => key === 'card')?.ts,
    });
  });

  test('a later change of the same message makes an unsent earlier one needless', async () => {
    const { workspace, storage } = await run(story);
    expect(workspace.callsOf('chat.update').map(({ args }) => args.text)).toEqual(['countdown-5']);
    expect((await storage.notices.find('T1', 'countdown-15'))?.state).toBe('sent');
  });

  test('a change keeps the key of the message in its metadata', async () => {
    const { workspace } = await run(story);
    expect(JSON.parse(workspace.callsOf('chat.update')[0]?.args.metadata ?? '')).toEqual({
      event_type: 'evenset_notice',
      event_payload: { key: 'countdown' },
    });
  });

  const faults: readonly Fault['kind'][] = ['429', '500', 'hang', 'lost', 'broken'];
  const positions = [1, 2, 3, 4, 5, 6, 7, 8];

  test.each(faults.flatMap((kind) => positions.map((place) => [kind, place] as const)))(
    'fault %s at call %i ends as if there had been none',
    async (kind, at) => {
      const fault: Fault = kind === 'error' ? { kind, error: 'fatal_error' } : { kind };
      let outgoing = 0;
      const { workspace, storage } = await run(story, ({ method }) => {
        if (method === 'auth.test') return undefined;
        outgoing += 1;
        return outgoing === at ? fault : undefined;
      });
      expect(seen(workspace.posts)).toEqual(expected);
      expect(await storage.notices.listUnfinished('T1', 10)).toEqual([]);
    },
  );

  test('a post whose answer is lost is looked for before it is tried again', async () => {
    let lost = false;
    const { workspace } = await run([post('a', 'C1')], ({ method }) => {
      if (method !== 'chat.postMessage' || lost) return undefined;
      lost = true;
      return { kind: 'lost' };
    });
    expect(workspace.calls.map(({ method }) => method)).toEqual([
      'auth.test',
      'chat.postMessage',
      'conversations.history',
    ]);
  });

  test('a row left *sending* by a killed process is looked for first', async () => {
    const made = await opens([post('a', 'C1'), post('b', 'C1')]);
    await made.storage.notices.markSending('T1', 'a', causedAt);
    await made.storage.notices.markSending('T1', 'b', causedAt);
    made.workspace.posts.push({ channel: 'C1', ts: '5.5', text: 'a', key: 'a' });
    await made.start();
    await made.settle();
    await made.stop();
    expect(seen(made.workspace.posts).map(({ key }) => key)).toEqual(['a', 'b']);
    expect((await made.storage.notices.find('T1', 'a'))?.sentTo).toEqual({ place: 'C1', stamp: '5.5' });
  });

  test('waits as long as the workspace asks', async () => {
    let refused = false;
    const { time } = await run([post('a', 'C1')], ({ method }) => {
      if (method !== 'chat.postMessage' || refused) return undefined;
      refused = true;
      return { kind: '429' };
    });
    expect(time.waits).toContain(2_000);
  });

  test('backs off in doubling steps, then gives up and tells the head coach what was not posted', async () => {
    const { workspace, storage, time } = await run([post('a', 'C1', 'Class at 18:00')], ({ method, args }) =>
      method === 'chat.postMessage' && args.channel === 'C1' ? { kind: '500' } : undefined,
    );
    expect(time.waits).toEqual([750, 1_500, 3_000, 6_000, 6_000]);
    expect((await storage.notices.find('T1', 'a'))?.state).toBe('dead');
    expect(workspace.posts).toMatchObject([{ channel: 'D9', key: 'dead:a:U9' }]);
    expect(workspace.posts[0]?.text).toContain('Class at 18:00');
  });

  test('a refusal that would repeat is final at once, and holds up nothing behind it', async () => {
    const { workspace, storage } = await run([post('a', 'C1'), post('b', 'C1')], ({ method, args }) =>
      method === 'chat.postMessage' && args.text === 'a'
        ? { kind: 'error', error: 'is_archived' }
        : undefined,
    );
    expect((await storage.notices.find('T1', 'a'))?.lastError).toBe('is_archived');
    expect(workspace.posts.map(({ key }) => key).sort()).toEqual(['b', 'dead:a:U9']);
  });

  test('what hangs under a dead notice dies with it, told once', async () => {
    const { workspace, storage } = await run(
      [post('a', 'C1'), reply('b', 'C1', 'a'), update('c', 'C1', 'a')],
      ({ method, args }) =>
        method === 'chat.postMessage' && args.channel === 'C1'
          ? { kind: 'error', error: 'is_archived' }
          : undefined,
    );
    const states = await Promise.all(['a', 'b', 'c'].map((key) => storage.notices.find('T1', key)));
    expect(states.map((notice) => notice?.state)).toEqual(['dead', 'dead', 'dead']);
    expect(workspace.posts.map(({ key }) => key)).toEqual(['dead:a:U9']);
  });

  test('one place that fails does not hold up another', async () => {
    const { workspace } = await run([post('a', 'C1'), post('b', 'C2')], ({ args }) =>
      args.channel === 'C1' ? { kind: '500' } : undefined,
    );
    expect(workspace.posts.map(({ key }) => key)).toContain('b');
  });

  test('blocks the workspace does not know: plainer ones, then text alone', async () => {
    const notice: Notice = {
      ...post('a', 'C1', 'numbers'),
      payload: {
        text: 'numbers',
        blocks: [{ type: 'data_visualization' }],
        fallbackBlocks: [{ type: 'section', block_id: 's' }],
      },
    };
    let refused = 0;
    const shown = async (refusals: number) => {
      refused = 0;
      nock.cleanAll();
      const { workspace } = await run([notice], ({ method }) => {
        if (method !== 'chat.postMessage' || refused === refusals) return undefined;
        refused += 1;
        return { kind: 'error', error: 'invalid_blocks' };
      });
      return workspace.posts.map(({ text, blocks }) => ({ text, blocks }));
    };
    expect(await shown(0)).toEqual([{ text: 'numbers', blocks: [{ type: 'data_visualization' }] }]);
    expect(await shown(1)).toEqual([{ text: 'numbers', blocks: [{ type: 'section', block_id: 's' }] }]);
    expect(await shown(2)).toEqual([{ text: 'numbers', blocks: undefined }]);
  });

  test('holds posts to one place a second apart, and other places back for none of it', async () => {
    const storage = await openTestStorage();
    opened.push(storage);
    createFakeWorkspace();
    const time = createFastTime(15_000);
    const app = createTestApp({ storage, realTime: time, pacingMs: 1_000 });
    await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: causedAt });
    for (const key of ['a', 'b', 'c']) await storage.notices.enqueue('T1', post(key, 'C1'));
    await app.start();
    await app.settle();
    await app.stop();
    expect(time.waits).toEqual([1_000, 1_000]);
  });
});
