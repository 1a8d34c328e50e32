import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { backUp, secureCopy } from '../../storage/backup.ts';
import { openStorage } from '../../storage/open-storage.ts';
import {
  noon,
  notice,
  openTestStorage,
  record,
  savePlan,
  studioId,
  temporaryFolder,
  version,
} from './helpers.ts';

describe('backup', () => {
  test('is a whole private database of its own, taken while writes go on', async () => {
    const storage = await openTestStorage();
    await savePlan(storage);
    const body = 'x'.repeat(4000);
    for (let n = 0; n < 300; n += 1)
      await storage.deliveries.receive(studioId, {
        key: `before-${n}`,
        kind: 'event',
        body,
        receivedAt: noon,
      });
    const folder = temporaryFolder();
    const file = join(folder, 'backup.db');
    const backup = backUp(storage, file);
    await storage.notices.enqueue(studioId, notice);
    await backup;

    expect(readdirSync(folder)).toEqual(['backup.db']);
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const restored = openStorage({ file });
    onTestFinished(() => restored.close());
    expect(await restored.plans.find(studioId, 'plan-1')).toEqual(record);
    expect(await restored.plans.listVersions(studioId, 'plan-1')).toEqual([version]);
    expect(await restored.deliveries.listUnfinished(studioId)).toHaveLength(300);
  });

  test('replaces the one before, and what a killed backup left', async () => {
    const storage = await openTestStorage();
    const folder = temporaryFolder();
    const file = join(folder, 'backup.db');
    writeFileSync(`${file}.part`, 'half');
    await backUp(storage, file);
    await storage.notices.enqueue(studioId, notice);
    await backUp(storage, file);
    const restored = openStorage({ file });
    onTestFinished(() => restored.close());
    expect(await restored.notices.find(studioId, notice.key)).toMatchObject({ key: notice.key });
  });

  test.each([
    [
      'a row that points nowhere',
      (file: string) => {
        const database = new SqliteDatabase(file);
        database.pragma('foreign_keys = OFF');
        database.exec(`INSERT INTO people VALUES ('nowhere', 'mara', '[]')`);
        database.close();
      },
      '1 rows point nowhere',
    ],
    [
      'an index that misses a row',
      (file: string) => {
        const database = new SqliteDatabase(file);
        database.unsafeMode(true);
        database.pragma('writable_schema = ON');
        database.exec(`UPDATE sqlite_schema SET rootpage =
        (SELECT rootpage FROM sqlite_schema WHERE name = 'plans_by_state') WHERE name = 'notices_unfinished'`);
        database.close();
      },
      'damaged',
    ],
  ])('of a database with %s is refused and the one before stays', async (_, damage, message) => {
    const file = join(temporaryFolder(), 'evenset.db');
    const storage = await openTestStorage(file);
    await storage.notices.enqueue(studioId, notice);
    const target = join(temporaryFolder(), 'backup.db');
    writeFileSync(target, 'the one before');
    await storage.close();
    damage(file);
    const database = new SqliteDatabase(file);
    onTestFinished(() => void database.close());
    await expect(backUp({ database }, target)).rejects.toThrow(message);
    expect(readFileSync(target, 'utf8')).toBe('the one before');
    expect(readdirSync(join(target, '..'))).toEqual(['backup.db']);
  });

  test('appears only once its check, which others do not wait for, is through', async () => {
    const storage = await openTestStorage();
    const folder = temporaryFolder();
    const file = join(folder, 'backup.db');
    const seen: (readonly string[])[] = [];
    await backUp(storage, file, async (copy) => {
      await storage.notices.enqueue(studioId, notice);
      seen.push(readdirSync(folder));
      await secureCopy(copy);
    });
    expect(seen).toEqual([['backup.db.part']]);
    const refused = backUp(storage, file, () => Promise.reject(new Error('not sound')));
    await expect(refused).rejects.toThrow('not sound');
    expect(readdirSync(folder)).toEqual(['backup.db']);
  });

  test('to a folder that is not there is refused', async () => {
    const storage = await openTestStorage();
    await expect(backUp(storage, join(temporaryFolder(), 'none', 'backup.db'))).rejects.toThrow('ENOENT');
  });
});
