import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDeliveries } from '../../bot/deliveries.ts';
import { type Desk, noReaction, type Reaction } from '../../bot/handling.ts';
import { actions, views } from '../../bot/ids.ts';
import { createMakeDesk } from '../../bot/make-desk.ts';
import { english } from '../../bot/words/en.ts';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';
import { commandPayload, eventPayload } from '../helpers/payloads.ts';
import { classText, coachId, seedStudio, studioId } from './support/conversation.ts';
import {
  click,
  command,
  contentOf,
  databaseLike,
  event,
  form,
  found,
  now,
  openStudio,
  type Recorded,
  said,
  tablesOf,
} from './support/recorded-deliveries.ts';

/** Drafts that stand before, one for each delivery that is about a plan; each person has their own. */
const standing = ['sent', 'approved', 'asked', 'undone', 'edited'] as const;
const seeds = standing.map((name, place) =>
  event(`seed-${name}`, said(classText(`Class ${place}`), place + 11)),
);

function recordedFor(planOf: ReadonlyMap<string, string>): {
  readonly independent: readonly Recorded[];
  readonly dependent: readonly Recorded[];
} {
  const value = (name: string, version = 1, edit?: string) =>
    JSON.stringify({ plan: planOf.get(name), version, ...(edit === undefined ? {} : { edit }) });
  const twice = said(classText('Twin'), 21);
  return {
    independent: [
      event('message', said(classText('Row', ', Mon 18:00'), 22)),
      event('hello', said('hello', 23)),
      event('unread', said('Pull, 30 min\ncircuit x3, 40/20\ngoblin squash', 24)),
      // One gesture that comes as two events of different ids.
      event('twin', twice),
      event('twin', { ...twice, event_id: 'EvOther' }),
      command('command', commandPayload(classText('Press'), { user_id: 'U25' })),
      form('form', views.draft, { class: classText('Carry') }, 'U26', ''),
      event('home', eventPayload({ type: 'app_home_opened', user: 'U27', tab: 'home' })),
      click('send', actions.sendForReview, value('sent'), 'U11'),
      click('approve', actions.approve, value('approved'), coachId),
      form('ask', views.askChanges, { reason: 'Shorter rests' }, coachId, value('asked')),
      click('undo', actions.undo, value('undone', 2), 'U14'),
      click('edit', actions.applyEdit, value('edited', 1, 'rounds A x2'), 'U15'),
      event('thread', said('level 3', 28, { user: 'U11', channel: 'D11', thread_ts: '200.000005' })),
    ],
    dependent: [
      event('message', said(classText('Row', ', Mon 18:00'), 22)),
      event('edit', said('rounds A x2', 29, { user: 'U22', channel: 'D22', thread_ts: '200.0000022' })),
      click('send', actions.sendForReview, value('sent'), 'U11'),
      click('withdraw', actions.withdraw, value('sent'), 'U11'),
      click('approve', actions.approve, value('sent'), coachId),
      form('ask', views.askChanges, { reason: 'Shorter rests' }, coachId, value('sent')),
      click('change', actions.applyEdit, value('sent', 1, 'rounds A x2'), 'U11'),
      click('undo', actions.undo, value('sent', 2), 'U11'),
      click('redo', actions.applyEdit, value('sent', 2, 'rounds A x4'), 'U11'),
    ],
  };
}

let folder: string;
let seedFile: string;
let recorded: ReturnType<typeof recordedFor>;
let tables: readonly string[];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'evenset-order-'));
  seedFile = join(folder, 'seed.sqlite');
  const storage = openStorage({ file: seedFile });
  await seedStudio(storage, '2026-11-01T09:00:00.000Z');
  const studio = openStudio(storage);
  for (const seed of seeds) await seed.deliver(studio);
  const planOf = new Map<string, string>();
  for (const [place, name] of standing.entries()) {
    const [plan] = await storage.plans.listByAuthor(studioId, `U${place + 11}`, 1);
    planOf.set(name, found(plan).id);
  }
  const value = (name: string) => JSON.stringify({ plan: planOf.get(name), version: 1 });
  await click('seed-1', actions.sendForReview, value('approved'), 'U12').deliver(studio);
  await click('seed-2', actions.sendForReview, value('asked'), 'U13').deliver(studio);
  const edit = JSON.stringify({ plan: planOf.get('undone'), version: 1, edit: 'rounds A x2' });
  await click('seed-3', actions.applyEdit, edit, 'U14').deliver(studio);
  recorded = recordedFor(planOf);
  tables = tablesOf(storage);
  await storage.close();
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What the database holds after a history, begun from the standing drafts. */
async function outcomeOf(history: readonly Recorded[]): Promise<string> {
  const storage = databaseLike(seedFile, tables);
  const studio = openStudio(storage);
  for (const each of history) await each.deliver(studio);
  const content = contentOf(storage);
  await storage.close();
  return content;
}

/** Up to three of the recorded deliveries, each one to four times, in any order. */
const historyOf = (from: () => readonly Recorded[]): fc.Arbitrary<readonly Recorded[]> =>
  fc
    .uniqueArray(fc.nat(), { minLength: 1, maxLength: 3, selector: (n) => n % from().length })
    .chain((picked) =>
      fc.tuple(...picked.map((n) => fc.integer({ min: 1, max: 4 }).map((times) => Array(times).fill(n)))),
    )
    .chain((each) => {
      const all: readonly number[] = each.flat();
      return fc.shuffledSubarray([...all], { minLength: all.length, maxLength: all.length });
    })
    .map((order) => order.map((n) => found(from()[n % from().length])));

const inOrderOfRecord = (history: readonly Recorded[], from: readonly Recorded[]) =>
  from.filter((each) => history.includes(each));
const firsts = (history: readonly Recorded[]) => [...new Set(history)];

const memory = new Map<string, Promise<string>>();
/** Outcomes of histories without repeats come again and again. */
function knownOutcome(history: readonly Recorded[], from: readonly Recorded[]): Promise<string> {
  const key = `${from.length} ${history.map((each) => from.indexOf(each)).join(',')}`;
  const known = memory.get(key) ?? outcomeOf(history);
  memory.set(key, known);
  return known;
}

/** One of two people says or does something: as an event, one gesture as two events, or a click. */
type Light = { readonly person: 0 | 1; readonly kind: 'event' | 'twin' | 'click'; readonly n: number };

const anyLight: fc.Arbitrary<Light> = fc.record({
  person: fc.constantFrom(0 as const, 1 as const),
  kind: fc.constantFrom('event' as const, 'twin' as const, 'click' as const),
  n: fc.nat({ max: 2 }),
});

const nameOf = ({ person, kind, n }: Light) => `${kind} ${n} of U${person}`;

/** A change that shows a second doing and the order of doings: one more version of the person's plan. */
async function noteOnPlan(desk: Desk, { person }: Light, name: string): Promise<Reaction> {
  const { stores, newId } = desk;
  const author = `U${person}`;
  const [known] = await stores.plans.listByAuthor(desk.studioId, author, 1);
  const record: PlanRecord = {
    ...(known ?? { id: newId(), authorId: author, state: 'draft', createdAt: now }),
    currentVersion: (known?.currentVersion ?? 0) + 1,
  };
  if (known === undefined) await stores.plans.create(desk.studioId, record);
  else await stores.plans.update(desk.studioId, record);
  await stores.plans.addVersion(desk.studioId, {
    planId: record.id,
    version: record.currentVersion,
    text: name,
    problemCount: 1,
    catalogueEdition: '1',
    totalSeconds: 0,
    load: [],
    setsByPattern: {},
    findingCodes: [],
    madeBy: author,
    madeAt: now,
    cause: { kind: 'written' },
  });
  const action = { kind: 'post' } as const;
  const notice = { key: newId(), to: author, action, payload: { text: name }, causedAt: now };
  await stores.notices.enqueue(desk.studioId, notice);
  return noReaction;
}

function deliverLight(storage: SqliteStorage, studio: string, decidesOnce = true) {
  let drawn = 0;
  const makeDesk = createMakeDesk({
    clock: { now: () => now },
    newId: () => {
      drawn += 1;
      return `new-${drawn}`;
    },
    words: english,
    catalogue,
  });
  const deliveries = createDeliveries(storage, makeDesk);
  return async (light: Light, sibling: boolean): Promise<void> => {
    const name = nameOf(light);
    const work = (desk: Desk) => noteOnPlan(desk, light, name);
    const suffix = decidesOnce ? '' : `:${Math.random()}`;
    const asker = { personId: `U${light.person}` };
    const request = { kind: 'home', personId: asker.personId } as const;
    if (light.kind === 'click') {
      await deliveries.decide({ studioId: studio, key: `${name}${suffix}`, asker, request }, work);
      return;
    }
    const key = `event:${name}${light.kind === 'twin' && sibling ? ':2' : ''}${suffix}`;
    const gesture = light.kind === 'twin' ? `said:${name}${suffix}` : key;
    const incoming = { studioId: studio, key, gesture, asker, request };
    if (await deliveries.keepEvent(incoming, {})) await deliveries.decideEvent(incoming, work);
  };
}

/** What stands in the studio: each person's versions in order, and the posts. */
async function lightContent(storage: SqliteStorage, studio: string) {
  const versionsOf = async (author: string) => {
    const [plan] = await storage.plans.listByAuthor(studio, author, 1);
    return plan === undefined
      ? []
      : (await storage.plans.listVersions(studio, plan.id)).map(({ text }) => text);
  };
  return {
    versions: [await versionsOf('U0'), await versionsOf('U1')],
    posts: (await storage.notices.listUnfinished(studio, 100)).map(({ payload }) => payload.text),
    unfinished: (await storage.deliveries.listUnfinished(studio)).length,
  };
}

/** The same by thought alone: each gesture counts once, where it came first. */
function expectedContent(history: readonly Light[]) {
  const order = [...new Set(history.map(nameOf))];
  return {
    versions: ['U0', 'U1'].map((author) => order.filter((name) => name.endsWith(author))),
    posts: order,
    unfinished: 0,
  };
}

type Content = ReturnType<typeof expectedContent>;

const unordered = ({ versions, posts, unfinished }: Content): Content => ({
  versions: versions.map((each) => each.toSorted()),
  posts: posts.toSorted(),
  unfinished,
});

const lightHistory = fc
  .uniqueArray(anyLight, { minLength: 1, maxLength: 5, selector: nameOf })
  .chain((lights) =>
    fc.tuple(
      ...lights.map((light) =>
        fc.integer({ min: 1, max: 4 }).map((times) => Array<Light>(times).fill(light)),
      ),
    ),
  )
  .chain((each) => {
    const all: readonly Light[] = each.flat();
    return fc.shuffledSubarray([...all], { minLength: all.length, maxLength: all.length });
  });

describe('deliveries that come one to four times, in any order', () => {
  test('each counts once, where it came first (5,000 histories)', async () => {
    const storage = openStorage({ file: ':memory:' });
    let studios = 0;
    await fc.assert(
      fc.asyncProperty(lightHistory, fc.boolean(), async (history, together) => {
        studios += 1;
        const studio = `T${studios}`;
        const deliver = deliverLight(storage, studio);
        const each = history.map((light, place) => () => deliver(light, place % 2 === 1));
        if (together) await Promise.all(each.map((run) => run()));
        else for (const run of each) await run();
        const [content, expected] = [await lightContent(storage, studio), expectedContent(history)];
        // At the same time, an event that is written first may be decided after a click.
        if (together) expect(unordered(content)).toEqual(unordered(expected));
        else expect(content).toEqual(expected);
      }),
      { numRuns: 5_000 },
    );
    await storage.close();
  }, 120_000);

  test('a twin that decides every delivery anew is caught', async () => {
    const storage = openStorage({ file: ':memory:' });
    const deliver = deliverLight(storage, 'T1', false);
    const history: readonly Light[] = [0, 1].map(() => ({ person: 0, kind: 'click', n: 0 }));
    for (const light of history) await deliver(light, false);
    expect(await lightContent(storage, 'T1')).not.toEqual(expectedContent(history));
    await storage.close();
  });

  test('recorded ones of different classes, through the real handlers: the same content', async () => {
    const from = () => recorded.independent;
    await fc.assert(
      fc.asyncProperty(historyOf(from), async (history) => {
        expect(await outcomeOf(history)).toBe(await knownOutcome(inOrderOfRecord(history, from()), from()));
      }),
      { numRuns: 80 },
    );
  }, 120_000);

  test('recorded ones about one class, through the real handlers: repeats change nothing', async () => {
    const from = () => recorded.dependent;
    await fc.assert(
      fc.asyncProperty(historyOf(from), async (history) => {
        expect(await outcomeOf(history)).toBe(await knownOutcome(firsts(history), from()));
      }),
      { numRuns: 60 },
    );
  }, 120_000);
});
