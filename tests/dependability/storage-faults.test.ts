import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import SqliteDatabase from 'better-sqlite3';
import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { handlers } from '../../bot/handlers.ts';
import { enqueueDue, nextDueAt } from '../../bot/notices/due-in-studio.ts';
import { realTime } from '../../bot/real-time.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';
import { createFakeWorkspace } from '../helpers/fake-workspace.ts';
import { commandPayload, messagePayload } from '../helpers/payloads.ts';
import { createTestApp } from '../helpers/test-app.ts';
import { classText, contentOf, instructorId, seedStudio, studioId } from './support/conversation.ts';

let folder: string;
let storage: SqliteStorage;
const file = () => join(folder, 'evenset.sqlite');

beforeEach(async () => {
  nock.disableNetConnect();
  folder = mkdtempSync(join(tmpdir(), 'evenset-faults-'));
  storage = openStorage({ file: file() });
  await seedStudio(storage, '2026-11-01T09:00:00.000Z');
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await storage.close();
  rmSync(folder, { recursive: true });
});

async function startApp(parts: Partial<Parameters<typeof createTestApp>[0]> = {}) {
  const workspace = createFakeWorkspace();
  const backOff = { firstMs: 1_000, mostMs: 8_000, mostAttempts: 45 };
  const app = createTestApp({ storage, handlers, due: { enqueueDue, nextDueAt }, backOff, ...parts });
  await app.start();
  await app.settle();
  return { ...app, workspace };
}

const cardsOf = (posts: readonly { readonly key?: string }[]) =>
  posts.filter(({ key }) => key?.startsWith('card:')).length;

describe('a full disk', () => {
  const pages = (name: 'page_count' | 'max_page_count', value?: number) =>
    Number(storage.database.pragma(value === undefined ? name : `${name} = ${value}`, { simple: true }));

  /** Leaves no page but `left` new ones. */
  const fill = (left: number) => {
    storage.database.exec('VACUUM');
    pages('max_page_count', pages('page_count') + left);
  };

  // From no page at all to enough: the disk fills at each of the writes in turn.
  test.each([0, 1, 2, 3, 4, 6, 8, 12])(
    'with %i pages left: told, nothing lost, reads go on, and all is done once there is space',
    async (left) => {
      const { send, settle, stop, workspace } = await startApp();
      const payload = messagePayload(classText('Row'), { ts: '100.1', user: instructorId });
      fill(left);
      const first = await send(payload);
      expect((await storage.studios.find(studioId))?.name).toBe('Morgen');
      const isDrafted = (await storage.plans.listByAuthor(studioId, instructorId, 1)).length === 1;
      expect(workspace.told.map(({ text }) => /^Not (?:saved|done) yet/.test(text))).toEqual(
        isDrafted ? [] : [true],
      );
      pages('max_page_count', 1_000_000);
      // Without an acknowledgement the workspace delivers it again.
      if (first.acks.length === 0) await send(payload);
      await settle();
      expect(await storage.plans.listByAuthor(studioId, instructorId, 9)).toHaveLength(1);
      expect(cardsOf(workspace.posts)).toBe(1);
      expect(await storage.deliveries.listUnfinished(studioId)).toEqual([]);
      expect(storage.database.pragma('integrity_check', { simple: true })).toBe('ok');
      await stop();
    },
  );

  test('a command: not saved, nothing lost; the same again works once there is space', async () => {
    const { send, settle, stop, workspace } = await startApp();
    const before = contentOf(storage, { notices: true });
    fill(0);
    const command = commandPayload(classText('Row'), { user_id: instructorId });
    await send(command);
    expect(workspace.responses.map(({ body }) => body.text.slice(0, 36))).toEqual([
      'Not saved, and nothing you had is lo',
    ]);
    expect(contentOf(storage, { notices: true })).toBe(before);
    pages('max_page_count', 1_000_000);
    await send(commandPayload(classText('Row'), { user_id: instructorId }));
    await settle();
    expect(cardsOf(workspace.posts)).toBe(1);
    await stop();
  });

  test.each(['markSending', 'markSent'] as const)(
    'that lets no %s be written: each post once',
    async (mark) => {
      let failures = 3;
      const whenFull = <Args extends readonly unknown[]>(write: (...args: Args) => Promise<void>) => {
        return async (...args: Args): Promise<void> => {
          failures -= 1;
          if (failures >= 0) throw Object.assign(new Error('disk full'), { code: 'SQLITE_FULL' });
          return write(...args);
        };
      };
      const { notices } = storage;
      const filling = {
        ...storage,
        notices:
          mark === 'markSent'
            ? { ...notices, markSent: whenFull(notices.markSent) }
            : { ...notices, markSending: whenFull(notices.markSending) },
      };
      for (const key of ['a', 'b', 'c'])
        await notices.enqueue(studioId, {
          key,
          to: 'C1',
          action: { kind: 'post' },
          payload: { text: key },
          causedAt: '2026-11-02T09:00:00.000Z',
        });
      const { settle, stop, workspace } = await startApp({ storage: filling });
      await settle();
      const keys = workspace.posts.flatMap(({ key }) => (key?.length === 1 ? [key] : []));
      expect({ keys, failures: Math.min(failures, 0) < 0 }).toEqual({
        keys: ['a', 'b', 'c'],
        failures: true,
      });
      await stop();
    },
  );
});

describe('a lock held by another program', () => {
  test('stops the loop for less than 300 ms at a time, is told, and all is done by itself after', async () => {
    // On a busy machine only the best of several shows the wait itself.
    const longest: number[] = [];
    do {
      longest.push(await lockedOut(longest.length));
    } while (Math.min(...longest) >= 300 && longest.length < 10);
    expect(Math.min(...longest)).toBeLessThan(300);
  }, 60_000);

  /** Gives the longest stop of the loop while another program held the lock, in milliseconds. */
  async function lockedOut(round: number): Promise<number> {
    const { send, settle, stop, workspace } = await startApp({ realTime, newId: randomUUID });
    const kept = messagePayload(classText('Row'), { ts: `100.${round}`, user: `U2${round}` });
    const other = new SqliteDatabase(file());
    other.exec('BEGIN IMMEDIATE');
    const delay = monitorEventLoopDelay({ resolution: 5 });
    delay.enable();
    const first = await send(kept);
    await send(commandPayload('help', { user_id: `U3${round}` }));
    await wait(400);
    delay.disable();
    other.exec('ROLLBACK');
    other.close();
    expect(first.acks).toEqual([]);
    expect(workspace.told).toHaveLength(1);
    expect(workspace.responses).toHaveLength(1);
    await send(kept);
    await settle();
    expect(await storage.plans.listByAuthor(studioId, `U2${round}`, 9)).toHaveLength(1);
    await stop();
    nock.cleanAll();
    return delay.max / 1e6;
  }
});

describe('a clock that jumps a day either way', () => {
  async function postsWith(moments: readonly string[]) {
    const { send, settle, stop, workspace, clock } = await startApp();
    await send(messagePayload(classText('Row', ', Tue 18:00'), { ts: '100.1', user: instructorId }));
    await settle();
    for (const moment of moments) {
      clock.instant = `2026-11-${moment}:00.000Z`;
      await settle();
    }
    await stop();
    // The coach's list of what came too late to help is named for when it was made.
    const keys = workspace.posts.flatMap(({ key = '' }) => (key.startsWith('missed:') ? [] : [key]));
    return keys.map((key) => key.replace(/id-\d+/g, 'id')).sort();
  }

  const calm = ['02T18:00', '03T15:00', '03T17:00', '03T17:45', '03T18:00', '03T18:30', '04T18:30'];

  test.each([
    [
      'back after the first',
      [
        '02T18:00',
        '03T15:00',
        '03T17:00',
        '02T17:05',
        '03T17:06',
        '03T17:45',
        '03T18:00',
        '03T18:30',
        '04T18:30',
      ],
    ],
    ['forth before it and back', ['03T16:00', '04T16:00', '03T16:30', ...calm]],
    [
      'back and forth between',
      [
        '02T18:00',
        '03T15:00',
        '03T17:00',
        '04T17:00',
        '02T17:00',
        '03T17:45',
        '03T18:00',
        '03T18:30',
        '04T18:30',
      ],
    ],
    [
      'back at the start',
      ['02T18:00', '03T15:00', '03T17:00', '03T17:45', '03T18:00', '02T18:00', '03T18:30', '04T18:30'],
    ],
  ])('%s: each post once', async (_name, moments) => {
    const expected = await postsWith(calm);
    nock.cleanAll();
    await storage.close();
    rmSync(folder, { recursive: true });
    folder = mkdtempSync(join(tmpdir(), 'evenset-faults-'));
    storage = openStorage({ file: file() });
    await seedStudio(storage, '2026-11-01T09:00:00.000Z');
    expect(expected.filter((key) => /^(?:countdown|after)/.test(key))).toHaveLength(2);
    expect(await postsWith(moments)).toEqual(expected);
  });
});
