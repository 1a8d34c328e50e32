import { chmodSync, copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { Kysely } from 'kysely';
import { assertSound, sync } from './backup.ts';
import { peopleOf } from './forget-person.ts';
import { forgottenFileOf, personMark, readForgotten } from './forgotten.ts';
import { createImmediateDialect } from './immediate-dialect.ts';
import { openStorage } from './open-storage.ts';
import type { Tables } from './tables.ts';

/** The database is open in a process: it would go on writing to the file that is put aside. */
export class DatabaseInUseError extends Error {}

/**
 * Puts a backup in the place of the database, brought up to date and with every deletion of a person made
 * again that it does not know. What stood there is kept as `<file>.before-restore`. Throws, leaving all as it
 * was, where the backup is not sound or the database is in use. Returns how many deletions were made again.
 */
export async function restore(backupFile: string, databaseFile: string): Promise<number> {
  const part = `${databaseFile}.part`;
  removeAll(part);
  try {
    copyFileSync(backupFile, part);
    chmodSync(part, 0o600);
    assertSound(part);
    assertNotInUse(databaseFile);
    const forgotten = await forgetAgain(part, databaseFile);
    assertSound(part);
    sync(part);
    if (existsSync(databaseFile)) renameSync(databaseFile, `${databaseFile}.before-restore`);
    for (const side of ['-wal', '-shm']) rmSync(`${databaseFile}${side}`, { force: true });
    renameSync(part, databaseFile);
    sync(dirname(databaseFile));
    return forgotten;
  } finally {
    removeAll(part);
  }
}

/** Leaving WAL needs the file for oneself. */
function assertNotInUse(databaseFile: string): void {
  if (!existsSync(databaseFile)) return;
  const database = new SqliteDatabase(databaseFile, { timeout: 0 });
  try {
    if (database.pragma('journal_mode = DELETE', { simple: true }) !== 'delete')
      throw new DatabaseInUseError('The database is in use. Stop Evenset, then restore.');
  } catch (error) {
    if (error instanceof SqliteDatabase.SqliteError && error.code.startsWith('SQLITE_BUSY'))
      throw new DatabaseInUseError('The database is in use. Stop Evenset, then restore.');
    // A damaged database is what a restore is for.
    if (error instanceof DatabaseInUseError) throw error;
  } finally {
    database.close();
  }
}

async function forgetAgain(part: string, databaseFile: string): Promise<number> {
  const deletions = readForgotten(databaseFile);
  const storage = openStorage({ file: part });
  const tables = new Kysely<Tables>({ dialect: createImmediateDialect(storage.database) });
  let made = 0;
  for (const { id: studioId } of await storage.studios.list()) {
    const known = await tables
      .selectFrom('forgotten_marks')
      .select(['mark', 'forgotten_at'])
      .where('studio_id', '=', studioId)
      .execute();
    const open = deletions.filter(
      ({ mark, at }) => !known.some((each) => each.mark === mark && each.forgotten_at === at),
    );
    for (const personId of await peopleOf(tables, studioId)) {
      const deletion = open.find(({ mark }) => mark === personMark(studioId, personId));
      if (deletion === undefined) continue;
      await storage.inTransaction(({ care }) => care.forgetPerson(studioId, personId, [], deletion.at));
      made += 1;
    }
  }
  await storage.close();
  return made;
}

function removeAll(part: string): void {
  for (const file of [part, `${part}-wal`, `${part}-shm`, `${part}-journal`, forgottenFileOf(part)])
    rmSync(file, { force: true });
}
