import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { backUp, type SecureCopy } from './backup.ts';
import type { SqliteStorage } from './open-storage.ts';

const backupName = /^evenset-\d{4}-\d{2}-\d{2}[\dTZ]*\.sqlite$/;
const kept = 14;
const keptMilliseconds = kept * 86_400_000;

/**
 * Backs up once a day into a folder and keeps the newest fourteen; what a restore put aside goes as they do. Resolves to the new file, or to nothing
 * where today's is there. `now` is an ISO instant; days are UTC's. Throws as `backUp` does.
 */
export async function backUpDaily(
  storage: Pick<SqliteStorage, 'database'>,
  folder: string,
  now: string,
  secure?: SecureCopy,
): Promise<string | undefined> {
  const file = join(folder, `evenset-${now.slice(0, 10)}.sqlite`);
  if (existsSync(file)) return undefined;
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  await backUp(storage, file, secure);
  const files = readdirSync(folder)
    .filter((name) => backupName.test(name))
    .toSorted();
  for (const old of files.slice(0, -kept)) rmSync(join(folder, old));
  const aside = `${storage.database.name}.before-restore`;
  if (existsSync(aside) && statSync(aside).mtimeMs < Date.parse(now) - keptMilliseconds) rmSync(aside);
  return file;
}
