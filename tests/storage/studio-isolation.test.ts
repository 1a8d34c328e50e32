import { beforeEach, expect, test } from 'vitest';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { StudioId } from '../../domain/ports.ts';
import { defaultSettings } from '../../domain/settings.ts';
import type { ToldWeek } from '../../domain/week/told-week.ts';
import type { SqliteStorage } from '../../storage/open-storage.ts';
import {
  noon,
  notice,
  openTestStorage,
  otherStudioId,
  record,
  savePlan,
  studioId,
  version,
} from './helpers.ts';
import { fullPlan } from './whole-values.ts';

const week = ['2026-11-23T00:00:00.000Z', '2026-11-30T00:00:00.000Z'] as const;
const sentTo = { place: 'D1', stamp: '100.2' };
const taught: ScheduledClass = {
  id: 'class-1',
  startsAt: { date: '2026-11-24', time: '18:00', zone: 'UTC', instant: '2026-11-24T18:00:00.000Z' },
  slotSeconds: 2700,
  instructorId: 'mara',
  planId: 'plan-1',
  state: 'taught',
};
const comment = {
  id: 'note-1',
  planId: 'plan-1',
  line: 'm1',
  version: 1,
  text: 'slower',
  by: 'mara',
  at: noon,
};
const delivery = { key: 'ev-1', kind: 'event', body: '{}', receivedAt: noon } as const;

const told: ToldWeek = {
  trust: { classes: 3, withPlan: 2, assumed: 1, patternsOnly: 0, cancelled: 0, notTaught: 0 },
  said: [{ saying: 'group:back', amount: 1 }],
  exceptions: { ranOver: ['Late'], cutShort: [], cancelled: [], notTaught: [], covered: [] },
};

let storage: SqliteStorage;
beforeEach(async () => {
  storage = await openTestStorage();
  // Rows are compared here, not durability: no sync, for speed.
  storage.database.pragma('synchronous = OFF');
});

/** One row in every table. */
async function fill(studio: StudioId): Promise<void> {
  await savePlan(storage, { studio, first: { ...version, plan: fullPlan } });
  await storage.people.save(studio, { id: 'mara', roles: ['instructor'] });
  await storage.settings.save(studio, defaultSettings, 'a', noon);
  await storage.plans.dismissFinding(studio, 'plan-1', 'grip', 'mara', 'wanted', noon);
  await storage.comments.add(studio, comment);
  await storage.reviews.add(studio, 'plan-1', { kind: 'sent', version: 1, by: 'mara', at: noon });
  await storage.classes.save(studio, taught);
  await storage.classes.saveLoad(studio, 'class-1', version.load, version.setsByPattern);
  await storage.notices.enqueue(studio, notice);
  await storage.notices.enqueue(studio, { ...notice, key: 'sent' });
  await storage.notices.markSent(studio, 'sent', sentTo, noon);
  await storage.deliveries.receive(studio, delivery);
  await storage.weekReports.save(studio, '2026-W47', told, noon);
  await storage.weekReports.decide(studio, { saying: 'group:back', goesOn: true, week: '2026-W47' }, noon);
  await storage.care.forgetPerson(studio, 'someone', [], noon);
  await storage.care.switchOff(studio, 'mara', ['how it went']);
  await storage.care.markCared(studio, noon);
  await storage.timetable.keepLookedAt(studio, noon);
  await storage.timetable.keepMissedTold(studio, ['digest:2026-11-24'], noon);
  await storage.timetable.saveFeedToken(studio, `token of ${studio}`, noon);
  await storage.userGroups.saveMembers(studio, 'S1', ['mara']);
}

type Call = (stores: SqliteStorage, studio: StudioId) => Promise<unknown>;

const reads: readonly (readonly [string, Call])[] = [
  ['studios.find', (s, id) => s.studios.find(id).then((studio) => studio && { ...studio, id: '', name: '' })],
  ['people.find', (s, id) => s.people.find(id, 'mara')],
  ['people.list', (s, id) => s.people.list(id)],
  ['settings.find', (s, id) => s.settings.find(id)],
  ['plans.find', (s, id) => s.plans.find(id, 'plan-1')],
  ['plans.findByHome', (s, id) => s.plans.findByHome(id, { place: 'D1', thread: '100.1' })],
  ['plans.listByAuthor', (s, id) => s.plans.listByAuthor(id, 'mara', 9)],
  ['plans.listByState', (s, id) => s.plans.listByState(id, 'draft')],
  ['plans.findVersion', (s, id) => s.plans.findVersion(id, 'plan-1', 1)],
  ['plans.listVersions', (s, id) => s.plans.listVersions(id, 'plan-1')],
  ['plans.listDismissed', (s, id) => s.plans.listDismissed(id, 'plan-1')],
  ['classes.find', (s, id) => s.classes.find(id, 'class-1')],
  ['classes.findByPlan', (s, id) => s.classes.findByPlan(id, 'plan-1')],
  ['classes.listBetween', (s, id) => s.classes.listBetween(id, ...week)],
  ['classes.listLoadBetween', (s, id) => s.classes.listLoadBetween(id, ...week)],
  ['classes.listMovesTaught', (s, id) => s.classes.listMovesTaught(id).then((ids) => [...ids])],
  ['comments.find', (s, id) => s.comments.find(id, 'note-1')],
  ['comments.list', (s, id) => s.comments.list(id, 'plan-1')],
  ['reviews.list', (s, id) => s.reviews.list(id, 'plan-1')],
  ['notices.find', (s, id) => s.notices.find(id, notice.key)],
  ['notices.findBySentTo', (s, id) => s.notices.findBySentTo(id, sentTo.place, sentTo.stamp)],
  ['notices.listUnfinished', (s, id) => s.notices.listUnfinished(id, 9)],
  ['notices.measureUnfinished', (s, id) => s.notices.measureUnfinished(id)],
  ['deliveries.listUnfinished', (s, id) => s.deliveries.listUnfinished(id)],
  ['weekReports.find', (s, id) => s.weekReports.find(id, '2026-W47')],
  ['weekReports.listBefore', (s, id) => s.weekReports.listBefore(id, '2026-W48', 9)],
  ['weekReports.listDecisions', (s, id) => s.weekReports.listDecisions(id)],
  ['care.listSwitchedOff', (s, id) => s.care.listSwitchedOff(id, 'mara').then((kinds) => [...kinds])],
  ['care.collectPerson', (s, id) => s.care.collectPerson(id, 'mara').then(({ plans }) => plans)],
  ['care.findCare', (s, id) => s.care.findCare(id).then(({ caredAt }) => caredAt)],
  ['care.exportStudio', (s, id) => s.care.exportStudio(id).then(({ plans }) => plans)],
  ['timetable.findLookedAt', (s, id) => s.timetable.findLookedAt(id)],
  ['timetable.findFeedToken', (s, id) => s.timetable.findFeedToken(id)],
  ['userGroups.listMembers', (s, id) => s.userGroups.listMembers(id).then((groups) => [...groups])],
  ['timetable.findStudioOfFeed', (s, id) => s.timetable.findStudioOfFeed(`token of ${id}`)],
];

const writes: readonly (readonly [string, Call])[] = [
  ['userGroups.saveMembers', (s, id) => s.userGroups.saveMembers(id, 'S1', ['ines'])],
  ['userGroups.removeMembers', (s, id) => s.userGroups.removeMembers(id, 'S1', ['mara'])],
  ['userGroups.keepOnly', (s, id) => s.userGroups.keepOnly(id, [])],
  ['studios.save', (s, id) => s.studios.save({ id, name: 'New', createdAt: noon })],
  ['people.save', (s, id) => s.people.save(id, { id: 'mara', roles: ['admin'] })],
  ['settings.save', (s, id) => s.settings.save(id, { ...defaultSettings, zone: 'Asia/Tokyo' }, 'b', noon)],
  ['plans.create', (s, id) => s.plans.create(id, { ...record, state: 'approved' })],
  ['plans.update', (s, id) => s.plans.update(id, { ...record, state: 'approved' })],
  ['plans.addVersion', (s, id) => s.plans.addVersion(id, { ...version, version: 2, text: 'other' })],
  ['plans.dismissFinding', (s, id) => s.plans.dismissFinding(id, 'plan-1', 'new', 'mara', 'so', noon)],
  ['classes.save', (s, id) => s.classes.save(id, { ...taught, state: 'cancelled' })],
  ['classes.setState', (s, id) => s.classes.setState(id, 'class-1', 'not taught')],
  ['classes.saveLoad', (s, id) => s.classes.saveLoad(id, 'class-1', [], {})],
  [
    'reviews.add',
    (s, id) => s.reviews.add(id, 'plan-1', { kind: 'approved', version: 1, by: 'i', at: noon }),
  ],
  ['comments.add', (s, id) => s.comments.add(id, { ...comment, text: 'other' })],
  ['comments.resolve', (s, id) => s.comments.resolve(id, 'note-1', 'i', noon)],
  ['notices.enqueue', (s, id) => s.notices.enqueue(id, { ...notice, to: 'elsewhere' })],
  ['notices.markSending', (s, id) => s.notices.markSending(id, notice.key, noon)],
  ['notices.markSent', (s, id) => s.notices.markSent(id, notice.key, sentTo, noon)],
  ['notices.markRetry', (s, id) => s.notices.markRetry(id, notice.key, noon, 'no')],
  ['notices.markDead', (s, id) => s.notices.markDead(id, notice.key, 'no', noon)],
  ['deliveries.receive', (s, id) => s.deliveries.receive(id, { ...delivery, body: 'other' })],
  ['deliveries.markDone', (s, id) => s.deliveries.markDone(id, delivery.key, noon)],
  ['weekReports.save', (s, id) => s.weekReports.save(id, '2026-W47', { ...told, said: [] }, noon)],
  [
    'weekReports.decide',
    (s, id) => s.weekReports.decide(id, { saying: 'group:back', goesOn: false, week: '2026-W48' }, noon),
  ],
  ['care.switchOff', (s, id) => s.care.switchOff(id, 'mara', [])],
  ['care.forgetPerson', (s, id) => s.care.forgetPerson(id, 'mara', [], noon)],
  ['care.retain', (s, id) => s.care.retain(id, defaultSettings.retention, '2036-01-01T00:00:00.000Z')],
  ['care.markCared', (s, id) => s.care.markCared(id, '2027-01-01T00:00:00.000Z')],
  ['care.markLeft', (s, id) => s.care.markLeft(id, noon)],
  ['care.deleteStudio', (s, id) => s.care.deleteStudio(id)],
  ['timetable.keepLookedAt', (s, id) => s.timetable.keepLookedAt(id, '2027-01-01T00:00:00.000Z')],
  ['timetable.keepMissedTold', (s, id) => s.timetable.keepMissedTold(id, ['digest:2026-11-25'], noon)],
  ['timetable.saveFeedToken', (s, id) => s.timetable.saveFeedToken(id, `next of ${id}`, noon)],
];

const empty = (value: unknown) => value === undefined || (Array.isArray(value) && value.length === 0);

/** Every row of one studio, in every table. */
function rowsOf(studio: StudioId): Readonly<Record<string, readonly unknown[]>> {
  const { database } = storage;
  const tables = database
    .prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name`)
    .pluck()
    .all();
  return Object.fromEntries(
    tables.map((name) => [name, database.prepare(`SELECT * FROM ${name} WHERE studio_id = ?`).all(studio)]),
  );
}

test('every port is in these tables', () => {
  const { database, inTransaction, close, ...stores } = storage;
  const ports = Object.entries(stores).flatMap(([store, port]) =>
    Object.keys(port).map((name) => `${store}.${name}`),
  );
  const listed = [...reads, ...writes].map(([name]) => name);
  expect([...listed, 'studios.list'].sort()).toEqual(ports.sort());
});

test('studio_id is the first column of every table, and filling leaves none empty', async () => {
  await fill(studioId);
  for (const [name, rows] of Object.entries(rowsOf(studioId))) {
    expect(rows.length, name).toBeGreaterThan(0);
    const columns = storage.database.prepare(`SELECT name FROM pragma_table_info(?)`).pluck().all(name);
    expect(columns[0], name).toBe('studio_id');
  }
});

test.each(reads)('%s reads its own studio only', async (name, read) => {
  await fill(studioId);
  expect(empty(await read(storage, studioId))).toBe(false);
  if (name !== 'studios.find') expect(empty(await read(storage, otherStudioId))).toBe(true);
  expect(empty(await read(storage, 'nowhere'))).toBe(true);
});

test.each(writes)('%s changes no row of another studio', async (_, write) => {
  await fill(studioId);
  const before = rowsOf(studioId);
  // With nothing there of its own some writes throw; either way the first studio keeps every row.
  await write(storage, otherStudioId).catch(() => undefined);
  expect(rowsOf(studioId)).toEqual(before);
});

test.each(writes)('%s on the same ids changes its own studio only', async (name, write) => {
  await fill(studioId);
  await fill(otherStudioId);
  const before = rowsOf(studioId);
  const others = rowsOf(otherStudioId);
  await write(storage, otherStudioId);
  expect(rowsOf(studioId)).toEqual(before);
  const repeats = ['plans.create', 'comments.add', 'notices.enqueue', 'deliveries.receive'];
  if (!repeats.includes(name)) expect(rowsOf(otherStudioId)).not.toEqual(others);
});
