import { beforeEach, describe, expect, test } from 'vitest';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { LifeStep, PlanRecord } from '../../domain/plan/plan-life.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import { defaultSettings, type Settings } from '../../domain/settings.ts';
import type { SqliteStorage } from '../../storage/open-storage.ts';
import { noon, notice, openTestStorage, record, savePlan, studioId, version } from './helpers.ts';
import { fullPlan, fullSettings } from './whole-values.ts';

let storage: SqliteStorage;
beforeEach(async () => {
  storage = await openTestStorage();
  // Rows are compared here, not durability: no sync, for speed.
  storage.database.pragma('synchronous = OFF');
});

const later = '2026-11-23T13:00:00.000Z';

const scheduled: ScheduledClass = {
  id: 'class-1',
  startsAt: { date: '2026-11-24', time: '18:00', zone: 'Europe/Berlin', instant: '2026-11-24T17:00:00.000Z' },
  slotSeconds: 2700,
  instructorId: 'mara',
  state: 'planned',
};

const fullClass: ScheduledClass = {
  ...scheduled,
  id: 'class-2',
  slotId: 'tue-18',
  title: 'Lift',
  room: 'Hall',
  people: 12,
  planId: 'plan-1',
  state: 'taught',
  outcome: {
    how: 'with changes',
    changes: 'left out the finisher',
    effort: 7,
    length: 'over',
    saidBy: 'mara',
    saidAt: '2026-11-24T18:00:00.000Z',
  },
  coverOpen: true,
  confirmed: { by: 'mara', startsAt: '2026-11-24T17:00:00.000Z' },
  revision: 1,
};

describe('studios', () => {
  test('are saved, replaced, found and listed', async () => {
    await storage.studios.save({ id: 'attic', name: 'Attic', createdAt: noon });
    await storage.studios.save({ id: 'attic', name: 'Attic Two', createdAt: noon });
    expect(await storage.studios.find('attic')).toEqual({ id: 'attic', name: 'Attic Two', createdAt: noon });
    expect((await storage.studios.list()).map(({ id }) => id)).toEqual(['attic', 'north', 'south']);
    expect(await storage.studios.find('cellar')).toBeUndefined();
  });
});

describe('people', () => {
  test('are saved with their roles, replaced, found and listed', async () => {
    const ines = { id: 'ines', roles: ['head coach', 'admin'] } as const;
    const mara = { id: 'mara', roles: [] } as const;
    await storage.people.save(studioId, { ...ines, roles: ['instructor'] });
    await storage.people.save(studioId, mara);
    await storage.people.save(studioId, ines);
    expect(await storage.people.find(studioId, 'ines')).toEqual(ines);
    expect(await storage.people.list(studioId)).toEqual([ines, mara]);
    expect(await storage.people.find(studioId, 'ben')).toBeUndefined();
  });
});

describe('settings', () => {
  test.each<[string, Settings]>([
    ['defaults', defaultSettings],
    ['every field', fullSettings],
  ])('%s come back whole', async (_, settings) => {
    expect(await storage.settings.find(studioId)).toBeUndefined();
    await storage.settings.save(studioId, { ...settings, zone: 'Asia/Tokyo' }, 'a', noon);
    await storage.settings.save(studioId, settings, 'b', later);
    expect(await storage.settings.find(studioId)).toEqual({ settings, fingerprint: 'b' });
  });

  test.each<[string, Partial<Settings>]>([
    ['a report at no time of day', { reportAt: { weekday: 'Mon', time: '99:99' } }],
    ['a number that is none', { countInSeconds: Number.NaN }],
  ])('%s could not be read back: it is refused and the ones before stay', async (_, wrong) => {
    await storage.settings.save(studioId, defaultSettings, 'a', noon);
    await expect(
      storage.settings.save(studioId, { ...defaultSettings, ...wrong }, 'b', later),
    ).rejects.toThrow();
    expect(await storage.settings.find(studioId)).toEqual({ settings: defaultSettings, fingerprint: 'a' });
  });

  test('a limit that was not known when they were saved stands at its default', async () => {
    await storage.settings.save(studioId, defaultSettings, 'a', noon);
    storage.database.exec(
      `UPDATE settings SET settings = json_remove(settings, '$.checks.newMoves', '$.dose', '$.energyOn')`,
    );
    expect(await storage.settings.find(studioId)).toEqual({ settings: defaultSettings, fingerprint: 'a' });
  });
});

describe('plans', () => {
  const bare: PlanRecord = {
    id: 'plan-2',
    authorId: 'mara',
    state: 'draft',
    currentVersion: 1,
    createdAt: later,
  };

  test('a record comes back whole, with and without its optional facts', async () => {
    await savePlan(storage);
    await savePlan(storage, { plan: bare });
    const approved: PlanRecord = { ...record, state: 'approved', approvedVersion: 1 };
    await storage.plans.update(studioId, approved);
    expect(await storage.plans.find(studioId, 'plan-1')).toEqual(approved);
    expect(await storage.plans.find(studioId, 'plan-2')).toEqual(bare);
    expect(await storage.plans.find(studioId, 'plan-3')).toBeUndefined();
  });

  test('a second creation changes nothing', async () => {
    await savePlan(storage);
    await storage.plans.create(studioId, { ...record, state: 'approved' });
    expect(await storage.plans.find(studioId, 'plan-1')).toEqual(record);
  });

  test('an unknown plan is not updated', async () => {
    await expect(storage.plans.update(studioId, record)).rejects.toThrow('No such plan');
  });

  test('a thread is the home of one plan', async () => {
    await savePlan(storage);
    expect(await storage.plans.findByHome(studioId, { place: 'D1', thread: '100.1' })).toEqual(record);
    expect(await storage.plans.findByHome(studioId, { place: 'D1', thread: '100.2' })).toBeUndefined();
    const { home = { place: '', thread: '' } } = record;
    await expect(savePlan(storage, { plan: { ...bare, home } })).rejects.toThrow('UNIQUE');
  });

  test('are listed by author, newest first, and by state, oldest first', async () => {
    await savePlan(storage);
    await savePlan(storage, { plan: bare });
    await savePlan(storage, { plan: { ...bare, id: 'plan-3' } });
    await savePlan(storage, { plan: { ...bare, id: 'plan-4', authorId: 'ben', state: 'in review' } });
    const ids = (plans: readonly PlanRecord[]) => plans.map(({ id }) => id);
    expect(ids(await storage.plans.listByAuthor(studioId, 'mara', 9))).toEqual([
      'plan-3',
      'plan-2',
      'plan-1',
    ]);
    expect(ids(await storage.plans.listByAuthor(studioId, 'mara', 1))).toEqual(['plan-3']);
    expect(ids(await storage.plans.listByState(studioId, 'draft'))).toEqual(['plan-1', 'plan-2', 'plan-3']);
    expect(ids(await storage.plans.listByState(studioId, 'in review'))).toEqual(['plan-4']);
  });

  test.each<[string, Partial<PlanVersion>]>([
    ['no plan', {}],
    ['a plan with every field', { plan: fullPlan }],
    ['an edit', { cause: { kind: 'edit', words: 'B rest 20' } }],
    ['an undo', { cause: { kind: 'undo', restores: 1 } }],
    ['a redo', { cause: { kind: 'redo', restores: 2 } }],
  ])('a version with %s comes back whole', async (_, facts) => {
    await savePlan(storage);
    const second = { ...version, version: 2, ...facts };
    await storage.plans.addVersion(studioId, second);
    expect(await storage.plans.findVersion(studioId, 'plan-1', 2)).toEqual(second);
    expect(await storage.plans.listVersions(studioId, 'plan-1')).toEqual([version, second]);
    expect(await storage.plans.findVersion(studioId, 'plan-1', 3)).toBeUndefined();
  });

  test('a version is kept once; the same number with other content throws', async () => {
    await savePlan(storage);
    await storage.plans.addVersion(studioId, version);
    await expect(storage.plans.addVersion(studioId, { ...version, text: 'other' })).rejects.toThrow(
      'other content',
    );
    expect(await storage.plans.listVersions(studioId, 'plan-1')).toEqual([version]);
  });

  test('a version is never rewritten or removed', async () => {
    await savePlan(storage);
    const { database } = storage;
    expect(() => database.exec(`UPDATE plan_versions SET text = 'other'`)).toThrow('never rewritten');
    expect(() => database.exec(`UPDATE plan_versions SET made_by = 'ben'`)).toThrow('never rewritten');
    expect(() => database.exec('DELETE FROM plan_versions')).toThrow('as long as the plan');
    expect(await storage.plans.listVersions(studioId, 'plan-1')).toEqual([version]);
    database.exec('DELETE FROM plans');
    expect(await storage.plans.listVersions(studioId, 'plan-1')).toEqual([]);
  });

  test('a stored plan with a field that the shape does not know is refused', async () => {
    await savePlan(storage, { first: { ...version, plan: { ...fullPlan, blocks: [] } } });
    storage.database.exec(`
      DROP TRIGGER plan_versions_stay;
      UPDATE plan_versions SET plan = json_set(plan, '$.surprise', 1);
    `);
    await expect(storage.plans.findVersion(studioId, 'plan-1', 1)).rejects.toThrow('surprise');
  });

  test('a dismissed finding is kept once', async () => {
    await savePlan(storage);
    const dismiss = (code: string, reason: string) =>
      storage.plans.dismissFinding(studioId, 'plan-1', code, 'mara', reason, noon);
    await dismiss('no-warm-up', 'done in the yard');
    await dismiss('grip', 'wanted');
    await dismiss('no-warm-up', 'again');
    expect(await storage.plans.listDismissed(studioId, 'plan-1')).toEqual(['no-warm-up', 'grip']);
  });
});

describe('classes', () => {
  beforeEach(() => savePlan(storage, { first: { ...version, plan: fullPlan } }));

  test('come back whole, with and without their optional facts', async () => {
    await storage.classes.save(studioId, scheduled);
    await storage.classes.save(studioId, { ...fullClass, title: 'Old title' });
    await storage.classes.save(studioId, fullClass);
    expect(await storage.classes.find(studioId, 'class-1')).toEqual(scheduled);
    expect(await storage.classes.find(studioId, 'class-2')).toEqual(fullClass);
    expect(await storage.classes.find(studioId, 'class-3')).toBeUndefined();
    expect(await storage.classes.findByPlan(studioId, 'plan-1')).toEqual([fullClass]);
  });

  test('count a change that a calendar shows, and no other', async () => {
    const revision = async () => (await storage.classes.find(studioId, 'class-1'))?.revision;
    await storage.classes.save(studioId, scheduled);
    await storage.classes.save(studioId, { ...scheduled, people: 15, revision: 9 });
    await storage.classes.setState(studioId, 'class-1', 'taught');
    expect(await revision()).toBeUndefined();
    await storage.classes.save(studioId, { ...scheduled, room: 'Loft' });
    await storage.classes.save(studioId, { ...scheduled, room: 'Loft', instructorId: 'ines' });
    await storage.classes.setState(studioId, 'class-1', 'cancelled');
    expect(await revision()).toBe(3);
  });

  test('an unknown plan is refused', async () => {
    await expect(storage.classes.save(studioId, { ...scheduled, planId: 'nowhere' })).rejects.toThrow(
      'FOREIGN KEY',
    );
  });

  test('are listed from the first instant up to, without, the second, in order of start', async () => {
    const at = (id: string, instant: string): ScheduledClass => ({
      ...scheduled,
      id,
      startsAt: { ...scheduled.startsAt, instant },
    });
    for (const each of [
      at('late', '2026-11-29T22:59:59.000Z'),
      at('next', '2026-11-29T23:00:00.000Z'),
      at('first', '2026-11-22T23:00:00Z'),
      at('before', '2026-11-22T22:59:59.999Z'),
    ])
      await storage.classes.save(studioId, each);
    const week = await storage.classes.listBetween(
      studioId,
      '2026-11-22T23:00:00.000Z',
      '2026-11-30T00:00:00+01:00',
    );
    expect(week.map(({ id }) => id)).toEqual(['first', 'late']);
  });

  test('state and outcome are replaced together', async () => {
    const { outcome } = fullClass;
    if (outcome === undefined) throw new Error('the class has an outcome');
    await storage.classes.save(studioId, scheduled);
    await storage.classes.setState(studioId, 'class-1', 'taught', outcome);
    expect(await storage.classes.find(studioId, 'class-1')).toEqual({
      ...scheduled,
      state: 'taught',
      outcome,
    });
    await storage.classes.setState(studioId, 'class-1', 'cancelled');
    expect(await storage.classes.find(studioId, 'class-1')).toEqual({
      ...scheduled,
      state: 'cancelled',
      revision: 1,
    });
    await expect(storage.classes.setState(studioId, 'class-9', 'taught')).rejects.toThrow('No such class');
  });

  describe('load', () => {
    const week = ['2026-11-23T00:00:00.000Z', '2026-11-30T00:00:00.000Z'] as const;
    const load = [
      { muscle: 'glutes', sets: 6, tensionSeconds: 240 },
      { muscle: 'hamstrings', sets: 2.5, tensionSeconds: 100.5 },
      { muscle: 'lower back', sets: 2.5, tensionSeconds: 90 },
    ] as const;
    const setsByPattern = { hinge: 6, 'anti-extension': 0.5 };

    beforeEach(async () => {
      await storage.classes.save(studioId, fullClass);
      await storage.classes.save(studioId, { ...scheduled, state: 'taught' });
    });

    test('is listed by class, largest first, replaced when saved again', async () => {
      await storage.classes.saveLoad(studioId, 'class-2', [load[1]], {});
      await storage.classes.saveLoad(studioId, 'class-2', [load[2], load[0], load[1]], setsByPattern);
      await storage.classes.saveLoad(studioId, 'class-1', [], {});
      expect(await storage.classes.listLoadBetween(studioId, ...week)).toEqual([
        { classId: 'class-1', load: [], setsByPattern: {} },
        { classId: 'class-2', load, setsByPattern },
      ]);
      expect(await storage.classes.listLoadBetween(studioId, week[1], '2026-12-07T00:00:00.000Z')).toEqual(
        [],
      );
    });

    test('of a class that turns out not to be taught counts for nothing', async () => {
      await storage.classes.saveLoad(studioId, 'class-2', load, setsByPattern);
      await storage.classes.setState(studioId, 'class-2', 'not taught');
      await storage.classes.saveLoad(studioId, 'class-2', [], {});
      expect(await storage.classes.listLoadBetween(studioId, ...week)).toEqual([]);
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(new Set());
      await storage.classes.setState(studioId, 'class-2', 'taught');
      expect(await storage.classes.listLoadBetween(studioId, ...week)).toEqual([
        { classId: 'class-2', load: [], setsByPattern: {} },
      ]);
    });

    test('brings the moves of the approved version, else the current one, without options', async () => {
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(new Set());
      await storage.classes.saveLoad(studioId, 'class-2', load, setsByPattern);
      const moves = new Set(['goblet-squat', 'push-up', 'arm-circle']);
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(moves);

      const other: Plan = { ...fullPlan, blocks: [] };
      await storage.inTransaction(async (stores) => {
        await stores.plans.addVersion(studioId, { ...version, version: 2, plan: other });
        await stores.plans.update(studioId, { ...record, currentVersion: 2, approvedVersion: 1 });
      });
      await storage.classes.saveLoad(studioId, 'class-2', load, setsByPattern);
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(moves);
      await storage.plans.update(studioId, { ...record, currentVersion: 2, approvedVersion: 2 });
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(moves);
      await storage.classes.saveLoad(studioId, 'class-2', load, setsByPattern);
      expect(await storage.classes.listMovesTaught(studioId)).toEqual(new Set());
    });
  });
});

describe('reviews', () => {
  test('steps are kept in order, each once', async () => {
    await savePlan(storage);
    const steps: readonly LifeStep[] = [
      { kind: 'sent', version: 1, by: 'mara', at: noon },
      { kind: 'changes asked', version: 1, by: 'ines', at: noon, reason: 'longer cool-down' },
      { kind: 'withdrawn', version: 1, by: 'mara', at: later },
      { kind: 'sent', version: 1, by: 'mara', at: later },
      { kind: 'approved', version: 1, by: 'ines', at: later },
      { kind: 'changed after approval', version: 2, by: 'mara', at: later },
    ];
    for (const step of [...steps, ...steps]) await storage.reviews.add(studioId, 'plan-1', step);
    expect(await storage.reviews.list(studioId, 'plan-1')).toEqual(steps);
  });
});

describe('notices', () => {
  const pending = { ...notice, sequence: 1, state: 'pending', attempts: 0 };

  test('are enqueued once by key and come back whole', async () => {
    expect(await storage.notices.enqueue(studioId, notice)).toBe(true);
    expect(await storage.notices.enqueue(studioId, { ...notice, to: 'elsewhere' })).toBe(false);
    expect(await storage.notices.find(studioId, notice.key)).toEqual(pending);
    expect(await storage.notices.find(studioId, 'unknown')).toBeUndefined();
  });

  test.each([
    { kind: 'post' },
    { kind: 'post', thread: { stamp: '100.1' } },
    { kind: 'update', of: 'card:plan-1' },
  ] as const)('the action %o comes back', async (action) => {
    const payload = { text: 'a', fallbackBlocks: [{ type: 'section' }] };
    await storage.notices.enqueue(studioId, { ...notice, action, payload });
    expect(await storage.notices.find(studioId, notice.key)).toEqual({ ...pending, action, payload });
  });

  test('pass from pending over sending and a retry to sent', async () => {
    const { notices } = storage;
    await notices.enqueue(studioId, notice);
    await notices.markSending(studioId, notice.key, noon);
    expect(await notices.find(studioId, notice.key)).toEqual({ ...pending, state: 'sending', attempts: 1 });
    await notices.markRetry(studioId, notice.key, later, 'rate limited');
    const failed = { ...pending, attempts: 1, lastError: 'rate limited' };
    expect(await notices.listUnfinished(studioId, 9)).toEqual([{ ...failed, retryAt: later }]);
    await notices.markSending(studioId, notice.key, later);
    const sentTo = { place: 'D1', stamp: '100.2' };
    await notices.markSent(studioId, notice.key, sentTo, later);
    await notices.markSent(studioId, notice.key, { place: 'D1', stamp: '100.9' }, later);
    const sent = { ...failed, state: 'sent', attempts: 2, sentTo };
    expect(await notices.find(studioId, notice.key)).toEqual(sent);
    expect(await notices.findBySentTo(studioId, 'D1', '100.2')).toEqual(sent);
    expect(await notices.findBySentTo(studioId, 'D1', '100.9')).toBeUndefined();
    expect(await notices.listUnfinished(studioId, 9)).toEqual([]);
  });

  test('end dead with the reason', async () => {
    const { notices } = storage;
    await notices.enqueue(studioId, notice);
    await notices.markSending(studioId, notice.key, noon);
    await notices.markDead(studioId, notice.key, 'channel gone', later);
    const dead = { ...pending, state: 'dead', attempts: 1, lastError: 'channel gone' };
    expect(await notices.find(studioId, notice.key)).toEqual(dead);
    expect(await notices.listUnfinished(studioId, 9)).toEqual([]);
    await expect(notices.markSending(studioId, notice.key, later)).rejects.toThrow('mark sending');
    await expect(notices.markSent(studioId, notice.key, { place: 'D1', stamp: '1' }, later)).rejects.toThrow(
      'mark sent',
    );
    expect(await notices.find(studioId, notice.key)).toEqual(dead);
  });

  test('pending and sending ones are listed in the order enqueued, up to the limit', async () => {
    const { notices } = storage;
    for (const key of ['c', 'a', 'd', 'b']) await notices.enqueue(studioId, { ...notice, key });
    await notices.markSending(studioId, 'd', noon);
    await notices.markSent(studioId, 'a', { place: 'D1', stamp: '1' }, noon);
    const keys = async (limit: number) =>
      (await notices.listUnfinished(studioId, limit)).map(({ key }) => key);
    expect(await keys(9)).toEqual(['c', 'd', 'b']);
    expect(await keys(2)).toEqual(['c', 'd']);
  });
});

describe('deliveries', () => {
  const delivery = { key: 'ev-2', kind: 'event', body: '{"text":"Lift"}', receivedAt: noon } as const;

  test('are received once, listed in order until done, and known for good', async () => {
    const { deliveries } = storage;
    const click = { ...delivery, key: 'ev-1', kind: 'interaction' } as const;
    expect(await deliveries.receive(studioId, delivery)).toBe(true);
    expect(await deliveries.receive(studioId, click)).toBe(true);
    expect(await deliveries.receive(studioId, { ...delivery, body: 'other' })).toBe(false);
    expect(await deliveries.listUnfinished(studioId)).toEqual([delivery, click]);
    await deliveries.markDone(studioId, 'ev-2', later);
    await deliveries.markDone(studioId, 'ev-2', noon);
    expect(await deliveries.listUnfinished(studioId)).toEqual([click]);
    expect(await deliveries.receive(studioId, delivery)).toBe(false);
    expect(
      storage.database.prepare('SELECT body, done_at FROM deliveries WHERE delivery_key = ?').get('ev-2'),
    ).toEqual({ body: null, done_at: later });
  });

  test('one received as done leaves nothing to run again, and is known for good', async () => {
    const { deliveries } = storage;
    expect(await deliveries.receive(studioId, { ...delivery, doneAt: noon })).toBe(true);
    expect(await deliveries.listUnfinished(studioId)).toEqual([]);
    expect(await deliveries.receive(studioId, delivery)).toBe(false);
    expect(
      storage.database.prepare('SELECT body, done_at FROM deliveries WHERE delivery_key = ?').get('ev-2'),
    ).toEqual({ body: null, done_at: noon });
  });
});

describe('the timetable', () => {
  const later = '2026-11-24T12:00:00.000Z';

  test('what was missed comes back once, when it is noted', async () => {
    const noted = async (missed: readonly string[], at: string) =>
      (await storage.timetable.keepMissedTold(studioId, missed, at)).toSorted();
    expect(await noted(['a', 'b'], noon)).toEqual(['a', 'b']);
    expect(await noted(['b', 'c'], later)).toEqual(['c']);
    expect(await noted([], later)).toEqual([]);
  });

  test('how far notices were looked at goes with the clock, back too', async () => {
    await storage.timetable.keepLookedAt(studioId, later);
    expect(await storage.timetable.findLookedAt(studioId)).toBe(later);
    await storage.timetable.keepLookedAt(studioId, noon);
    expect(await storage.timetable.findLookedAt(studioId)).toBe(noon);
  });

  test('a new feed token ends the one before', async () => {
    await storage.timetable.saveFeedToken(studioId, 'first', noon);
    await storage.timetable.saveFeedToken(studioId, 'second', later);
    expect(await storage.timetable.findFeedToken(studioId)).toBe('second');
    expect(await storage.timetable.findStudioOfFeed('second')).toBe(studioId);
    expect(await storage.timetable.findStudioOfFeed('first')).toBeUndefined();
  });
});
