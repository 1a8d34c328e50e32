import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';

/** Real SQLite, in memory. */
export async function openTestStorage(): Promise<SqliteStorage> {
  return openStorage({ file: ':memory:' });
}
