import { chmodSync, closeSync, mkdirSync, openSync } from 'node:fs';
import { dirname } from 'node:path';
import SqliteDatabase, { type Database } from 'better-sqlite3';

/** A wait for another process stops the event loop, so it is short; then SQLITE_BUSY is thrown. */
const busyMilliseconds = 250;

/** Journal mode is `memory` for a database in memory, and WAL for every file. */
const required = {
  synchronous: 2,
  secure_delete: 1,
  foreign_keys: 1,
  busy_timeout: busyMilliseconds,
  trusted_schema: 0,
};

/** Opens a file, or `:memory:`, ready for durable work; throws where SQLite does not take a pragma. */
export function openDatabase(file: string): Database {
  if (file !== ':memory:') keepPrivate(file);
  const database = new SqliteDatabase(file, { timeout: busyMilliseconds });
  try {
    // WAL at its default, NORMAL, loses acknowledged rows in a power cut; FULL syncs every commit.
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    // What is deleted is overwritten, so that a person who is forgotten is in no free page.
    database.pragma('secure_delete = ON');
    database.pragma('foreign_keys = ON');
    database.pragma('trusted_schema = OFF');
    assertPragmas(database);
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** Throws where the connection could lose or let in what it should not. */
export function assertPragmas(database: Database): void {
  const expected = { ...required, journal_mode: database.memory ? 'memory' : 'wal' };
  const wrong = Object.entries(expected)
    .map(([name, value]) => ({ name, value, found: database.pragma(name, { simple: true }) }))
    .filter(({ value, found }) => found !== value)
    .map(({ name, value, found }) => `${name} is ${String(found)} instead of ${value}`);
  if (wrong.length > 0) throw new Error(`SQLite is not set up for durable work: ${wrong.join(', ')}`);
}

/** A new folder and the file are for their owner alone; SQLite gives its side files the mode of the file. */
function keepPrivate(file: string): void {
  mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
}
