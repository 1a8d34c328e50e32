import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { handlers } from '../../../bot/handlers.ts';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import type { SqliteStorage } from '../../../storage/open-storage.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { eventPayload } from '../../helpers/payloads.ts';
import { createFastTime, createTestApp } from '../../helpers/test-app.ts';

const at = '2026-11-02T09:00:00.000Z';
const hourMs = 3_600_000;

let storage: SqliteStorage;
beforeEach(async () => {
  nock.disableNetConnect();
  storage = await openTestStorage();
  await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: at });
});
afterEach(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

/** A workspace with two user groups, whose answers to calls about them can go wrong. */
function workspaceWithGroups() {
  const state = {
    groups: [
      { id: 'S1', handle: 'coaches', user_count: '2' },
      { id: 'S2', handle: 'mornings', user_count: 1 },
    ],
    members: new Map([['S1', ['U2', 'U3']]]),
    trouble: undefined as string | undefined,
  };
  const calls: string[] = [];
  const posts: { readonly channel: string; readonly text: string }[] = [];
  const answer = (method: string, args: Readonly<Record<string, string>>): object => {
    const isGroups = method.startsWith('usergroups.');
    if (isGroups) calls.push(method);
    if (isGroups && state.trouble !== undefined) return { ok: false, error: state.trouble };
    switch (method) {
      case 'auth.test':
        return { ok: true, team_id: 'T1', team: 'Morgen', user_id: 'UBOT', bot_id: 'B1' };
      case 'usergroups.list':
        return { ok: true, usergroups: state.groups };
      case 'usergroups.users.list':
        return { ok: true, users: state.members.get(args.usergroup ?? '') ?? [] };
      case 'conversations.open':
        return { ok: true, channel: { id: `D${args.users?.slice(1)}` } };
      case 'chat.postMessage':
        posts.push({ channel: args.channel ?? '', text: args.text ?? '' });
        return { ok: true, channel: args.channel, ts: `1.${posts.length}` };
      default:
        return { ok: false, error: 'unknown_method' };
    }
  };
  nock('https://slack.com')
    .persist()
    .post(/^\/api\//)
    .reply((uri, body) => {
      const args = Object.fromEntries(new URLSearchParams(String(body)));
      const method = uri.replace('/api/', '');
      if (method.startsWith('usergroups.') && state.trouble === 'down') return [500, 'no'];
      return [200, answer(method, args), { 'content-type': 'application/json' }];
    });
  return { state, calls, posts };
}

async function started(changes: Partial<Settings>) {
  await storage.settings.save('T1', { ...defaultSettings, headCoaches: ['U1'], ...changes }, 'f', at);
  const workspace = workspaceWithGroups();
  const fast = createFastTime(15_000);
  let laterMs = 0;
  const app = createTestApp({
    storage,
    handlers,
    realTime: { ...fast, nowMs: () => fast.nowMs() + laterMs },
  });
  await app.start();
  await app.settle();
  const makeDesk = createMakeDesk({ clock: { now: () => at }, newId: () => 'id', words: english, catalogue });
  return {
    ...workspace,
    /** Head coaches as the next click meets them. */
    coaches: async () =>
      (await storage.inTransaction((stores) => makeDesk('T1', stores))).settings.headCoaches,
    afterHours: async (hours: number) => {
      laterMs += hours * hourMs;
      await app.settle();
    },
    hear: async (event: Record<string, unknown>) => {
      const { failed } = await app.send(eventPayload(event));
      await app.settle();
      if (failed !== undefined) throw failed;
    },
    stop: app.stop,
  };
}

const byGroup = { roleGroups: { headCoaches: 'S1' } } as const;
const left = { type: 'subteam_members_changed', subteam_id: 'S1', added_users: [], removed_users: ['U3'] };

describe('roles by user group', () => {
  test('are read at the start and once an hour, beside those named', async () => {
    const studio = await started(byGroup);
    expect(await studio.coaches()).toEqual(['U1', 'U2', 'U3']);
    const once = ['usergroups.list', 'usergroups.users.list'];
    expect(studio.calls).toEqual(once);
    studio.state.members.set('S1', ['U3']);
    await studio.afterHours(0.9);
    expect(studio.calls).toEqual(once);
    await studio.afterHours(0.2);
    expect(studio.calls).toEqual([...once, ...once]);
    expect(await studio.coaches()).toEqual(['U1', 'U3']);
    await studio.stop();
  });

  test('without a group of a role nothing is ever asked', async () => {
    const studio = await started({});
    await studio.afterHours(30);
    await studio.hear(left);
    expect(studio.calls).toEqual([]);
    await studio.stop();
  });

  test('who goes out has lost the role with the event, whether or not the workspace answers', async () => {
    const studio = await started(byGroup);
    studio.state.trouble = 'down';
    await studio.hear(left);
    expect(await studio.coaches()).toEqual(['U1', 'U2']);
    await studio.stop();
  });

  test('who comes in has the role once the group is read; events of other groups read nothing', async () => {
    const studio = await started(byGroup);
    studio.state.members.set('S1', ['U2', 'U3', 'U4']);
    const before = studio.calls.length;
    await studio.hear({ type: 'subteam_updated', subteam: { id: 'S2', users: ['U9'] } });
    expect(studio.calls).toHaveLength(before);
    await studio.hear({ type: 'subteam_updated', subteam: { id: 'S1', users: ['U2', 'U3', 'U4'] } });
    expect(await studio.coaches()).toEqual(['U1', 'U2', 'U3', 'U4']);
    await studio.stop();
  });

  test('a workspace that is down for a while takes no role away', async () => {
    const studio = await started(byGroup);
    studio.state.trouble = 'down';
    await studio.afterHours(2);
    expect(await studio.coaches()).toEqual(['U1', 'U2', 'U3']);
    expect(studio.posts).toEqual([]);
    await studio.stop();
  });

  test.each([
    ['missing_scope', 'adds the scope usergroups:read'],
    ['plan_upgrade_required', 'plan has no user groups'],
  ])(
    '%s: the group gives no role, and whoever is named is told once a day what to do',
    async (code, said) => {
      const studio = await started(byGroup);
      studio.state.trouble = code;
      await studio.afterHours(2);
      await studio.afterHours(2);
      expect(await studio.coaches()).toEqual(['U1']);
      expect(studio.posts).toEqual([{ channel: 'D1', text: expect.stringContaining(said) }]);
      await studio.stop();
    },
  );

  test('a group that is not there any more gives no role, and that is told', async () => {
    const studio = await started(byGroup);
    studio.state.groups = [];
    await studio.afterHours(2);
    expect(await studio.coaches()).toEqual(['U1']);
    expect(studio.posts).toEqual([
      { channel: 'D1', text: expect.stringContaining('user group for head coaches is not there any more') },
    ]);
    await studio.stop();
  });
});
