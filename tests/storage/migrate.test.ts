import { join } from 'node:path';
import SqliteDatabase, { type Database } from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { migrate, NewerDatabaseError } from '../../storage/migrate.ts';
import { migrations } from '../../storage/migrations/migrations.ts';
import { openStorage } from '../../storage/open-storage.ts';
import { temporaryFolder } from './helpers.ts';

const things = ['CREATE TABLE first (a INTEGER) STRICT', 'CREATE TABLE second (b INTEGER) STRICT'];

function emptyDatabase(): Database {
  const database = new SqliteDatabase(':memory:');
  onTestFinished(() => void database.close());
  return database;
}

const version = (database: Database) => database.pragma('user_version', { simple: true });

function schemaOf(database: Database): readonly unknown[] {
  return database
    .prepare(
      `SELECT sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY tbl_name, type DESC, name`,
    )
    .pluck()
    .all();
}

const namesOf = (database: Database) =>
  database.prepare('SELECT name FROM sqlite_schema ORDER BY name').pluck().all();

describe('migrations', () => {
  test('run from empty, then from where they stand', () => {
    const database = emptyDatabase();
    migrate(database, things.slice(0, 1));
    expect([namesOf(database), version(database)]).toEqual([['first'], 1]);
    migrate(database, things);
    expect([namesOf(database), version(database)]).toEqual([['first', 'second'], 2]);
    migrate(database, things);
    expect([namesOf(database), version(database)]).toEqual([['first', 'second'], 2]);
  });

  test('half of one leaves nothing, nor do those before it', () => {
    const database = emptyDatabase();
    const broken = [
      ...things,
      'CREATE TABLE third (c INTEGER) STRICT; CREATE TABLE first (a INTEGER) STRICT',
    ];
    expect(() => migrate(database, broken)).toThrow('table first already exists');
    expect([namesOf(database), version(database)]).toEqual([[], 0]);
    migrate(database, things);
    expect(version(database)).toBe(2);
  });

  test('a newer database is refused with both numbers, and stays as it is', () => {
    const file = join(temporaryFolder(), 'evenset.db');
    const newer = new SqliteDatabase(file);
    newer.pragma('user_version = 99');
    newer.close();
    const open = () => openStorage({ file });
    expect(open).toThrow(NewerDatabaseError);
    expect(open).toThrow(
      `The database has version 99; this Evenset knows versions up to ${migrations.length}.`,
    );
    const after = new SqliteDatabase(file);
    onTestFinished(() => void after.close());
    expect([namesOf(after), version(after)]).toEqual([[], 99]);
  });
});

describe('schema', () => {
  test('is as storage/schema.sql says', async () => {
    const database = emptyDatabase();
    migrate(database);
    const dump = schemaOf(database).map((sql) => `${String(sql)};\n`);
    const file = new URL('../../storage/schema.sql', import.meta.url);
    const text = [`PRAGMA user_version = ${migrations.length};\n`, ...dump].join('\n');
    await expect(text).toMatchFileSnapshot(file.pathname);
  });

  test('has STRICT tables only', () => {
    const database = emptyDatabase();
    migrate(database);
    const own = database
      .prepare(
        `SELECT name FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite_%' AND NOT strict`,
      )
      .all();
    expect(own).toEqual([]);
  });

  test.each([
    [
      'a week of load',
      `SELECT * FROM classes WHERE studio_id = ? AND starts_ms >= 1 AND starts_ms < 2 AND state = 'taught'`,
      'classes_by_start',
    ],
    [
      'plans by author',
      `SELECT * FROM plans WHERE studio_id = ? AND author_id = 'a' ORDER BY created_ms DESC, rowid DESC LIMIT 1`,
      'plans_by_author',
    ],
    [
      'plans by state',
      `SELECT * FROM plans WHERE studio_id = ? AND state = 'draft' ORDER BY created_ms, rowid`,
      'plans_by_state',
    ],
    [
      'a plan by home',
      `SELECT * FROM plans WHERE studio_id = ? AND home_place = 'a' AND home_thread = 'b'`,
      'plans_by_home',
    ],
    [
      'unfinished notices',
      `SELECT * FROM notices WHERE studio_id = ? AND finished_at IS NULL ORDER BY sequence LIMIT 9`,
      'notices_unfinished',
    ],
    [
      'a notice by where it went',
      `SELECT * FROM notices WHERE studio_id = ? AND sent_place = 'a' AND sent_stamp = 'b'`,
      'notices_by_sent_to',
    ],
    [
      'unfinished deliveries',
      `SELECT * FROM deliveries WHERE studio_id = ? AND done_at IS NULL ORDER BY sequence`,
      'deliveries_unfinished',
    ],
    ['moves taught', 'SELECT DISTINCT move_id FROM class_moves WHERE studio_id = ?', 'class_moves_by_move'],
  ])('%s is found by its index, without sorting', (_, sql, index) => {
    const database = emptyDatabase();
    migrate(database);
    const steps = database.prepare<[string], { detail: string }>(`EXPLAIN QUERY PLAN ${sql}`).all('north');
    const plan = steps.map(({ detail }) => detail).join('\n');
    expect(plan).toContain(index);
    expect(plan).not.toMatch(/SCAN|TEMP B-TREE/);
  });
});
