import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { actions, views } from '../../bot/ids.ts';
import { openStorage } from '../../storage/open-storage.ts';
import { classText, coachId, seedStudio, studioId } from './support/conversation.ts';
import {
  click,
  databaseLike,
  event,
  form,
  found,
  openStudio,
  type Recorded,
  said,
  standingOf,
  tablesOf,
} from './support/recorded-deliveries.ts';

/** Deliveries about one class still to come and one that has ended, by name. */
const names = [
  'move',
  'cancel',
  'on again',
  'in',
  'cannot',
  'take',
  'take too',
  'people',
  'edit',
  'as planned',
  'not taught',
  'with changes',
  'effort',
  'length',
] as const;
type Name = (typeof names)[number];

/**
 * Where the order of two deliveries rightly shows, and after what. Of all others the order does not show in what
 * stands at last.
 */
const ordered: readonly {
  readonly of: readonly [Name, Name];
  readonly after?: readonly Name[];
  readonly why: string;
}[] = [
  { of: ['move', 'cancel'], why: 'the one is of the start the class had, the other of the class that is on' },
  { of: ['move', 'cannot'], why: 'the offer is of the start that its button names' },
  { of: ['move', 'on again'], after: ['cancel'], why: 'a cancelled class is not moved' },
  {
    of: ['move', 'take'],
    after: ['cannot'],
    why: 'what is taken is the class at the start that was offered',
  },
  {
    of: ['move', 'take too'],
    after: ['cannot'],
    why: 'what is taken is the class at the start that was offered',
  },
  { of: ['cancel', 'on again'], why: 'what is on is not put on again' },
  { of: ['cancel', 'in'], why: 'nobody is in for a cancelled class' },
  { of: ['cancel', 'cannot'], why: 'a cancelled class is not offered' },
  { of: ['cancel', 'take'], after: ['cannot'], why: 'a cancelled class is not taken' },
  { of: ['cancel', 'take too'], after: ['cannot'], why: 'a cancelled class is not taken' },
  { of: ['cancel', 'people'], why: 'without its class, a head count in the thread is an edit of the plan' },
  { of: ['on again', 'in'], after: ['cancel'], why: 'nobody is in for a cancelled class' },
  { of: ['on again', 'cannot'], after: ['cancel'], why: 'a cancelled class is not offered' },
  { of: ['on again', 'people'], after: ['cancel'], why: 'a cancelled class has no head count' },
  { of: ['cannot', 'take'], why: 'what is not offered is not taken' },
  { of: ['cannot', 'take too'], why: 'what is not offered is not taken' },
  { of: ['take', 'take too'], after: ['cannot'], why: 'the first to take it gets it' },
  { of: ['take', 'people'], after: ['cannot'], why: 'the head count is said by whoever teaches' },
  { of: ['take too', 'people'], after: ['cannot'], why: 'the head count is said by whoever teaches' },
  { of: ['people', 'edit'], after: ['cancel'], why: 'two edits of a plan are two versions' },
  { of: ['as planned', 'not taught'], why: 'the last word on how it went counts' },
  { of: ['as planned', 'with changes'], why: 'the last word on how it went counts' },
  { of: ['not taught', 'with changes'], why: 'the last word on how it went counts' },
];

let folder: string;
let seedFile: string;
let tables: readonly string[];
let recorded: Readonly<Record<Name, Recorded>>;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenset-class-order-'));
  seedFile = join(folder, 'seed.sqlite');
  const storage = openStorage({ file: seedFile });
  await seedStudio(storage, '2026-11-01T09:00:00.000Z');
  const studio = openStudio(storage);
  await event('seed', said(classText('Row', ', Thu 18:00'), 31)).deliver(studio);
  await event('seed-ended', said(classText('Ended'), 33)).deliver(studio);
  const planOf = async (author: string) =>
    found((await storage.plans.listByAuthor(studioId, author, 1))[0]).id;
  const planId = await planOf('U31');
  const plan = JSON.stringify({ plan: planId, version: 1 });
  await click('seed-send', actions.sendForReview, plan, 'U31').deliver(studio);
  await click('seed-approve', actions.approve, plan, coachId).deliver(studio);
  const scheduled = found((await storage.classes.findByPlan(studioId, planId))[0]);
  await storage.classes.save(studioId, {
    id: 'ended',
    startsAt: { date: '2026-11-02', time: '07:00', zone: 'UTC', instant: '2026-11-02T07:00:00.000Z' },
    slotSeconds: 1200,
    instructorId: 'U33',
    planId: await planOf('U33'),
    people: 10,
    state: 'planned',
  });
  tables = tablesOf(storage);
  await storage.close();
  const { instant } = scheduled.startsAt;
  const value = JSON.stringify([scheduled.id, instant]);
  const cancellation = JSON.stringify({
    classId: scheduled.id,
    startsAt: instant,
    change: { kind: 'cancel' },
  });
  const directly = (text: string, n: number) => said(text, n, { user: 'U31', channel: 'D31' });
  const inThread = (text: string, n: number) =>
    said(text, n, { user: 'U31', channel: 'D31', thread_ts: '200.0000031' });
  recorded = {
    move: event('move', directly('move Thu 18:00 to Fri 19:00', 41)),
    cancel: form('cancel', views.confirmChange, {}, coachId, cancellation),
    'on again': event('on again', directly('on again Thu 18:00', 43)),
    in: click('in', actions.imIn, value, 'U31'),
    cannot: click('cannot', actions.cannotTeach, value, 'U31'),
    take: click('take', actions.takeClass, value, 'U32'),
    'take too': click('take too', actions.takeClass, value, 'U34'),
    people: event('people', inThread('18 now', 44)),
    edit: event('edit', inThread('rounds A x2', 45)),
    'as planned': click('as planned', actions.taughtAsPlanned, 'ended', 'U33'),
    'not taught': click('not taught', actions.notTaught, 'ended', 'U33'),
    'with changes': form(
      'with changes',
      views.taughtWithChanges,
      { changes: 'one round less' },
      'U33',
      'ended',
    ),
    effort: click('effort', actions.effort, 'ended|7', 'U33'),
    length: click('length', actions.length, 'ended|over', 'U33'),
  };
});
afterAll(() => rmSync(folder, { recursive: true }));

const memory = new Map<string, Promise<string>>();

/** What stands after a history; those without repeats come again and again. */
function standingAfter(history: readonly Name[]): Promise<string> {
  const key = history.join();
  const standing = memory.get(key) ?? replay(history);
  memory.set(key, standing);
  return standing;
}

async function replay(history: readonly Name[]): Promise<string> {
  const storage = databaseLike(seedFile, tables);
  const studio = openStudio(storage);
  for (const name of history) await recorded[name].deliver(studio);
  const standing = standingOf(storage);
  await storage.close();
  return standing;
}

const isOrdered = (a: Name, b: Name) => ordered.some(({ of }) => of.includes(a) && of.includes(b) && a !== b);

/** The same history in the one order that stands for all that differ only where order does not show. */
function inPlainOrder(history: readonly Name[]): readonly Name[] {
  const left = [...history];
  const plain: Name[] = [];
  while (left.length > 0) {
    const free = left.filter((name, place) => !left.slice(0, place).some((other) => isOrdered(name, other)));
    const first = found(names.find((name) => free.includes(name)));
    left.splice(left.indexOf(first), 1);
    plain.push(first);
  }
  return plain;
}

/** Up to five deliveries, each one to four times, in any order. */
const anyHistory: fc.Arbitrary<readonly Name[]> = fc
  .uniqueArray(fc.constantFrom(...names), { minLength: 2, maxLength: 5 })
  .chain((picked) =>
    fc.tuple(
      ...picked.map((name) => fc.integer({ min: 1, max: 4 }).map((times) => Array<Name>(times).fill(name))),
    ),
  )
  .chain((each) => {
    const all: readonly Name[] = each.flat();
    return fc.shuffledSubarray([...all], { minLength: all.length, maxLength: all.length });
  });

describe('deliveries about one class, each one to four times, in any order', () => {
  test('leave the same standing but where the order of two is named as one that shows', async () => {
    await fc.assert(
      fc.asyncProperty(anyHistory, async (history) => {
        const firsts = [...new Set(history)];
        expect(await replay(history)).toBe(await standingAfter(inPlainOrder(firsts)));
      }),
      { numRuns: 100, seed: 20261125 },
    );
  }, 180_000);

  test('each order that is named does show', async () => {
    const hidden: string[] = [];
    for (const { of, after = [], why } of ordered) {
      const [a, b] = of;
      const both = [await standingAfter([...after, a, b]), await standingAfter([...after, b, a])];
      if (both[0] === both[1]) hidden.push(`${a}, ${b}: ${why}`);
    }
    expect(hidden).toEqual([]);
  }, 60_000);
});
