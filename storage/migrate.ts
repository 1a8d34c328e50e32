import type { Database } from 'better-sqlite3';
import { migrations as allMigrations } from './migrations/migrations.ts';

/** The database was written by a newer Evenset than this one. */
export class NewerDatabaseError extends Error {
  readonly databaseVersion: number;
  readonly knownVersion: number;

  constructor(databaseVersion: number, knownVersion: number) {
    super(
      `The database has version ${databaseVersion}; this Evenset knows versions up to ${knownVersion}. ` +
        'Start a newer Evenset, or restore a backup from before the update.',
    );
    this.name = 'NewerDatabaseError';
    this.databaseVersion = databaseVersion;
    this.knownVersion = knownVersion;
  }
}

/** Brings the tables up to date in one immediate transaction: all open migrations or none. */
export function migrate(database: Database, migrations: readonly string[] = allMigrations): void {
  database
    .transaction(() => {
      const version = versionOf(database);
      if (version > migrations.length) throw new NewerDatabaseError(version, migrations.length);
      for (const sql of migrations.slice(version)) database.exec(sql);
      database.pragma(`user_version = ${migrations.length}`);
    })
    .immediate();
}

function versionOf(database: Database): number {
  return Number(database.pragma('user_version', { simple: true }));
}
