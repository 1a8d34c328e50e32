import { existsSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { backUp } from './backup.ts';
import type { SqliteStorage } from './open-storage.ts';

const backupName = /^evenset-\d{4}-\d{2}-\d{2}\.sqlite$/;
const kept = 14;

/**
 * Backs up once a day into a folder and keeps the newest fourteen. Resolves to the new file, or to nothing
 * where today's is there. `now` is an ISO instant; days are UTC's. Throws as `backUp` does.
 */
export async function backUpDaily(
  storage: Pick<SqliteStorage, 'database'>,
  folder: string,
  now: string,
): Promise<string | undefined> {
  const file = join(folder, `evenset-${now.slice(0, 10)}.sqlite`);
  if (existsSync(file)) return undefined;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  await backUp(storage, file);
  const files = readdirSync(folder)
    .filter((name) => backupName.test(name))
    .toSorted();
  for (const old of files.slice(0, -kept)) rmSync(join(folder, old));
  return file;
}
