import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { Stores } from '../../domain/ports.ts';
import { assertPragmas, openDatabase } from '../../storage/open-database.ts';
import { openStorage } from '../../storage/open-storage.ts';
import {
  noon,
  notice,
  openTestStorage,
  otherStudioId,
  record,
  savePlan,
  studioId,
  temporaryFolder,
} from './helpers.ts';

describe('opening', () => {
  test('a file is set up for durable work', async () => {
    const { database } = await openTestStorage();
    const pragmas = ['journal_mode', 'synchronous', 'foreign_keys', 'busy_timeout', 'trusted_schema'];
    const found = pragmas.map((name) => [name, database.pragma(name, { simple: true })]);
    expect(Object.fromEntries(found)).toEqual({
      journal_mode: 'wal',
      synchronous: 2,
      foreign_keys: 1,
      busy_timeout: 250,
      trusted_schema: 0,
    });
  });

  test.each([
    ['synchronous = NORMAL', 'synchronous is 1 instead of 2'],
    ['synchronous = OFF', 'synchronous is 0 instead of 2'],
    ['foreign_keys = OFF', 'foreign_keys is 0 instead of 1'],
    ['journal_mode = DELETE', 'journal_mode is delete instead of wal'],
    ['busy_timeout = 5000', 'busy_timeout is 5000 instead of 250'],
  ])('a connection with %s is refused', (pragma, message) => {
    const database = openDatabase(join(temporaryFolder(), 'evenset.db'));
    onTestFinished(() => void database.close());
    database.pragma(pragma);
    expect(() => assertPragmas(database)).toThrow(message);
  });

  test('works in memory', async () => {
    const storage = await openTestStorage(':memory:');
    expect(await storage.studios.find(studioId)).toEqual({
      id: studioId,
      name: 'North Hall',
      createdAt: noon,
    });
  });

  test('a new folder, the file and its side files are for their owner alone', async () => {
    const folder = join(temporaryFolder(), 'data', 'inner');
    const file = join(folder, 'evenset.db');
    await openTestStorage(file);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(existsSync(`${file}-wal`)).toBe(true);
    for (const each of [file, `${file}-wal`, `${file}-shm`]) expect(statSync(each).mode & 0o777).toBe(0o600);
  });

  test('what was written is there after closing and opening again', async () => {
    const file = join(temporaryFolder(), 'evenset.db');
    const first = await openTestStorage(file);
    await savePlan(first);
    await first.close();
    const second = openStorage({ file });
    onTestFinished(() => second.close());
    expect(await second.plans.find(studioId, 'plan-1')).toMatchObject({ id: 'plan-1', currentVersion: 1 });
  });

  test('closing before any query closes the file', async () => {
    const storage = openStorage({ file: join(temporaryFolder(), 'evenset.db') });
    await storage.close();
    expect(storage.database.open).toBe(false);
  });
});

describe('transactions', () => {
  test('begin immediate: the write lock is held before the first statement', async () => {
    const file = join(temporaryFolder(), 'evenset.db');
    const storage = await openTestStorage(file);
    const other = new SqliteDatabase(file, { timeout: 0 });
    onTestFinished(() => void other.close());
    const lockedWhile = () => {
      try {
        other.exec('BEGIN IMMEDIATE; ROLLBACK');
        return false;
      } catch {
        return true;
      }
    };
    expect(lockedWhile()).toBe(false);
    expect(await storage.inTransaction(async () => lockedWhile())).toBe(true);
  });

  test('all or nothing', async () => {
    const storage = await openTestStorage();
    const broken = storage.inTransaction(async (stores) => {
      await stores.notices.enqueue(studioId, notice);
      throw new Error('half way');
    });
    await expect(broken).rejects.toThrow('half way');
    expect(await storage.notices.find(studioId, notice.key)).toBeUndefined();
    const done = await storage.inTransaction((stores) => stores.notices.enqueue(studioId, notice));
    expect(done).toBe(true);
    expect(await storage.notices.find(studioId, notice.key)).toMatchObject({ key: notice.key });
  });

  test('the outer handle inside a transaction throws at once instead of waiting for ever', async () => {
    const storage = await openTestStorage();
    const message = 'only the stores handed to its work';
    await expect(storage.inTransaction(() => storage.studios.list())).rejects.toThrow(message);
    await expect(
      storage.inTransaction(() => storage.inTransaction(async (stores) => stores.studios.list())),
    ).rejects.toThrow(message);
    await expect(
      storage.inTransaction(() => storage.classes.saveLoad(studioId, 'none', [], {})),
    ).rejects.toThrow(message);
    expect(await storage.studios.list()).toHaveLength(2);
  });

  test('others outside wait for their turn', async () => {
    const storage = await openTestStorage();
    const inside = storage.inTransaction(async (stores) => {
      await stores.notices.enqueue(studioId, notice);
      return stores.notices.enqueue(studioId, { ...notice, key: 'second' });
    });
    const outside = storage.notices.listUnfinished(studioId, 10);
    expect(await inside).toBe(true);
    expect((await outside).map(({ key }) => key)).toEqual([notice.key, 'second']);
  });

  test('waiting for anything but storage rolls back and throws', async () => {
    const storage = await openTestStorage();
    const slow = storage.inTransaction(async (stores) => {
      await stores.notices.enqueue(studioId, notice);
      await wait(5);
    });
    await expect(slow).rejects.toThrow('no network call, no timer');
    expect(await storage.notices.find(studioId, notice.key)).toBeUndefined();
  });

  test('stores kept from a transaction that has ended throw', async () => {
    const storage = await openTestStorage();
    const kept = await storage.inTransaction(async (stores): Promise<{ stores: Stores }> => ({ stores }));
    await expect(kept.stores.studios.list()).rejects.toThrow('has ended');
  });

  test('work left running by a transaction may use the outer handle later', async () => {
    const storage = await openTestStorage();
    const { later } = await storage.inTransaction(async () => ({
      later: wait(5).then(() => storage.studios.list()),
    }));
    expect(await later).toHaveLength(2);
  });

  test('an unknown studio is refused', async () => {
    const storage = await openTestStorage();
    await expect(storage.notices.enqueue('nowhere', notice)).rejects.toThrow('FOREIGN KEY');
  });

  test('a plan without its version is refused', async () => {
    const storage = await openTestStorage();
    await expect(storage.plans.create(otherStudioId, record)).rejects.toThrow('FOREIGN KEY');
    expect(await storage.plans.find(otherStudioId, record.id)).toBeUndefined();
  });
});

describe('faults', () => {
  test('a full disk is told as such, reads go on, and writes resume when space returns', async () => {
    const storage = await openTestStorage();
    const { database } = storage;
    const body = 'x'.repeat(200_000);
    const receive = (key: string) =>
      storage.inTransaction((stores) =>
        stores.deliveries.receive(studioId, { key, kind: 'event', body, receivedAt: noon }),
      );
    database.pragma(`max_page_count = ${Number(database.pragma('page_count', { simple: true })) + 4}`);
    const error = await receive('too-big').catch((caught: unknown) => caught);
    expect([storage.isFault(error), error]).toMatchObject([true, { code: 'SQLITE_FULL' }]);
    expect(await storage.studios.list()).toHaveLength(2);
    expect(await storage.deliveries.listUnfinished(studioId)).toEqual([]);
    database.pragma('max_page_count = 1000000');
    expect(await receive('too-big')).toBe(true);
    expect(await storage.deliveries.listUnfinished(studioId)).toHaveLength(1);
  });

  test('work that goes on after a full disk cannot save a half', async () => {
    const storage = await openTestStorage();
    const { database } = storage;
    database.pragma(`max_page_count = ${Number(database.pragma('page_count', { simple: true })) + 4}`);
    const half = storage.inTransaction(async (stores) => {
      await stores.notices.enqueue(studioId, notice);
      const body = 'x'.repeat(200_000);
      const delivery = { key: 'big', kind: 'event', body, receivedAt: noon } as const;
      await stores.deliveries.receive(studioId, delivery).catch(() => undefined);
      await stores.notices.enqueue(studioId, { ...notice, key: 'second' });
    });
    await expect(half).rejects.toThrow('rolled this transaction back');
    expect(await storage.notices.listUnfinished(studioId, 10)).toEqual([]);
  });

  test('a lock held by another process is told after a short wait', async () => {
    const file = join(temporaryFolder(), 'evenset.db');
    const storage = await openTestStorage(file);
    const other = new SqliteDatabase(file);
    onTestFinished(() => void other.close());
    other.exec('BEGIN IMMEDIATE');
    // The wait itself is 250 ms; on a busy machine only the best of several shows it.
    const waits: number[] = [];
    do {
      const begun = performance.now();
      const error = await storage.notices.enqueue(studioId, notice).catch((caught: unknown) => caught);
      waits.push(performance.now() - begun);
      expect([storage.isFault(error), error]).toMatchObject([true, { code: 'SQLITE_BUSY' }]);
    } while (Math.min(...waits) >= 300 && waits.length < 10);
    expect(Math.min(...waits)).toBeLessThan(300);
    const again = await storage.inTransaction(async () => 'begun').catch((caught: unknown) => caught);
    expect([storage.isFault(again), again]).toMatchObject([true, { code: 'SQLITE_BUSY' }]);
    other.exec('ROLLBACK');
    expect(await storage.notices.enqueue(studioId, notice)).toBe(true);
  });

  test.each([
    [Object.assign(new Error('disk I/O error'), { code: 'SQLITE_IOERR_WRITE' }), true],
    [Object.assign(new Error('no space'), { code: 'ENOSPC' }), true],
    [Object.assign(new Error('locked'), { code: 'SQLITE_BUSY_SNAPSHOT' }), true],
    [Object.assign(new Error('a bug'), { code: 'SQLITE_CONSTRAINT_UNIQUE' }), false],
    [new Error('a bug'), false],
    ['text', false],
  ])('%s passes: %s', async (error, passes) => {
    const storage = await openTestStorage();
    expect(storage.isFault(error)).toBe(passes);
    expect(storage.isFault(new Error('around it', { cause: error }))).toBe(passes);
  });
});
