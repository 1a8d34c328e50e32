import { chmodSync, closeSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import type { SqliteStorage } from './open-storage.ts';

/** Throws or rejects where the copy is not sound; afterwards it is on disk. */
export type SecureCopy = (copy: string) => void | Promise<void>;

/**
 * Copies the database to `toFile` while it is in use. The file appears there only once it is whole,
 * checked and on disk; what stood there before is replaced. Throws, leaving that as it was, where copying
 * or a check fails. The check reads the whole copy: where the event loop must go on, `secure` is one that
 * works elsewhere.
 */
export async function backUp(
  { database }: Pick<SqliteStorage, 'database'>,
  toFile: string,
  secure: SecureCopy = secureCopy,
): Promise<void> {
  const copy = `${toFile}.part`;
  remove(copy);
  try {
    closeSync(openSync(copy, 'wx', 0o600));
    await database.backup(copy);
    chmodSync(copy, 0o600);
    await secure(copy);
    renameSync(copy, toFile);
    sync(dirname(toFile));
  } finally {
    remove(copy);
  }
}

/** Checks a copy and brings it to disk; the event loop stands meanwhile, about 3 ms a megabyte. */
export const secureCopy: SecureCopy = (copy) => {
  assertSound(copy);
  sync(copy);
};

/** Throws where the file is no sound database. Reads the whole copy; as one file, without the side files that WAL needs. */
export function assertSound(copy: string): void {
  const database = new SqliteDatabase(copy, { fileMustExist: true });
  try {
    database.pragma('journal_mode = DELETE');
    const integrity = database.pragma('integrity_check', { simple: true });
    if (integrity !== 'ok') throw new Error(`The backup is damaged: ${String(integrity)}`);
    const loose = database.prepare('SELECT count(*) FROM pragma_foreign_key_check').pluck().get();
    if (loose !== 0) throw new Error(`The backup is damaged: ${String(loose)} rows point nowhere.`);
  } finally {
    database.close();
  }
}

export function sync(path: string): void {
  const descriptor = openSync(path, 'r');
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

function remove(copy: string): void {
  for (const file of [copy, `${copy}-wal`, `${copy}-shm`, `${copy}-journal`]) rmSync(file, { force: true });
}
