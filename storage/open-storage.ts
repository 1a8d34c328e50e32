import type { Database } from 'better-sqlite3';
import { Kysely, sql } from 'kysely';
import type { Storage, Stores } from '../domain/ports.ts';
import { type Access, createAccess } from './access.ts';
import { createCareStore, type Traces } from './care-store.ts';
import { createClassStore } from './class-store.ts';
import { createCommentStore } from './comment-store.ts';
import { createDeliveryStore } from './delivery-store.ts';
import { type Forgotten, openForgotten } from './forgotten.ts';
import { createImmediateDialect } from './immediate-dialect.ts';
import { migrate } from './migrate.ts';
import { createNoticeStore } from './notice-store.ts';
import { openDatabase } from './open-database.ts';
import { createPeopleStore } from './people-store.ts';
import { createPlanStore } from './plan-store.ts';
import { createReviewStore } from './review-store.ts';
import { createReadSettings, createSettingsStore, type ReadSettings } from './settings-store.ts';
import { isStorageFault } from './storage-fault.ts';
import { createStudioStore } from './studio-store.ts';
import type { Tables } from './tables.ts';
import { createTimetableStore } from './timetable-store.ts';
import { createUserGroupStore } from './user-group-store.ts';
import { createWeekReportStore } from './week-report-store.ts';

/** Storage in one SQLite database, which backups copy from. */
export type SqliteStorage = Storage & { readonly database: Database };

/**
 * Opens the database at a path, or in memory at `:memory:`, and brings its tables up to date.
 * Throws `NewerDatabaseError` where a newer version wrote it, and SQLite's errors.
 */
export function openStorage({ file }: { readonly file: string }): SqliteStorage {
  const database = openMigrated(file);
  const tables = new Kysely<Tables>({ dialect: createImmediateDialect(database) });
  const access = createAccess(tables, database);
  const forgotten = openForgotten(file);
  const readSettings = createReadSettings();
  return {
    ...createStores(access, readSettings, forgotten, { left: false }),
    inTransaction: async (work) => {
      const traces: Traces = { left: false };
      const result = await access.transaction((inner) =>
        work(createStores(inner, readSettings, forgotten, traces)),
      );
      if (traces.left) await emptyLog(tables);
      return result;
    },
    isFault: isStorageFault,
    close: async () => {
      await tables.destroy();
      // Kysely leaves a database open that no query has met.
      database.close();
    },
    database,
  };
}

function openMigrated(file: string): Database {
  const database = openDatabase(file);
  try {
    migrate(database);
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
}

/** What was deleted still stands in the log until it is written over the database and cut to nothing. */
async function emptyLog(tables: Kysely<Tables>): Promise<void> {
  await tables.connection().execute((connection) => sql`PRAGMA wal_checkpoint(TRUNCATE)`.execute(connection));
}

function createStores(
  access: Access,
  readSettings: ReadSettings,
  forgotten: Forgotten,
  traces: Traces,
): Stores {
  return {
    studios: createStudioStore(access),
    people: createPeopleStore(access),
    settings: createSettingsStore(access, readSettings),
    plans: createPlanStore(access),
    classes: createClassStore(access),
    reviews: createReviewStore(access),
    comments: createCommentStore(access),
    notices: createNoticeStore(access),
    deliveries: createDeliveryStore(access),
    weekReports: createWeekReportStore(access),
    timetable: createTimetableStore(access),
    care: createCareStore(access, forgotten, traces),
    userGroups: createUserGroupStore(access),
  };
}
