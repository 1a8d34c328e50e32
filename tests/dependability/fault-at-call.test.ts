import nock from 'nock';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createClient } from '../../bot/create-client.ts';
import { handlers } from '../../bot/handlers.ts';
import { createLog } from '../../bot/log.ts';
import { enqueueDue, nextDueAt } from '../../bot/notices/due-in-studio.ts';
import { type Call, createFakeWorkspace, type Fault } from '../helpers/fake-workspace.ts';
import { openTestStorage } from '../helpers/open-test-storage.ts';
import { createFastTime, createTestApp } from '../helpers/test-app.ts';
import { contentOf, holdConversation, seedStudio, withPlainIds } from './support/conversation.ts';

type FaultAt = (call: Call, place: number) => Fault | undefined;

const kinds = ['429', '500', 'hang', 'lost', 'broken'] as const;

/** The whole conversation with the real handlers; calls are counted after the app has asked who it is. */
async function run(faultAt: FaultAt, timeoutMs = 250) {
  const storage = await openTestStorage();
  let outgoing = 0;
  const workspace = createFakeWorkspace((call) => {
    if (call.method === 'auth.test') return undefined;
    outgoing += 1;
    return faultAt(call, outgoing);
  });
  const log = createLog({ secrets: [], destination: { write: () => {} } });
  const clientOf = () => createClient({ token: 'xoxb-1', log, timeoutMs });
  const app = createTestApp({
    storage,
    handlers,
    due: { enqueueDue, nextDueAt },
    clients: { interaction: clientOf(), background: clientOf() },
    realTime: createFastTime(15_000),
    backOff: { firstMs: 1_000, mostMs: 8_000, mostAttempts: 4 },
  });
  // After the hour of the Monday report, which has tests of its own.
  await seedStudio(storage, '2026-11-02T08:00:00.000Z');
  await app.start();
  await holdConversation(app, storage);
  await app.stop();
  nock.cleanAll();
  const seen = withPlainIds(
    JSON.stringify(
      workspace.posts
        .filter(({ key }) => key !== undefined)
        .map(({ ts: _ts, thread, ...post }) => ({
          ...post,
          under: workspace.posts.find(({ ts }) => ts === thread)?.key ?? thread,
        }))
        .sort((a, b) =>
          `${a.channel} ${a.under} ${a.text}`.localeCompare(`${b.channel} ${b.under} ${b.text}`),
        ),
      undefined,
      1,
    ),
  );
  const notices = storage.database
    .prepare('SELECT notice_key AS key, state, last_error AS error, goes_to AS place FROM notices')
    .all()
    .map((row) => noticeRow(row));
  const result = {
    seen,
    everything: contentOf(storage, { notices: true }),
    changes: contentOf(storage, { notices: false }),
    notices,
    calls: workspace.calls.filter(({ method }) => method !== 'auth.test'),
    /** What one person alone was told. */
    told: [
      ...workspace.told.map(({ text }) => text),
      ...workspace.responses.map(({ body }) => body.text),
      ...workspace.posts.filter(({ key }) => key === undefined).map(({ text }) => text),
    ],
  };
  await storage.close();
  return result;
}

function noticeRow(row: unknown) {
  const { key, state, error, place }: Record<string, unknown> = { ...(typeof row === 'object' ? row : {}) };
  return { key: withPlainIds(String(key)), state: String(state), error: String(error), place: String(place) };
}

/** The same call made again, whatever its stamp. */
const nameOf = ({ method, args }: Call) =>
  [method, args.channel, args.users, args.metadata, args.text, args.user_id].join(' ');

let calm: Awaited<ReturnType<typeof run>>;
beforeAll(async () => {
  nock.disableNetConnect();
  // On a busy machine no call may seem lost.
  calm = await run(() => undefined, 10_000);
});
afterAll(() => {
  nock.cleanAll();
  nock.enableNetConnect();
});

/** More than the conversation makes, so that none of its places is left out. */
const places = Array.from({ length: 32 }, (_, place) => place + 1);

describe('a call that fails', () => {
  test('the conversation without a fault is worth comparing with', () => {
    expect(calm.calls.length).toBeLessThanOrEqual(places.length);
    expect([...new Set(calm.calls.map(({ method }) => method))].sort()).toEqual([
      'chat.getPermalink',
      'chat.postMessage',
      'chat.update',
      'conversations.open',
      'views.open',
      'views.publish',
    ]);
    expect(calm.notices.every(({ state }) => state === 'sent')).toBe(true);
    expect(calm.changes).toContain('"approved"');
  });

  describe.each(kinds)('once, with %s', (kind) => {
    test.each(places)('at call %i: ends as if it had not', async (at) => {
      const { seen, everything, told } = await run((_call, place) => (place === at ? { kind } : undefined));
      expect(seen).toBe(calm.seen);
      expect(everything).toBe(calm.everything);
      expect(told.length).toBeGreaterThanOrEqual(calm.told.length);
      // Whatever failed was an answer; the change before it stands.
      expect(told.filter((text) => text.includes('nothing was changed'))).toEqual([]);
    });
  });

  describe('for good', () => {
    const faults = places.map((place) => [kinds[place % kinds.length] ?? '500', place] as const);
    test.each(faults)(
      'with %s at call %i: no change is lost, and what was not posted is told',
      async (kind, at) => {
        let broken: string | undefined;
        const { changes, notices, told } = await run((call, place) => {
          if (place === at) broken = nameOf(call);
          return nameOf(call) === broken ? { kind } : undefined;
        });
        expect(changes).toBe(calm.changes);
        const own = notices.filter(({ key }) => !key.startsWith('dead:'));
        expect(own.map(({ key }) => key)).toEqual(calm.notices.map(({ key }) => key));
        expect(own.filter(({ state }) => state !== 'sent' && state !== 'dead')).toEqual([]);
        const dead = own.filter(
          ({ state, error }) => state === 'dead' && error !== 'its message was not posted',
        );
        for (const { key } of dead)
          expect(notices).toContainEqual(expect.objectContaining({ key: `dead:${key}:U9` }));
        expect(told.filter((text) => text.includes('nothing was changed'))).toEqual([]);
      },
    );
  });

  test('a workspace that stays down keeps every change and every notice', async () => {
    const { changes, notices } = await run(() => ({ kind: '500' }));
    expect(changes).toBe(calm.changes);
    expect(notices.filter(({ key }) => !key.startsWith('dead:')).map(({ key }) => key)).toEqual(
      calm.notices.map(({ key }) => key),
    );
  });
});
