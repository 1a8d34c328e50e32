import type { Database } from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  SqliteAdapter,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
} from 'kysely';

/** Kysely over one better-sqlite3 connection, every transaction of which begins immediate. */
export function createImmediateDialect(database: Database): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new ImmediateDriver(database),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}

class ImmediateDriver extends SqliteDriver {
  readonly #database: Database;

  constructor(database: Database) {
    super({ database });
    this.#database = database;
  }

  /** A deferred transaction that reads, then writes, fails at once where another process has written. */
  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  /** A full disk makes SQLite roll back by itself; a second rollback would hide the first error. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}
