import { existsSync, readdirSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { defaultSettings } from '../../domain/settings.ts';
import { backUp } from '../../storage/backup.ts';
import { backUpDaily } from '../../storage/daily-backups.ts';
import { exportData } from '../../storage/export-data.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';
import { DatabaseInUseError, restore } from '../../storage/restore.ts';
import {
  noon,
  openTestStorage,
  otherStudioId,
  record,
  savePlan,
  studioId,
  temporaryFolder,
  version,
} from './helpers.ts';

/** An id and a given name that stand in every place a person can stand in. */
const mira = 'U0MIRA';
const name = 'Miranda';
const coach = 'U0TOMAS';
const directMessage = 'D0MIRA';

const taught: ScheduledClass = {
  id: 'class-1',
  startsAt: { date: '2026-11-20', time: '18:00', zone: 'UTC', instant: '2026-11-20T18:00:00.000Z' },
  slotSeconds: 2_700,
  instructorId: mira,
  planId: 'approved',
  state: 'planned',
};

async function fill(storage: SqliteStorage, studio = studioId): Promise<void> {
  const at = { studio };
  await savePlan(storage, {
    ...at,
    plan: { ...record, id: 'draft', authorId: mira, home: { place: directMessage, thread: '1.1' } },
    first: { ...version, madeBy: mira, text: `${name}'s class` },
  });
  await savePlan(storage, {
    ...at,
    plan: { ...record, id: 'approved', authorId: mira, home: { place: directMessage, thread: '1.2' } },
    first: { ...version, madeBy: mira },
  });
  await storage.plans.update(studio, {
    ...record,
    id: 'approved',
    authorId: mira,
    state: 'approved',
    approvedVersion: 1,
    home: { place: directMessage, thread: '1.2' },
  });
  await savePlan(storage, {
    ...at,
    plan: { ...record, id: 'other', authorId: 'U0MIRAX', home: { place: 'D0X', thread: '1.3' } },
    first: { ...version, madeBy: 'U0MIRAX' },
  });
  await storage.people.save(studio, { id: mira, roles: ['instructor'] });
  await storage.settings.save(
    studio,
    {
      ...defaultSettings,
      headCoaches: [coach, mira],
      admins: [mira],
      trustedInstructors: [mira, coach],
      slots: [{ id: 's', name: 'Late', weekday: 'Fri', time: '18:00', seconds: 2_700, instructorId: mira }],
    },
    'a',
    noon,
  );
  await storage.plans.dismissFinding(studio, 'other', 'grip', mira, `${name} says so`, noon);
  await storage.reviews.add(studio, 'other', {
    kind: 'changes asked',
    version: 1,
    by: mira,
    at: noon,
    reason: `ask ${name}`,
  });
  await storage.reviews.add(studio, 'approved', { kind: 'approved', version: 1, by: coach, at: noon });
  await storage.reviews.add(studio, 'other', { kind: 'approved', version: 1, by: mira, at: noon });
  await storage.comments.add(studio, {
    id: 'note',
    planId: 'other',
    line: 'm1',
    version: 1,
    text: `for ${name}`,
    by: mira,
    at: noon,
  });
  await storage.classes.save(studio, taught);
  await storage.classes.setState(studio, 'class-1', 'taught', {
    how: 'with changes',
    changes: `${name} was late`,
    effort: 6,
    saidBy: mira,
    saidAt: noon,
  });
  await storage.classes.saveLoad(studio, 'class-1', version.load, version.setsByPattern);
  for (const [key, to, text] of [
    [`first-run:${mira}`, mira, `Hello ${name}`],
    ['card:draft', directMessage, `${name}'s class`],
    ['review:other:1', 'C0REVIEW', `For review from <@${mira}>, not <@U0MIRAX>`],
  ] as const)
    await storage.notices.enqueue(studio, {
      key,
      to,
      action: { kind: 'post' },
      payload: { text },
      causedAt: noon,
    });
  await storage.notices.markSent(studio, `first-run:${mira}`, { place: directMessage, stamp: '2.2' }, noon);
  await storage.deliveries.receive(studio, {
    key: 'ev',
    kind: 'event',
    body: `{"user":"${mira}"}`,
    receivedAt: noon,
  });
  await storage.care.switchOff(studio, mira, ['how it went']);
}

const forget = (storage: SqliteStorage, at = noon) =>
  storage.inTransaction(({ care }) => care.forgetPerson(studioId, mira, [], at));

/** Where the person's id or name stands in these files, as bytes. */
function tracesIn(files: readonly string[]): readonly string[] {
  return files.filter((file) => {
    const bytes = existsSync(file) ? readFileSync(file).toString('latin1') : '';
    return /U0MIRA(?![A-Z0-9])/.test(bytes) || bytes.includes(name) || bytes.includes(directMessage);
  });
}

describe('a person who is forgotten', () => {
  test('is in no byte of database, log and export; numbers and approvals stay', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'evenset.db');
    const storage = await openTestStorage(file);
    await fill(storage);
    const files = () => readdirSync(folder).map((each) => join(folder, each));
    expect(tracesIn(files()).length).toBeGreaterThan(0);

    await forget(storage);

    expect(tracesIn(files())).toEqual([]);
    expect(statSync(`${file}-wal`).size).toBe(0);
    const exported = JSON.stringify(await storage.care.exportStudio(studioId));
    expect(exported).not.toMatch(/U0MIRA(?![A-Z0-9])|Miranda|D0MIRA/);

    expect(await storage.plans.find(studioId, 'draft')).toBeUndefined();
    expect(await storage.plans.find(studioId, 'approved')).toEqual({
      id: 'approved',
      authorId: 'forgotten',
      state: 'approved',
      currentVersion: 1,
      approvedVersion: 1,
      createdAt: noon,
    });
    expect((await storage.plans.findVersion(studioId, 'approved', 1))?.load).toEqual(version.load);
    expect(await storage.reviews.list(studioId, 'other')).toEqual([
      { kind: 'changes asked', version: 1, by: 'forgotten', at: noon },
      { kind: 'approved', version: 1, by: 'forgotten', at: noon },
    ]);
    expect(await storage.classes.find(studioId, 'class-1')).toMatchObject({
      instructorId: 'forgotten',
      state: 'taught',
      outcome: { how: 'with changes', effort: 6, saidAt: noon },
    });
    const week = ['2026-11-16T00:00:00.000Z', '2026-11-23T00:00:00.000Z'] as const;
    expect(await storage.classes.listLoadBetween(studioId, ...week)).toHaveLength(1);
    const settings = (await storage.settings.find(studioId))?.settings;
    expect([
      settings?.headCoaches,
      settings?.admins,
      settings?.trustedInstructors,
      settings?.slots[0]?.instructorId,
    ]).toEqual([[coach], [], [coach], undefined]);
    expect((await storage.notices.find(studioId, 'review:other:1'))?.payload.text).toBe(
      'For review from @forgotten, not <@U0MIRAX>',
    );
    expect((await storage.plans.find(studioId, 'other'))?.authorId).toBe('U0MIRAX');
    expect(await storage.comments.list(studioId, 'other')).toEqual([]);
  });

  test('a mention goes whole, with the name in it; what others typed stays otherwise', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    const said = { id: 'n', planId: 'other', line: 'm1', version: 1, by: coach, at: noon };
    await storage.comments.add(studioId, { ...said, text: `as <@${mira}|mira.b> does, not <@U0MIRAX|mi>` });
    await storage.notices.enqueue(studioId, {
      key: 'comment:n',
      to: 'C0REVIEW',
      action: { kind: 'post' },
      payload: { text: `<@${coach}> on B1: as &lt;@${mira}|mira.b&gt; does` },
      causedAt: noon,
    });
    await forget(storage);
    expect((await storage.comments.find(studioId, 'n'))?.text).toBe('as @forgotten does, not <@U0MIRAX|mi>');
    expect((await storage.notices.find(studioId, 'comment:n'))?.payload.text).toBe(
      `<@${coach}> on B1: as @forgotten does`,
    );
    expect(JSON.stringify(await storage.care.exportStudio(studioId))).not.toContain('mira.b');
  });

  test('cover is open for what they were to teach, and nothing is sent to nobody', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    const { outcome: _, ...planned } = taught;
    const toCome = {
      ...planned,
      id: 'class-2',
      startsAt: { ...taught.startsAt, date: '2026-11-30', instant: '2026-11-30T18:00:00.000Z' },
    };
    await storage.classes.save(studioId, toCome);
    await forget(storage);
    expect(await storage.classes.find(studioId, 'class-2')).toMatchObject({
      instructorId: 'forgotten',
      coverOpen: true,
    });
    expect(await storage.classes.find(studioId, 'class-1')).not.toHaveProperty('coverOpen');
    const notice = {
      key: 'n',
      to: 'forgotten',
      action: { kind: 'post' },
      payload: { text: 'Well?' },
    } as const;
    expect(await storage.notices.enqueue(studioId, { ...notice, causedAt: noon })).toBe(false);
    expect(await storage.notices.find(studioId, 'n')).toBeUndefined();
  });

  test('leaves the guard of versions standing, and another studio untouched', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    await fill(storage, otherStudioId);
    const before = await storage.care.exportStudio(otherStudioId);
    await forget(storage);
    expect(await storage.care.exportStudio(otherStudioId)).toEqual(before);
    expect(() => storage.database.exec(`UPDATE plan_versions SET text = 'new'`)).toThrow('never rewritten');
    expect(storage.database.pragma('foreign_key_check')).toEqual([]);
  });

  test('stays as before where the transaction fails', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    const before = await storage.care.exportStudio(studioId);
    const failing = storage.inTransaction(async ({ care }) => {
      await care.forgetPerson(studioId, mira, [], noon);
      throw new Error('stop');
    });
    await expect(failing).rejects.toThrow('stop');
    expect(await storage.care.exportStudio(studioId)).toEqual(before);
    expect(() => storage.database.exec(`UPDATE plan_versions SET text = 'new'`)).toThrow('never rewritten');
  });

  test('what is kept of them is counted', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    expect(await storage.care.collectPerson(studioId, mira)).toEqual({
      plans: [{ state: 'draft' }, { state: 'approved' }].toReversed(),
      versions: 2,
      steps: 2,
      comments: 4,
      classes: 1,
      notices: 1,
    });
    await forget(storage);
    expect(await storage.care.collectPerson(studioId, mira)).toEqual({
      plans: [],
      versions: 0,
      steps: 0,
      comments: 0,
      classes: 0,
      notices: 0,
    });
  });
});

describe('restore, a drill', () => {
  test('brings back what was lost, and makes deletions again that the backup does not know', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'evenset.db');
    const storage = await openTestStorage(file);
    await fill(storage);
    const old = join(folder, 'old.sqlite');
    await backUp(storage, old);
    await forget(storage);
    await savePlan(storage, { plan: { ...record, id: 'later', home: { place: 'D9', thread: '9' } } });
    const newer = join(folder, 'newer.sqlite');
    await backUp(storage, newer);
    await storage.close();

    expect(await restore(old, file)).toBe(1);
    expect(tracesIn([file, `${file}-wal`, `${file}.forgotten`])).toEqual([]);
    const restored = openStorage({ file });
    expect(await restored.plans.find(studioId, 'later')).toBeUndefined();
    expect((await restored.plans.find(studioId, 'approved'))?.authorId).toBe('forgotten');
    await restored.close();

    expect(await restore(newer, file)).toBe(0);
    const again = openStorage({ file });
    onTestFinished(() => again.close());
    expect(await again.plans.find(studioId, 'later')).toBeDefined();
  });

  test('a person who came back after a deletion is not deleted by a later restore', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'evenset.db');
    const storage = await openTestStorage(file);
    await fill(storage);
    await forget(storage);
    await savePlan(storage, {
      plan: { ...record, id: 'new', authorId: mira, home: { place: 'D8', thread: '8' } },
    });
    const newer = join(folder, 'newer.sqlite');
    await backUp(storage, newer);
    await storage.close();
    expect(await restore(newer, file)).toBe(0);
    const restored = openStorage({ file });
    onTestFinished(() => restored.close());
    expect((await restored.plans.find(studioId, 'new'))?.authorId).toBe(mira);
  });

  test('refuses a damaged backup and an open database, and changes nothing', async () => {
    const folder = temporaryFolder();
    const file = join(folder, 'evenset.db');
    const storage = await openTestStorage(file);
    await fill(storage);
    const backup = join(folder, 'backup.sqlite');
    await backUp(storage, backup);
    await expect(restore(backup, file)).rejects.toThrow(DatabaseInUseError);
    expect(await storage.plans.find(studioId, 'draft')).toBeDefined();
    await storage.close();
    const before = readFileSync(file);
    await expect(restore(join(folder, 'none.sqlite'), file)).rejects.toThrow();
    await expect(restore(`${file}.nothing`, file)).rejects.toThrow();
    expect(readFileSync(file).equals(before)).toBe(true);
  });
});

test('a backup a day, the newest fourteen kept, other files left alone', async () => {
  const storage = await openTestStorage();
  const folder = join(temporaryFolder(), 'backups');
  for (let day = 1; day <= 16; day += 1) {
    const now = `2026-11-${String(day).padStart(2, '0')}T03:00:00.000Z`;
    expect(await backUpDaily(storage, folder, now)).toBe(join(folder, `evenset-${now.slice(0, 10)}.sqlite`));
    expect(await backUpDaily(storage, folder, now)).toBeUndefined();
  }
  const aside = `${storage.database.name}.before-restore`;
  writeFileSync(aside, 'old');
  utimesSync(aside, new Date('2026-11-01T00:00:00Z'), new Date('2026-11-01T00:00:00Z'));
  await backUpDaily(storage, folder, '2026-11-16T23:00:00.000Z');
  expect(existsSync(aside)).toBe(true);
  await backUpDaily(storage, folder, '2026-11-17T03:00:00.000Z');
  expect(existsSync(aside)).toBe(false);
  const names = readdirSync(folder);
  expect(names).toHaveLength(14);
  expect(names.toSorted()[0]).toBe('evenset-2026-11-04.sqlite');
});

describe('retention', () => {
  const days = (count: number) => new Date(Date.parse(noon) + count * 86_400_000).toISOString();
  const keptFor = async (count: number) => {
    const storage = await openTestStorage();
    await fill(storage);
    await storage.deliveries.markDone(studioId, 'ev', noon);
    await storage.care.retain(studioId, defaultSettings.retention, days(count));
    return storage;
  };
  const table = async (storage: SqliteStorage, name_: string) =>
    (await storage.care.exportStudio(studioId))[name_] ?? [];

  test.each([
    [6, 1],
    [8, 0],
  ])('delivery keys after %d days: %d', async (count, left) => {
    expect(await table(await keptFor(count), 'deliveries')).toHaveLength(left);
  });

  test('a draft never sent goes after 90 days, one that was sent does not', async () => {
    expect(await (await keptFor(89)).plans.find(studioId, 'draft')).toBeDefined();
    const later = await keptFor(91);
    expect(await later.plans.find(studioId, 'draft')).toBeUndefined();
    expect(await later.plans.find(studioId, 'other')).toBeDefined();
  });

  test('the text of what was sent goes after 30 days, its key stays', async () => {
    expect((await (await keptFor(31)).notices.find(studioId, `first-run:${mira}`))?.payload).toEqual({
      text: '',
    });
    expect((await (await keptFor(29)).notices.find(studioId, `first-run:${mira}`))?.payload.text).toContain(
      name,
    );
  });

  test('comments go after 12 months, plans lose their person after 24', async () => {
    const year = await keptFor(370);
    expect((await year.reviews.list(studioId, 'other')).map(({ reason }) => reason)).toEqual([
      undefined,
      undefined,
    ]);
    expect((await year.classes.find(studioId, 'class-1'))?.outcome?.changes).toBeUndefined();
    expect((await year.plans.find(studioId, 'approved'))?.authorId).toBe(mira);
    const twoYears = await keptFor(740);
    expect((await twoYears.plans.find(studioId, 'approved'))?.authorId).toBe('forgotten');
    expect((await twoYears.plans.findVersion(studioId, 'approved', 1))?.madeBy).toBe('forgotten');
  });
});

describe('a studio that leaves', () => {
  test('has nothing more to send; deleted, only its id is left; another stays whole', async () => {
    const storage = await openTestStorage();
    await fill(storage);
    await fill(storage, otherStudioId);
    const other = await storage.care.exportStudio(otherStudioId);
    await storage.care.markLeft(studioId, noon);
    expect(await storage.notices.listUnfinished(studioId, 10)).toEqual([]);
    expect(await storage.care.findCare(studioId)).toEqual({ leftAt: noon });
    await storage.inTransaction(({ care }) => care.deleteStudio(studioId));
    const left = Object.entries(await storage.care.exportStudio(studioId)).filter(
      ([, rows]) => rows.length > 0,
    );
    expect(left.map(([table_]) => table_)).toEqual(['studio_care', 'studios']);
    expect(await storage.care.exportStudio(otherStudioId)).toEqual(other);
  });

  test('and is here again when it says so', async () => {
    const storage = await openTestStorage();
    await storage.care.markCared(studioId, noon);
    await storage.care.markLeft(studioId, noon);
    await storage.care.markLeft(studioId, undefined);
    expect(await storage.care.findCare(studioId)).toEqual({ caredAt: noon });
  });
});

test('notices switched off are kept by person and replaced whole', async () => {
  const storage = await openTestStorage();
  await storage.care.switchOff(studioId, mira, ['how it went', 'plans that wait']);
  await storage.care.switchOff(studioId, coach, ['before a class']);
  await storage.care.switchOff(studioId, mira, ['before a class']);
  expect([...(await storage.care.listSwitchedOff(studioId, mira))]).toEqual(['before a class']);
  expect([...(await storage.care.listSwitchedOff(otherStudioId, mira))]).toEqual([]);
});

test('an export is a new private file of JSON by studio and table', async () => {
  const storage = await openTestStorage();
  await fill(storage);
  const file = join(temporaryFolder(), 'export.json');
  await exportData(storage, file);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  const { studios } = JSON.parse(readFileSync(file, 'utf8'));
  expect(Object.keys(studios)).toEqual([studioId, otherStudioId]);
  expect(studios[studioId].plans).toHaveLength(3);
  expect(studios[studioId].settings[0].settings.headCoaches).toEqual([coach, mira]);
  await expect(exportData(storage, file)).rejects.toThrow('EEXIST');
});
