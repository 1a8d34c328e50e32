import nock from 'nock';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Handlers } from '../../../bot/handling.ts';
import { noReaction } from '../../../bot/handling.ts';
import type { SqliteStorage } from '../../../storage/open-storage.ts';
import { createFakeWorkspace } from '../../helpers/fake-workspace.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';
import {
  actionPayload,
  commandPayload,
  eventPayload,
  messagePayload,
  shortcutPayload,
  viewPayload,
} from '../../helpers/payloads.ts';
import { createTestApp } from '../../helpers/test-app.ts';

type Payload = Readonly<Record<string, unknown>>;

let storage: SqliteStorage;
beforeEach(async () => {
  nock.disableNetConnect();
  storage = await openTestStorage();
});
afterEach(async () => {
  nock.cleanAll();
  nock.enableNetConnect();
  await storage.close();
});

/** Sends one payload to handlers that note whether they were reached. */
async function sent(payload: Payload) {
  let reached = 0;
  const note = async () => {
    reached += 1;
    return noReaction;
  };
  const handlers: Handlers = {
    commands: { '/evenset': note },
    actions: { undo: note },
    views: { 'draft-form': note },
    shortcuts: { 'draft-from-message': note },
    message: note,
    home: note,
    left: note,
    groups: note,
  };
  const workspace = createFakeWorkspace();
  const app = createTestApp({ storage, handlers });
  await app.start();
  const { acks } = await app.send({ ...payload });
  await app.stop();
  nock.cleanAll();
  const told =
    workspace.told.length + workspace.responses.length + workspace.callsOf('chat.postMessage').length;
  const kept = storage.database.prepare('SELECT count(*) FROM deliveries').pluck().get();
  return { reached, acked: acks.length, told, kept, log: app.lines.join('') };
}

/** The payload with one part put in another's place. */
function withPart(payload: Payload, [key = '', ...rest]: readonly string[], value: unknown): Payload {
  const inner = payload[key];
  const isInner = rest.length > 0 && typeof inner === 'object' && inner !== null;
  const next = Array.isArray(inner)
    ? inner.map((each, place) => (String(place) === rest[0] ? withPart(each, rest.slice(1), value) : each))
    : isInner
      ? withPart({ ...inner }, rest, value)
      : value;
  return { ...payload, [key]: next };
}

/** Not what the workspace makes: markup, another kind of id, another type, far too long. */
const noIds = ['U1> <!channel', 'C1 ', 'u1', '', '../..', 7, ['U1'], { id: 'U1' }, `U${'1'.repeat(500)}`];
const noStamps = ['1', '1.x', '1e3.1', 'now', 1.5, ['1.1'], `${'1'.repeat(50)}.1`];
const noTexts = [7, ['x'], { text: 'x' }, true];

type Case = readonly [kind: string, payload: Payload, path: string, values: readonly unknown[]];

const named = ([kind, payload, path, values]: Case, place: number) =>
  [`${kind} ${path} ${place + 1}`, payload, path, values] as const;

const form = { class: { any: { type: 'plain_text_input', value: 'x' } } };
const choice = (chosen: Payload) => ({ when: { any: { type: 'any', ...chosen } } });

describe('a gesture with a part that is not as the workspace makes it reaches no handler, and is told', () => {
  const gestures: readonly Case[] = [
    ['command', commandPayload(), 'team_id', noIds],
    ['command', commandPayload(), 'channel_id', ['C1> <!here', 'c1', 7]],
    ['command', commandPayload(), 'text', noTexts],
    ['command', commandPayload(), 'trigger_id', [7, '', 'x'.repeat(300)]],
    ['click', actionPayload('undo', 'v'), 'team.id', noIds],
    ['click', actionPayload('undo', 'v'), 'channel.id', ['C1> <!here', 'c1', 7]],
    ['click', actionPayload('undo', 'v'), 'message.ts', noStamps],
    ['click', actionPayload('undo', 'v'), 'message.thread_ts', noStamps],
    ['click', actionPayload('undo', 'v'), 'trigger_id', [7, '', 'x'.repeat(300)]],
    ['click', actionPayload('undo', 'v'), 'actions.0.value', noTexts],
    ['click', actionPayload('undo', 'v'), 'actions.0.selected_date', ['2026-02-31', '31.2.2026', 7]],
    ['click', actionPayload('undo', 'v'), 'actions.0.selected_time', ['24:00', '9:5', 'noon', 7]],
    ['click', actionPayload('undo', 'v'), 'actions.0.selected_user', noIds],
    ['click', actionPayload('undo', 'v'), 'actions.0.selected_users', [['U1', 'u2'], 'U1']],
    ['click', actionPayload('undo', 'v'), 'actions.0.selected_option', [{ value: 7 }, 'x']],
    ['form', viewPayload('draft-form', form), 'view.id', [7, ['V1']]],
    ['form', viewPayload('draft-form', form), 'view.private_metadata', noTexts],
    ['form', viewPayload('draft-form', form), 'view.app_installed_team_id', noIds],
    ['form', viewPayload('draft-form', form), 'view.state.values.class.any.value', noTexts],
    ['form', viewPayload('draft-form', choice({ selected_date: 'x' })), 'trigger_id', ['1.trigger']],
    ['form', viewPayload('draft-form', choice({ selected_time: '99:99' })), 'trigger_id', ['2.trigger']],
    ['form', viewPayload('draft-form', choice({ selected_channel: '#team' })), 'trigger_id', ['3.trigger']],
    ['form', viewPayload('draft-form', choice({ selected_conversation: 'U1' })), 'trigger_id', ['4.trigger']],
    ['shortcut', shortcutPayload('draft-from-message', 'x'), 'message.ts', noStamps],
    ['shortcut', shortcutPayload('draft-from-message', 'x'), 'message.text', noTexts],
    ['shortcut', shortcutPayload('draft-from-message', 'x'), 'channel.id', ['C1> <!here', 7]],
  ];
  test.each(gestures.map(named))('%s', async (_name, payload, path, values) => {
    for (const value of values) {
      const { reached, acked, told, kept } = await sent(withPart(payload, path.split('.'), value));
      expect({ value, reached, acked, told, kept }).toEqual({
        value,
        reached: 0,
        acked: 1,
        told: 1,
        kept: 0,
      });
    }
  });

  test('its log names the part and nothing that stood in it', async () => {
    const { log } = await sent(withPart(actionPayload('undo', 'v'), ['team', 'id'], 'canary of a part'));
    expect(log).toContain('"errorPaths":["team.id"]');
    expect(log).not.toContain('canary');
  });

  test('a person who is none can not be told: acknowledged and logged', async () => {
    const { reached, acked, told, log } = await sent(commandPayload('', { user_id: '<!channel>' }));
    expect({ reached, acked, told }).toEqual({ reached: 0, acked: 1, told: 0 });
    expect(log).toContain('payload not read');
  });
});

describe('an event with a part that is not as the workspace makes it is acknowledged and not kept', () => {
  const home = eventPayload({ type: 'app_home_opened', tab: 'home', user: 'U1' });
  const events: readonly Case[] = [
    ['message', messagePayload('x'), 'event.user', noIds],
    ['message', messagePayload('x'), 'event.channel', ['D1> <!here', 7, 'U1']],
    ['message', messagePayload('x'), 'event.ts', noStamps],
    ['message', messagePayload('x', { thread_ts: '1.1' }), 'event.thread_ts', noStamps],
    ['message', messagePayload('x'), 'event.text', noTexts],
    ['message', messagePayload('x'), 'team_id', noIds],
    ['message', messagePayload('x'), 'authorizations.0.team_id', noIds],
    ['home', home, 'event.user', noIds],
    ['home', home, 'event.tab', ['other', 7]],
  ];
  test.each(events.map(named))('%s', async (_name, payload, path, values) => {
    for (const value of values) {
      const { reached, acked, told, kept } = await sent(withPart(payload, path.split('.'), value));
      expect({ value, reached, acked, told, kept }).toEqual({
        value,
        reached: 0,
        acked: 1,
        told: 0,
        kept: 0,
      });
    }
  });
});

test('what the app does not read may be anything: the platform adds parts', async () => {
  for (const payload of [
    commandPayload(),
    actionPayload('undo'),
    viewPayload('draft-form', form),
    messagePayload('x'),
  ])
    expect(await sent({ ...payload, added: { by: ['the', 'platform'] } })).toMatchObject({
      reached: 1,
      acked: 1,
    });
});
