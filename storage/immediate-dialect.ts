import type { Database } from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  SqliteAdapter,
  type SqliteDatabase,
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
    super({ database: keepingStatements(database) });
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

/** Lists of another length make another statement, so their number has no natural end. */
const mostStatements = 500;

/** SQLite compiles a statement in about the time it takes to run it, so each is compiled once. */
function keepingStatements(database: Database): SqliteDatabase {
  const kept = new Map<string, ReturnType<SqliteDatabase['prepare']>>();
  return {
    close: () => database.close(),
    prepare: (sql) => {
      const known = kept.get(sql);
      if (known !== undefined) return known;
      if (kept.size >= mostStatements) kept.clear();
      const statement = database.prepare<readonly unknown[]>(sql);
      kept.set(sql, statement);
      return statement;
    },
  };
}
