import fc from 'fast-check';
import nock from 'nock';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createDeliveries } from '../../bot/deliveries.ts';
import { handlers } from '../../bot/handlers.ts';
import type { Desk, FormValues, Handler, Reaction } from '../../bot/handling.ts';
import { createMakeDesk } from '../../bot/make-desk.ts';
import { english } from '../../bot/words/en.ts';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';
import { createFakeWorkspace } from '../helpers/fake-workspace.ts';
import { openTestStorage } from '../helpers/open-test-storage.ts';
import {
  actionPayload,
  commandPayload,
  messagePayload,
  shortcutPayload,
  viewPayload,
} from '../helpers/payloads.ts';
import { createFastTime, createTestApp } from '../helpers/test-app.ts';
import { classText, coachId, seedStudio, studioId } from './support/conversation.ts';

const now = '2026-11-02T09:00:00.000Z';

/** Pieces of the shorthand, of talk and of what no keyboard makes. */
const piece = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.constantFrom(
      ...'Row & Squat, 40 min|level 2|12 people|kit: dumbbells, mats|warm-up 6:00: march|straight x3, 40/20|circuit x3, 30/15|emom 10|every 1:30 x6|tabata|amrap 8|ladder 10 to 1|for time, cap 10:00|finisher, 60/0|stations x2, 45/15, 2 each|rest 60, explain|goblet squat|push-up|plank each side|? core|8 push-up|cool-down to the end|say: breathe|swap A1 front squat|drop D|rounds A x4|rest B 15|undo|redo|help|week|week 2026-W41|versions|hello|18 now|line 2: plank|by round: squat, squat pulse|timeline|approve|Thu 18:30|tomorrow 6pm'.split(
        '|',
      ),
    ),
  },
  { weight: 2, arbitrary: fc.string({ maxLength: 24 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '<@U0BOT>',
      '<!channel>',
      '&amp;lt;',
      '*bold*',
      '`code`',
      '\u202Ertl',
      '💪🏽',
      '=1+1',
      '999999999999 min',
      '-5/-5',
      'x0',
      '0 min',
      '40/0',
      '1e9',
      '{{7*7}}',
      "'; DROP TABLE plans; --",
      '\u0000',
      '\uD800',
      'İ',
      'ß'.repeat(30),
      '__proto__',
      'constructor',
    ),
  },
);
const text = fc
  .array(fc.tuple(piece, fc.constantFrom(' ', ', ', '\n', ' + ', '')), { maxLength: 10 })
  .map((pieces) => pieces.flat().join(''));

const person = fc.integer({ min: 1, max: 60 }).map((n) => `U${n}`);
const anyValue = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom('real plan', 'later version', 'real edit') },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '',
      '{}',
      'null',
      '[]',
      'mon:2026-11-02|11',
      'x|over',
      '{"plan":"__proto__","version":1}',
    ),
  },
  { weight: 1, arbitrary: text },
);

type Said =
  | { readonly kind: 'message'; readonly inThread: boolean; readonly text: string; readonly personId: string }
  | { readonly kind: 'command'; readonly text: string; readonly personId: string }
  | { readonly kind: 'shortcut'; readonly text: string; readonly personId: string }
  | {
      readonly kind: 'click';
      readonly name: string;
      readonly value: string;
      readonly edit: string;
      readonly personId: string;
    }
  | {
      readonly kind: 'form';
      readonly name: string;
      readonly values: FormValues;
      readonly value: string;
      readonly edit: string;
      readonly personId: string;
    };

const message: fc.Arbitrary<Said> = fc.record({
  kind: fc.constant('message' as const),
  inThread: fc.boolean(),
  text,
  personId: person,
});
const gesture: fc.Arbitrary<Said> = fc.oneof(
  fc.record({ kind: fc.constant('command' as const), text, personId: person }),
  fc.record({ kind: fc.constant('shortcut' as const), text, personId: person }),
  fc.record({
    kind: fc.constant('click' as const),
    name: fc.constantFrom(...Object.keys(handlers.actions)),
    value: anyValue,
    edit: text,
    personId: fc.constantFrom('U1', coachId, 'U5'),
  }),
  fc.record({
    kind: fc.constant('form' as const),
    name: fc.constantFrom(...Object.keys(handlers.views)),
    values: fc.dictionary(
      fc.constantFrom('class', 'date', 'time', 'room', 'people', 'reason', 'changes'),
      fc.oneof(
        text,
        fc.constantFrom('2026-11-03', '18:30', '25:99', '2026-02-31', '12'),
        fc.array(text, { maxLength: 2 }),
      ),
    ),
    value: anyValue,
    edit: text,
    personId: fc.constantFrom('U1', coachId, 'U5'),
  }),
);

const isAnswered = ({ ack, answers }: Reaction) => ack !== undefined || answers.length > 0;

/** A studio with one draft; what is said to it is decided by the real handlers. */
async function openTalk() {
  const storage = openStorage({ file: ':memory:' });
  await seedStudio(storage, '2026-11-01T09:00:00.000Z');
  let drawn = 0;
  const newId = () => {
    drawn += 1;
    return `id-${drawn}`;
  };
  const makeDesk = createMakeDesk({ clock: { now: () => now }, newId, words: english, catalogue });
  const deliveries = createDeliveries(storage, makeDesk);
  const decide = async (personId: string, work: (desk: Desk) => Promise<Reaction>): Promise<Reaction> => {
    const asker = { personId };
    const decided = await deliveries.decide({ studioId, key: newId(), asker, request: undefined }, work);
    if (decided.kind === 'repeated') throw new Error('A key of its own is new.');
    return decided.reaction;
  };
  const stamp = '300.000001';
  const place = 'D1';
  const direct = { kind: 'message', source: 'direct message', place, edited: false } as const;
  const text = classText('Seed');
  await decide('U1', (desk) => handlers.message({ ...direct, personId: 'U1', stamp, text }, desk));
  const [plan] = await storage.plans.listByAuthor(studioId, 'U1', 1);
  const buttonValue = (value: string, edit: string): string => {
    const known = { plan: plan?.id, version: value === 'later version' ? 99 : 1 };
    switch (value) {
      case 'real plan':
      case 'later version':
        return JSON.stringify(known);
      case 'real edit':
        return JSON.stringify({ ...known, edit: edit.slice(0, 1_400), at: [0, 3], name: edit.slice(0, 20) });
      default:
        return value;
    }
  };
  const notices = storage.database.prepare('SELECT count(*) FROM notices').pluck();

  const hear = (said: Said): Promise<Reaction> => {
    const { personId } = said;
    const triggerId = 't';
    switch (said.kind) {
      case 'message': {
        const request = { ...direct, personId, stamp: `400.${newId()}`, text: said.text };
        const [own, thread] = [{ place: `D${personId.slice(1)}` }, { thread: stamp }];
        return decide(personId, (desk) =>
          handlers.message({ ...request, ...(said.inThread ? thread : own) }, desk),
        );
      }
      case 'command':
        return decide(
          personId,
          found(handlers.commands['/evenset'], {
            kind: 'command',
            personId,
            place,
            text: said.text,
            triggerId,
          }),
        );
      case 'shortcut': {
        const handler = found(Object.values(handlers.shortcuts)[0], {
          kind: 'shortcut',
          callbackId: 'x',
          personId,
          triggerId,
          message: { place, stamp, text: said.text },
        });
        return decide(personId, handler);
      }
      case 'click': {
        const value = buttonValue(said.value, said.edit);
        return decide(
          personId,
          found(handlers.actions[said.name], {
            kind: 'action',
            actionId: said.name,
            value,
            personId,
            triggerId,
          }),
        );
      }
      case 'form': {
        const metadata = buttonValue(said.value, said.edit);
        return decide(
          personId,
          found(handlers.views[said.name], {
            kind: 'view',
            callbackId: said.name,
            viewId: 'V1',
            metadata,
            values: said.values,
            personId,
            triggerId,
          }),
        );
      }
    }
  };
  return {
    storage,
    /** True where the person gets to see something. */
    say: async (said: Said): Promise<boolean> => {
      const before = notices.get();
      const reaction = await hear(said);
      return isAnswered(reaction) || notices.get() !== before;
    },
  };
}

function found<Request>(handler: Handler<Request> | undefined, request: Request) {
  if (handler === undefined) throw new Error('The name has a handler.');
  return (desk: Desk) => handler(request, desk);
}

/** Answered each time; a fresh studio every hundred, so that its drafts stay few. */
async function expectAnswers(arbitrary: fc.Arbitrary<Said>, numRuns: number): Promise<void> {
  let said = 0;
  let talk = await openTalk();
  await fc.assert(
    fc.asyncProperty(arbitrary, async (each) => {
      said += 1;
      if (said % 100 === 0) {
        await talk.storage.close();
        talk = await openTalk();
      }
      expect(await talk.say(each)).toBe(true);
    }),
    { numRuns },
  );
  await talk.storage.close();
}

describe('nobody is left without an answer', () => {
  test('5,000 messages', () => expectAnswers(message, 5_000), 240_000);
  test('4,000 commands, clicks, forms and shortcuts', () => expectAnswers(gesture, 4_000), 240_000);
});

describe('payloads with parts left out or put wrong', () => {
  let storage: SqliteStorage;
  beforeAll(async () => {
    nock.disableNetConnect();
    storage = await openTestStorage();
    await seedStudio(storage, '2026-11-01T09:00:00.000Z');
  });
  afterAll(async () => {
    nock.cleanAll();
    nock.enableNetConnect();
    await storage.close();
  });

  const wrong = fc.oneof(
    fc.constantFrom(undefined, null, '', 0, -1, true, [], {}, [null], 'x'.repeat(300)),
    fc.string({ maxLength: 8 }),
  );
  const payload = fc.oneof(
    fc.tuple(
      fc.constant('command'),
      text.map((said) => commandPayload(said)),
    ),
    fc.tuple(
      fc.constant('click'),
      fc
        .tuple(fc.constantFrom(...Object.keys(handlers.actions), 'nothing'), text)
        .map(([name, value]) => actionPayload(name, value)),
    ),
    fc.tuple(
      fc.constant('form'),
      fc
        .tuple(fc.constantFrom(...Object.keys(handlers.views), 'nothing'), text)
        .map(([name, said]) => viewPayload(name, { class: { input: { value: said } } })),
    ),
    fc.tuple(
      fc.constant('shortcut'),
      text.map((said) => shortcutPayload('draft-from-message', said)),
    ),
    fc.tuple(
      fc.constant('message'),
      text.map((said) => messagePayload(said)),
    ),
  );
  const broken = fc.tuple(payload, fc.nat(), wrong).map(([[kind, body], at, value]) => {
    const paths = pathsIn(body);
    const path = paths[at % paths.length] ?? [];
    return { kind, path: path.join('.'), body: withValueAt(body, path, value) };
  });

  test('1,000 payloads: acknowledged, told where it says whom to tell, and the app goes on', async () => {
    const workspace = createFakeWorkspace();
    const app = createTestApp({ storage, handlers, realTime: createFastTime(15_000) });
    await app.start();
    const seen = () => workspace.told.length + workspace.responses.length + workspace.calls.length;
    const notices = storage.database.prepare('SELECT count(*) FROM notices').pluck();
    let triggers = 0;
    await fc.assert(
      fc.asyncProperty(broken, async ({ kind, body }) => {
        const before = [seen(), notices.get()].join();
        triggers += 1;
        // A trigger that has come before is a repetition, and answered before.
        const isTriggered = typeof body.trigger_id === 'string';
        const sent = isTriggered ? { ...body, trigger_id: `${triggers}.fuzz` } : body;
        const { acks, failed } = await app.send(sent);
        const isTold = [seen(), notices.get()].join() !== before || acks.some((ack) => ack !== undefined);
        // The library drops what has no known shape; the workspace then shows its own failure.
        if (kind === 'message' || acks.length === 0) return;
        expect(failed).toBeUndefined();
        expect(isTold || !saysWho(body)).toBe(true);
      }),
      { numRuns: 1_000 },
    );
    await app.settle();
    const { acks } = await app.send(commandPayload('help'));
    expect(acks).toEqual([undefined]);
    await app.stop();
  }, 240_000);
});

type Path = readonly string[];

function pathsIn(value: unknown, at: Path = []): readonly Path[] {
  if (typeof value !== 'object' || value === null) return [at];
  return [
    ...(at.length === 0 ? [] : [at]),
    ...Object.entries(value).flatMap(([key, each]) => pathsIn(each, [...at, key])),
  ];
}

function withValueAt(body: object, [key, ...rest]: Path, value: unknown): Record<string, unknown> {
  const copy: Record<string, unknown> = structuredClone({ ...body });
  if (key === undefined) return copy;
  const inner = copy[key];
  copy[key] =
    rest.length === 0 || typeof inner !== 'object' || inner === null
      ? value
      : withValueAt(inner, rest, value);
  return copy;
}

/** Whether it names a person as the workspace does; nobody else can be told. */
function saysWho(body: Record<string, unknown>): boolean {
  const { user, user_id: userId } = body;
  const isPerson = (id: unknown) => typeof id === 'string' && /^[UW][A-Z0-9]+$/.test(id);
  return isPerson(userId) || (typeof user === 'object' && user !== null && 'id' in user && isPerson(user.id));
}
