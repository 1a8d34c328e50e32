import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Due } from '../../../bot/notices/clock-loop.ts';
import type { Storage } from '../../../domain/ports.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import { commandPayload } from '../../helpers/payloads.ts';
import { createFastTime, createTestApp, noHandlers } from '../../helpers/test-app.ts';

const moments = ['2026-11-02T10:00:00.000Z', '2026-11-02T11:00:00.000Z', '2026-11-03T10:00:00.000Z'];
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

/** One post for each of the moments, once it is reached. */
const due: Due = {
  enqueueDue: async ({ stores, studioId, now }) => {
    for (const moment of moments.filter((each) => each <= now)) {
      const payload = { text: moment };
      await stores.notices.enqueue(studioId, {
        key: moment,
        to: 'C1',
        action: { kind: 'post' },
        payload,
        causedAt: now,
      });
    }
  },
  nextDueAt: async ({ now }) => moments.find((each) => each > now),
};

async function started(mostMs = 15_000) {
  const workspace = createFakeWorkspace();
  const time = createFastTime(mostMs);
  const app = createTestApp({ storage, due, realTime: time });
  await app.start();
  return { ...app, workspace, time, texts: () => workspace.posts.map(({ text }) => text) };
}

describe('the clock loop', () => {
  test('a tick posts what is due by now, once', async () => {
    const { clock, tick, settle, stop, texts } = await started();
    clock.instant = '2026-11-02T10:30:00.000Z';
    await tick();
    await tick();
    await settle();
    expect(texts()).toEqual([moments[0]]);
    await stop();
  });

  test('names the next moment', async () => {
    const { clock, nextDueAt, stop } = await started();
    const found: unknown[] = [];
    for (const now of ['2026-11-02T09:00:00.000Z', ...moments]) {
      clock.instant = now;
      found.push(await nextDueAt());
    }
    expect(found).toEqual([...moments, undefined]);
    await stop();
  });

  test('a clock that jumps a day either way neither repeats nor drops', async () => {
    const { clock, settle, stop, texts } = await started();
    for (const now of [
      '2026-11-02T10:00',
      '2026-11-01T10:00',
      '2026-11-03T09:00',
      '2026-11-02T09:00',
      '2026-11-04T09:00',
    ]) {
      clock.instant = `${now}:00.000Z`;
      await settle();
    }
    expect(texts()).toEqual(moments);
    await stop();
  });

  test('looks again within 30 s by itself', async () => {
    const { clock, stop, time, texts } = await started(60_000);
    clock.instant = '2026-11-02T10:00:00.000Z';
    await expect.poll(texts).toEqual([moments[0]]);
    expect(Math.max(...time.waits)).toBe(30_000);
    await stop();
  });

  test('waits no longer than until the next moment', async () => {
    const { clock, stop, time } = await started(60_000);
    clock.instant = '2026-11-02T10:59:50.000Z';
    await expect.poll(() => time.waits).toContain(10_000);
    await stop();
  });

  test('looks soon after a request changed something', async () => {
    const { clock, send, stop, texts } = await started();
    clock.instant = '2026-11-02T10:00:00.000Z';
    await send(commandPayload('', { command: '/other' }));
    await expect.poll(texts).toEqual([moments[0]]);
    await stop();
  });

  test('goes on after a look that failed', async () => {
    const workspace = createFakeWorkspace();
    let isFailing = true;
    const app = createTestApp({
      storage,
      handlers: noHandlers,
      due: {
        ...due,
        enqueueDue: async (desk) => {
          if (isFailing) throw new Error('once');
          await due.enqueueDue(desk);
        },
      },
    });
    await app.start();
    app.clock.instant = '2026-11-02T10:00:00.000Z';
    await app.settle();
    isFailing = false;
    await app.settle();
    expect(workspace.posts.map(({ text }) => text)).toEqual([moments[0]]);
    expect(app.lines.join('')).toContain('due notices not looked at');
    await app.stop();
  });
});
