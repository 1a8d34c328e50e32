import type { Database } from 'better-sqlite3';
import { Kysely } from 'kysely';
import type { Storage, Stores } from '../domain/ports.ts';
import { type Access, createAccess } from './access.ts';
import { createClassStore } from './class-store.ts';
import { createDeliveryStore } from './delivery-store.ts';
import { createImmediateDialect } from './immediate-dialect.ts';
import { migrate } from './migrate.ts';
import { createNoticeStore } from './notice-store.ts';
import { openDatabase } from './open-database.ts';
import { createPeopleStore } from './people-store.ts';
import { createPlanStore } from './plan-store.ts';
import { createReviewStore } from './review-store.ts';
import { createReadSettings, createSettingsStore, type ReadSettings } from './settings-store.ts';
import { createStudioStore } from './studio-store.ts';
import type { Tables } from './tables.ts';
import { createTimetableStore } from './timetable-store.ts';
import { createWeekReportStore } from './week-report-store.ts';

/** Storage in one SQLite database, which backups copy from. */
export type SqliteStorage = Storage & { readonly database: Database };

/**
 * Opens the database at a path, or in memory at `:memory:`, and brings its tables up to date.
 * Throws `NewerDatabaseError` where a newer version wrote it, and SQLite's errors (see `readStorageFault`).
 */
export function openStorage({ file }: { readonly file: string }): SqliteStorage {
  const database = openMigrated(file);
  const tables = new Kysely<Tables>({ dialect: createImmediateDialect(database) });
  const access = createAccess(tables, database);
  const readSettings = createReadSettings();
  return {
    ...createStores(access, readSettings),
    inTransaction: (work) => access.transaction((inner) => work(createStores(inner, readSettings))),
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

function createStores(access: Access, readSettings: ReadSettings): Stores {
  return {
    studios: createStudioStore(access),
    people: createPeopleStore(access),
    settings: createSettingsStore(access, readSettings),
    plans: createPlanStore(access),
    classes: createClassStore(access),
    reviews: createReviewStore(access),
    notices: createNoticeStore(access),
    deliveries: createDeliveryStore(access),
    weekReports: createWeekReportStore(access),
    timetable: createTimetableStore(access),
  };
}
