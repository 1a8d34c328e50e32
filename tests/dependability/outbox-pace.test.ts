import fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { createClient } from '../../bot/create-client.ts';
import { createLog } from '../../bot/log.ts';
import { backOffMs, defaultBackOff } from '../../bot/notices/back-off.ts';
import { realTime } from '../../bot/real-time.ts';
import { botToken, review, startTestWorkspace, team } from '../bot/local/start-test-workspace.ts';
import { openTestStorage } from '../helpers/open-test-storage.ts';
import { createTestApp } from '../helpers/test-app.ts';

const studioId = 'T0TEST';
const causedAt = '2026-11-02T09:00:00.000Z';

/** Six posts to two channels of a workspace that takes one a second in each. */
async function postSix(pacingMs: number) {
  const server = await startTestWorkspace();
  onTestFinished(server.stop);
  server.limitPosts(true);
  const storage = await openTestStorage();
  onTestFinished(() => storage.close());
  await storage.studios.save({ id: studioId, name: 'Lantern Yard', createdAt: causedAt });
  for (const n of [1, 2, 3])
    for (const to of [team, review])
      await storage.notices.enqueue(studioId, {
        key: `${to} ${n}`,
        to,
        action: { kind: 'post' },
        payload: { text: `${n}` },
        causedAt,
      });
  const log = createLog({ secrets: [], destination: { write: () => {} } });
  const clientOf = () => createClient({ token: botToken, log, apiUrl: server.apiUrl });
  const clients = { interaction: clientOf(), background: clientOf() };
  const backOff = { firstMs: 100, mostMs: 1_000, mostAttempts: 45 };
  const app = createTestApp({ storage, clients, realTime, pacingMs, backOff });
  await app.start();
  await app.settle();
  await app.stop();
  const textsIn = (place: string) => server.workspace.listMessages(place).map(({ text }) => text);
  return {
    posted: [textsIn(team), textsIn(review)],
    refused: server.traffic.list().filter(({ outcome }) => outcome === 'ratelimited').length,
  };
}

const inOrder = ['1', '2', '3'];

describe('posts to a workspace that takes one a second in each channel', () => {
  test('are never refused, and stand in order', async () => {
    expect(await postSix(1_000)).toEqual({ posted: [inOrder, inOrder], refused: 0 });
  });

  test('of a twin in a hurry are refused, and yet all stand there once', async () => {
    const { posted, refused } = await postSix(100);
    expect(posted).toEqual([inOrder, inOrder]);
    expect(refused).toBeGreaterThan(0);
  });
});

describe('the wait before another try', () => {
  test('doubles up to the cap and is spread over its upper half', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
        (attempts, chance) => {
          const full = Math.min(defaultBackOff.mostMs, defaultBackOff.firstMs * 2 ** (attempts - 1));
          const ms = backOffMs(defaultBackOff, attempts, chance);
          expect(ms).toBeGreaterThanOrEqual(full / 2);
          expect(ms).toBeLessThanOrEqual(full);
        },
      ),
    );
  });

  test('is another one for another chance', () => {
    expect(backOffMs(defaultBackOff, 5, 0)).toBe(8_000);
    expect(backOffMs(defaultBackOff, 5, 0.999)).toBe(15_992);
  });

  test('adds up to hours before a notice counts as dead', () => {
    const waits = Array.from({ length: defaultBackOff.mostAttempts - 1 }, (_, n) =>
      backOffMs(defaultBackOff, n + 1, 0),
    );
    expect(waits.reduce((sum, ms) => sum + ms, 0)).toBeGreaterThan(90 * 60_000);
  });
});
