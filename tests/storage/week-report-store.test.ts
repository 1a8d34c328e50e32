import { beforeEach, expect, test } from 'vitest';
import type { ToldWeek } from '../../domain/week/told-week.ts';
import type { SqliteStorage } from '../../storage/open-storage.ts';
import { noon, openTestStorage, studioId } from './helpers.ts';

let storage: SqliteStorage;
beforeEach(async () => {
  storage = await openTestStorage();
  await storage.studios.save({ id: studioId, name: 'North', createdAt: noon });
});

const told = (...sayings: readonly string[]): ToldWeek => ({
  trust: { classes: 3, withPlan: 2, assumed: 1, patternsOnly: 0, cancelled: 0, notTaught: 0 },
  said: sayings.map((saying, place) => ({ saying, amount: place + 0.5 })),
  exceptions: { ranOver: ['Late'], cutShort: [], cancelled: [], notTaught: [], covered: ['Early'] },
});

test('a report comes back as told; a correction replaces it', async () => {
  const { weekReports } = storage;
  expect(await weekReports.find(studioId, '2026-W47')).toBeUndefined();
  await weekReports.save(studioId, '2026-W47', told('muscle:lats', 'group:back'), noon);
  expect(await weekReports.find(studioId, '2026-W47')).toEqual(told('muscle:lats', 'group:back'));
  await weekReports.save(studioId, '2026-W47', told('group:back'), noon);
  expect(await weekReports.find(studioId, '2026-W47')).toEqual(told('group:back'));
});

test('earlier weeks are listed newest first, over the turn of the year', async () => {
  const { weekReports } = storage;
  for (const week of ['2026-W53', '2027-W01', '2026-W52', '2027-W02'])
    await weekReports.save(studioId, week, told(week), noon);
  expect(await weekReports.listBefore(studioId, '2027-W02', 2)).toEqual([
    { week: '2027-W01', sayings: ['2027-W01'] },
    { week: '2026-W53', sayings: ['2026-W53'] },
  ]);
});

test('the last answer about a saying stands', async () => {
  const { weekReports } = storage;
  await weekReports.decide(studioId, { saying: 'b', goesOn: true, week: '2026-W47' }, noon);
  await weekReports.decide(studioId, { saying: 'a', goesOn: true, week: '2026-W47' }, noon);
  await weekReports.decide(studioId, { saying: 'b', goesOn: false, week: '2026-W50' }, noon);
  expect(await weekReports.listDecisions(studioId)).toEqual([
    { saying: 'a', goesOn: true, week: '2026-W47' },
    { saying: 'b', goesOn: false, week: '2026-W50' },
  ]);
});
