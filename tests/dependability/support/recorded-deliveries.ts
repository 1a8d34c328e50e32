import { createDeliveries } from '../../../bot/deliveries.ts';
import { handlers } from '../../../bot/handlers.ts';
import type { Desk, Reaction } from '../../../bot/handling.ts';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { readAction } from '../../../bot/requests/read-action.ts';
import { readCommand } from '../../../bot/requests/read-command.ts';
import { readEvent } from '../../../bot/requests/read-event.ts';
import { readView } from '../../../bot/requests/read-view.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { openStorage, type SqliteStorage } from '../../../storage/open-storage.ts';
import { actionPayload, messagePayload, viewPayload } from '../../helpers/payloads.ts';
import { studioId } from './conversation.ts';

export const now = '2026-11-02T09:00:00.000Z';
const self = { botUserId: 'UBOT', botId: 'B1' };

/** A delivery as it came in, and the way it takes through the app. */
export type Recorded = {
  readonly name: string;
  readonly deliver: (app: Studio) => Promise<void>;
};

type Studio = ReturnType<typeof openStudio>;

/** Deliveries over real handlers and stores; ids are drawn from the name of what is being decided. */
export function openStudio(storage: SqliteStorage) {
  let drawn = 0;
  let deciding = '';
  const makeDesk = createMakeDesk({
    clock: { now: () => now },
    newId: () => {
      drawn += 1;
      return `${deciding}-${drawn}`;
    },
    words: english,
    catalogue,
  });
  const deliveries = createDeliveries(storage, makeDesk);
  const begin = (name: string) => {
    deciding = name;
    drawn = 0;
  };
  return {
    storage,
    event: async (name: string, body: unknown) => {
      begin(name);
      const incoming = readEvent(body, self);
      if (incoming === undefined) throw new Error('A recorded event can be read.');
      if (!(await deliveries.keepEvent(incoming, body))) return;
      const { request } = incoming;
      if (request.kind !== 'home' && request.kind !== 'message')
        throw new Error('A recorded event is a look at a home or something said.');
      await deliveries.decideEvent(incoming, (desk) =>
        request.kind === 'home' ? handlers.home(request, desk) : handlers.message(request, desk),
      );
    },
    gesture: async (
      name: string,
      incoming: { readonly studioId: string; readonly key: string; readonly asker: { personId: string } },
      work: (desk: Desk) => Promise<Reaction>,
    ) => {
      begin(name);
      await deliveries.decide({ ...incoming, request: undefined }, work);
    },
  };
}

export const event = (name: string, body: Record<string, unknown>): Recorded => ({
  name,
  deliver: (studio) => studio.event(name, body),
});

export const command = (name: string, body: Record<string, unknown>): Recorded => {
  const incoming = readCommand(body);
  const handler = handlers.commands[incoming.command];
  return {
    name,
    deliver: (studio) => studio.gesture(name, incoming, (desk) => found(handler)(incoming.request, desk)),
  };
};

export const click = (name: string, actionId: string, value: string, personId: string): Recorded => {
  const incoming = readAction(actionPayload(actionId, value, { user: { id: personId, team_id: studioId } }));
  return {
    name,
    deliver: (studio) =>
      studio.gesture(name, incoming, (desk) => found(handlers.actions[actionId])(incoming.request, desk)),
  };
};

export const form = (
  name: string,
  callbackId: string,
  values: Readonly<Record<string, string>>,
  personId: string,
  metadata: string,
): Recorded => {
  const state = Object.fromEntries(
    Object.entries(values).map(([block, value]) => [block, { input: { value } }]),
  );
  const payload = viewPayload(callbackId, state, { user: { id: personId, team_id: studioId } });
  const incoming = readView({ ...payload, view: { ...payload.view, private_metadata: metadata } });
  return {
    name,
    deliver: (studio) =>
      studio.gesture(name, incoming, (desk) => found(handlers.views[callbackId])(incoming.request, desk)),
  };
};

export function found<Value>(value: Value | undefined): Value {
  if (value === undefined) throw new Error('A recorded delivery has a handler.');
  return value;
}

export const said = (text: string, n: number, more: Record<string, unknown> = {}) =>
  messagePayload(text, { user: `U${n}`, channel: `D${n}`, ts: `200.00000${n}`, ...more });

/** Every table of the studio without what only tells the order of writing. */
export function contentOf({ database }: SqliteStorage): string {
  const rows = (sql: string) =>
    database
      .prepare(sql)
      .raw()
      .all()
      // A review tells its patterns against the week as known when it is posted: the order of others shows there.
      .map((row) => JSON.stringify(row).replace(/\([\d½]+ in its week\)/g, '(in its week)'))
      .sort();
  return [
    ...rows('SELECT * FROM plans'),
    ...rows('SELECT * FROM plan_versions'),
    ...rows('SELECT plan_id, kind, version, done_by, done_at, reason FROM reviews'),
    ...rows('SELECT * FROM classes'),
    ...rows('SELECT class_id, muscle, sets FROM class_load'),
    ...rows(`SELECT delivery_key, kind, done_at FROM deliveries WHERE delivery_key NOT LIKE 'event:%'`),
    ...rows('SELECT notice_key, goes_to, action, payload, state FROM notices'),
  ].join('\n');
}

/** Messages that are kept true; the others say once what was found when they were asked for. */
const keptMessages = ['card:', 'page:', 'review:', 'cover:', 'in:', 'countdown:', 'digest:', 'after:'];

/**
 * What stands at last, whatever was said on the way: plans, reviews, classes, load, and each kept message with
 * its newest content.
 */
export function standingOf({ database }: SqliteStorage): string {
  const rows = (sql: string) =>
    database
      .prepare(sql)
      .raw()
      .all()
      .map((row) => JSON.stringify(row))
      .sort();
  const newest = new Map<string, string>();
  for (const row of database
    .prepare('SELECT notice_key, action, payload FROM notices ORDER BY sequence')
    .raw()
    .all()) {
    if (!Array.isArray(row)) throw new Error('A row is a list.');
    const [key, action, payload] = row.map(String);
    const { of = key } = JSON.parse(action ?? '{}');
    // A review's earlier rounds are over, and say what was then.
    const name = of.replace(/^(review:.*):\d+$/, '$1');
    if (keptMessages.some((each) => name.startsWith(each)) && !of.includes(':difference:'))
      newest.set(name, payload ?? '');
  }
  return [
    ...rows('SELECT * FROM plans'),
    ...rows('SELECT * FROM plan_versions'),
    ...rows('SELECT plan_id, kind, version, done_by, done_at, reason FROM reviews'),
    ...rows(
      `SELECT class_id, starts_at, room, instructor_id, people, plan_id, state, cover_open, confirmed_by,
        confirmed_for, outcome ->> 'how', outcome ->> 'changes', outcome ->> 'effort', outcome ->> 'length',
        outcome ->> 'saidBy' FROM classes`,
    ),
    ...rows('SELECT class_id, muscle, sets FROM class_load'),
    ...[...newest].map(([key, payload]) => `${key} ${payload}`).sort(),
  ].join('\n');
}

/** A database that histories begin from: each gets one of its own with what stands in the file. */
export function databaseLike(seedFile: string, tables: readonly string[]): SqliteStorage {
  const storage = openStorage({ file: ':memory:' });
  const { database } = storage;
  database.pragma('foreign_keys = OFF');
  database.exec(`ATTACH '${seedFile}' AS seed`);
  for (const table of tables) database.exec(`INSERT INTO main.${table} SELECT * FROM seed.${table}`);
  database.exec('DETACH seed');
  database.pragma('foreign_keys = ON');
  return storage;
}

export function tablesOf({ database }: SqliteStorage): readonly string[] {
  return database
    .prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'`)
    .pluck()
    .all()
    .map(String);
}
