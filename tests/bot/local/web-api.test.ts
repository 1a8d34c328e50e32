import { describe, expect, test } from 'vitest';
import { answerInPlace } from '../../../bot/local/answer-in-place.ts';
import { answerApiCall } from '../../../bot/local/web-api.ts';
import { directPlaceId, type Workspace } from '../../../bot/local/workspace.ts';
import {
  botToken,
  createTestWorkspace,
  elsewhere,
  hidden,
  ines,
  mira,
  review,
  team,
  testApp,
  tomas,
} from './start-test-workspace.ts';

const baseUrl = 'http://127.0.0.1:4600';
const call = (
  workspace: Workspace,
  method: string,
  args: object = {},
  token: string | undefined = botToken,
) => answerApiCall({ method, args, token }, workspace, baseUrl);
const section = (text: string) => ({ type: 'section', text: { type: 'mrkdwn', text } });
const modal = (change: object = {}) => ({
  type: 'modal',
  title: { type: 'plain_text', text: 'Title' },
  blocks: [section('a')],
  ...change,
});
const error = (answer: object) => ('error' in answer ? answer.error : 'none');

describe('who may call', () => {
  const { workspace } = createTestWorkspace();
  test.each([
    ['no token', 'auth.test', '', 'not_authed'],
    ['another token', 'auth.test', 'xoxb-other', 'invalid_auth'],
    ['an unknown method', 'chat.shout', botToken, 'unknown_method'],
    ['a method named like a property', 'constructor', botToken, 'unknown_method'],
    ['the right token', 'auth.test', botToken, 'none'],
  ])('%s', (_name, method, token, expected) => {
    expect(error(call(workspace, method, {}, token))).toBe(expected);
  });

  test.each([
    ['reactions.add', 'reactions:write'],
    ['conversations.open', 'im:write'],
  ])('%s needs a scope that the manifest does not ask for', (method, needed) => {
    expect(call(workspace, method, {})).toEqual({
      ok: false,
      error: 'missing_scope',
      needed,
      provided: testApp.scopes.join(','),
    });
  });

  test('reading a channel back needs the history scope of its kind', () => {
    const { workspace: bare } = createTestWorkspace({ app: { ...testApp, scopes: ['chat:write'] } });
    expect(call(bare, 'conversations.history', { channel: team })).toMatchObject({
      needed: 'channels:history',
    });
    expect(call(bare, 'conversations.replies', { channel: directPlaceId(mira), ts: '1' })).toMatchObject({
      needed: 'im:history',
    });
  });
});

describe('what can not be posted', () => {
  test.each<[string, object, string]>([
    ['an unknown channel', { channel: 'C0NONE', text: 'a' }, 'channel_not_found'],
    ['a channel without the app', { channel: elsewhere, text: 'a' }, 'not_in_channel'],
    ['a private channel without the app', { channel: hidden, text: 'a' }, 'channel_not_found'],
    ['no channel', { text: 'a' }, 'invalid_arguments'],
    ['no text', { channel: team }, 'no_text'],
    ['only spaces', { channel: team, text: '  ' }, 'no_text'],
    ['no text and no blocks', { channel: team, text: '', blocks: '[]' }, 'no_text'],
    ['a text over 40,000', { channel: team, text: 'x'.repeat(40_001) }, 'msg_too_long'],
    ['blocks that are no list', { channel: team, text: 'a', blocks: '{}' }, 'invalid_blocks_format'],
    ['blocks that are no JSON', { channel: team, text: 'a', blocks: '[{' }, 'invalid_arguments'],
    [
      'a block past its limit',
      { channel: team, text: 'a', blocks: [section('x'.repeat(3001))] },
      'invalid_blocks',
    ],
    [
      'blocks with more than 13,200 characters',
      { channel: team, text: 'a', blocks: [1, 2, 3, 4, 5].map(() => section('x'.repeat(2641))) },
      'msg_blocks_too_long',
    ],
    ['a thread that is not there', { channel: team, text: 'a', thread_ts: '1.000000' }, 'thread_not_found'],
    ['metadata without a type', { channel: team, text: 'a', metadata: '{}' }, 'invalid_metadata_schema'],
    [
      'a picture that was never uploaded',
      { channel: team, text: 'a', blocks: [{ type: 'image', alt_text: 'a', slack_file: { id: 'F0NONE' } }] },
      'invalid_blocks',
    ],
  ])('%s', (_name, args, expected) => {
    const { workspace } = createTestWorkspace();
    expect(error(call(workspace, 'chat.postMessage', args))).toBe(expected);
    expect(workspace.listMessages(team)).toEqual([]);
  });

  test('what is just inside the limits is posted', () => {
    const { workspace } = createTestWorkspace();
    const blocks = [1, 2, 3, 4, 5].map(() => section('x'.repeat(2640)));
    expect(
      error(call(workspace, 'chat.postMessage', { channel: team, text: 'x'.repeat(40_000), blocks })),
    ).toBe('none');
  });

  test('a reply to a reply', () => {
    const { workspace } = createTestWorkspace();
    const parent = workspace.post({ placeId: team, authorId: mira, text: 'a' });
    const reply = workspace.post({ placeId: team, authorId: mira, text: 'b', threadTs: parent.ts });
    expect(
      error(call(workspace, 'chat.postMessage', { channel: team, text: 'c', thread_ts: reply.ts })),
    ).toBe('cannot_reply_to_message');
  });
});

describe('posting, changing and reading back', () => {
  test('a person stands for the direct message with them', () => {
    const { workspace } = createTestWorkspace();
    const answer = call(workspace, 'chat.postMessage', { channel: mira, text: 'a' });
    expect(answer).toMatchObject({ ok: true, channel: directPlaceId(mira) });
  });

  test('stamps are unique, increase and come from the clock', () => {
    const { workspace } = createTestWorkspace();
    const stamps = [1, 2, 3].map(() => workspace.post({ placeId: team, authorId: mira, text: 'a' }).ts);
    expect(stamps).toEqual(['1791964800.000100', '1791964800.000200', '1791964800.000300']);
  });

  test('a channel reads back newest first, threads apart, metadata when asked for', () => {
    const { workspace } = createTestWorkspace();
    const metadata = { event_type: 'notice', event_payload: { key: 'k1' } };
    const first = call(workspace, 'chat.postMessage', {
      channel: team,
      text: 'first',
      metadata: JSON.stringify(metadata),
    });
    call(workspace, 'chat.postMessage', { channel: team, text: 'second' });
    call(workspace, 'chat.postMessage', { channel: team, text: 'reply', thread_ts: first.ts });
    const history = (extra: object) => call(workspace, 'conversations.history', { channel: team, ...extra });
    expect(history({})).toMatchObject({
      messages: [{ text: 'second' }, { text: 'first', reply_count: 1, thread_ts: first.ts }],
    });
    expect(JSON.stringify(history({}))).not.toContain('k1');
    expect(history({ include_all_metadata: 'true' })).toMatchObject({
      messages: [{ text: 'second' }, { text: 'first', metadata }],
    });
    expect(history({ oldest: first.ts })).toMatchObject({ messages: [{ text: 'second' }] });
    expect(history({ limit: '1' })).toMatchObject({
      messages: [{ text: 'second' }],
      has_more: true,
      response_metadata: { next_cursor: '1' },
    });
    expect(history({ limit: '1', cursor: '1' })).toMatchObject({
      messages: [{ text: 'first' }],
      has_more: false,
    });
    expect(call(workspace, 'conversations.replies', { channel: team, ts: first.ts })).toMatchObject({
      messages: [{ text: 'first' }, { text: 'reply' }],
    });
  });

  test('an update of the text alone removes the blocks', () => {
    const { workspace } = createTestWorkspace();
    const { ts } = call(workspace, 'chat.postMessage', { channel: team, text: 'a', blocks: [section('a')] });
    call(workspace, 'chat.update', { channel: team, ts, text: 'b' });
    expect(workspace.findMessage(team, String(ts))).toMatchObject({ text: 'b' });
    expect(workspace.findMessage(team, String(ts))).not.toHaveProperty('blocks');
  });

  test.each<[string, (own: string, other: string) => [string, object], string]>([
    ['a longer text', (own) => ['chat.update', { ts: own, text: 'x'.repeat(4001) }], 'msg_too_long'],
    ['no text', (own) => ['chat.update', { ts: own }], 'no_text'],
    [
      'a message of someone else',
      (_own, other) => ['chat.update', { ts: other, text: 'a' }],
      'cant_update_message',
    ],
    [
      'a message that is not there',
      () => ['chat.update', { ts: '1.000000', text: 'a' }],
      'message_not_found',
    ],
    [
      'deleting what someone else wrote',
      (_own, other) => ['chat.delete', { ts: other }],
      'cant_delete_message',
    ],
    ['deleting nothing', () => ['chat.delete', { ts: '1.000000' }], 'message_not_found'],
    ['a link to nothing', () => ['chat.getPermalink', { message_ts: '1.000000' }], 'message_not_found'],
  ])('can not be changed: %s', (_name, build, expected) => {
    const { workspace } = createTestWorkspace();
    const own = workspace.post({ placeId: team, authorId: 'U0BOT', text: 'own' }).ts;
    const other = workspace.post({ placeId: team, authorId: mira, text: 'other' }).ts;
    const [method, args] = build(own, other);
    expect(error(call(workspace, method, { channel: team, ...args }))).toBe(expected);
  });

  test('a link names the message, and its thread', () => {
    const { workspace } = createTestWorkspace();
    const parent = workspace.post({ placeId: team, authorId: mira, text: 'a' });
    const reply = workspace.post({ placeId: team, authorId: 'U0BOT', text: 'b', threadTs: parent.ts });
    expect(call(workspace, 'chat.getPermalink', { channel: team, message_ts: reply.ts })).toMatchObject({
      permalink: `${baseUrl}/archives/${team}/p1791964800000200?thread_ts=${parent.ts}&cid=${team}`,
    });
  });

  test('places and groups', () => {
    const { workspace } = createTestWorkspace();
    expect(call(workspace, 'usergroups.users.list', { usergroup: 'S0COACH' })).toEqual({
      ok: true,
      users: [tomas],
    });
    expect(error(call(workspace, 'usergroups.users.list', { usergroup: 'S0' }))).toBe('no_such_subteam');
    expect(call(workspace, 'conversations.info', { channel: team })).toMatchObject({
      needed: 'channels:read',
    });
  });

  test('a reaction stands once', () => {
    const { workspace } = createTestWorkspace({
      app: { ...testApp, scopes: [...testApp.scopes, 'reactions:write'] },
    });
    const { ts } = workspace.post({ placeId: team, authorId: mira, text: 'a' });
    const react = (name: string) =>
      error(call(workspace, 'reactions.add', { channel: team, timestamp: ts, name }));
    expect([react('eyes'), react('eyes'), react('No Name')]).toEqual([
      'none',
      'already_reacted',
      'invalid_name',
    ]);
  });
});

describe('ephemeral messages', () => {
  test('only their reader sees them, and no call reads or changes them', () => {
    const { workspace } = createTestWorkspace();
    const answer = call(workspace, 'chat.postEphemeral', { channel: team, user: mira, text: 'for Mira' });
    const ts = String(answer.message_ts);
    expect(workspace.visibleTo(mira, team).map(({ text }) => text)).toEqual(['for Mira']);
    expect(workspace.visibleTo(tomas, team)).toEqual([]);
    expect(call(workspace, 'conversations.history', { channel: team })).toMatchObject({ messages: [] });
    expect(error(call(workspace, 'chat.update', { channel: team, ts, text: 'b' }))).toBe('message_not_found');
    expect(error(call(workspace, 'conversations.replies', { channel: team, ts }))).toBe('thread_not_found');
  });

  test('nobody outside the channel gets one', () => {
    const { workspace } = createTestWorkspace();
    expect(error(call(workspace, 'chat.postEphemeral', { channel: review, user: ines, text: 'a' }))).toBe(
      'user_not_in_channel',
    );
  });
});

describe('views', () => {
  test('a trigger works once, for three real seconds, and must be known', () => {
    let realNow = 1_000_000;
    const { workspace } = createTestWorkspace({ realNow: () => realNow });
    const open = (trigger_id: string) => error(call(workspace, 'views.open', { trigger_id, view: modal() }));
    const used = workspace.issueTrigger(mira);
    expect([open(used), open(used)]).toEqual(['none', 'exchanged_trigger_id']);
    const late = workspace.issueTrigger(mira);
    const later = workspace.issueTrigger(mira);
    realNow += 3_000;
    expect(open(late)).toBe('none');
    realNow += 1;
    expect(open(later)).toBe('expired_trigger_id');
    expect(open('1.2.3')).toBe('invalid_trigger_id');
  });

  test('a refused view leaves the trigger unused', () => {
    const { workspace } = createTestWorkspace();
    const trigger_id = workspace.issueTrigger(mira);
    const open = (view: object) =>
      error(call(workspace, 'views.open', { trigger_id, view: JSON.stringify(view) }));
    expect(open(modal({ title: { type: 'plain_text', text: 'x'.repeat(25) } }))).toBe('invalid_arguments');
    expect(open(modal())).toBe('none');
  });

  test('a view over 250 KB', () => {
    const { workspace } = createTestWorkspace();
    const view = modal({ blocks: Array.from({ length: 90 }, () => section('x'.repeat(3000))) });
    expect(error(call(workspace, 'views.open', { trigger_id: workspace.issueTrigger(mira), view }))).toBe(
      'view_too_large',
    );
  });

  test('a stack holds three', () => {
    const { workspace } = createTestWorkspace();
    const show = (method: string) =>
      error(call(workspace, method, { trigger_id: workspace.issueTrigger(mira), view: modal() }));
    expect(['views.open', 'views.push', 'views.push', 'views.push'].map(show)).toEqual([
      'none',
      'none',
      'none',
      'push_limit_reached',
    ]);
  });

  test('an update with an old hash is refused', () => {
    const { workspace } = createTestWorkspace();
    call(workspace, 'views.open', { trigger_id: workspace.issueTrigger(mira), view: modal() });
    const [opened] = workspace.modalsOf(mira);
    const update = (hash: string | undefined) =>
      error(call(workspace, 'views.update', { view_id: opened?.id, hash, view: modal() }));
    expect([update(opened?.hash), update(opened?.hash), update(undefined)]).toEqual([
      'none',
      'hash_conflict',
      'none',
    ]);
    expect(error(call(workspace, 'views.update', { view_id: 'V0', view: modal() }))).toBe('not_found');
  });

  test('a home is published for one person', () => {
    const { workspace } = createTestWorkspace();
    const view = { type: 'home', blocks: [section('home')] };
    expect(call(workspace, 'views.publish', { user_id: mira, view })).toMatchObject({ ok: true });
    expect(error(call(workspace, 'views.publish', { user_id: mira, hash: '0', view }))).toBe('hash_conflict');
    expect(error(call(workspace, 'views.publish', { user_id: 'U0', view }))).toBe('user_not_found');
    expect(workspace.homeOf(tomas)).toBeUndefined();
  });
});

describe('files', () => {
  test('an upload in three steps becomes a picture of a message', () => {
    const { workspace } = createTestWorkspace();
    const got = call(workspace, 'files.getUploadURLExternal', { filename: 'a.png', length: '3' });
    const id = String(got.file_id);
    expect(got.upload_url).toBe(`${baseUrl}/upload/${id}`);
    const complete = () =>
      error(call(workspace, 'files.completeUploadExternal', { files: JSON.stringify([{ id }]) }));
    const post = () =>
      error(
        call(workspace, 'chat.postMessage', {
          channel: team,
          text: 'a',
          blocks: [{ type: 'image', alt_text: 'a', slack_file: { id } }],
        }),
      );
    expect([complete(), post()]).toEqual(['file_not_uploaded', 'invalid_blocks']);
    const file = workspace.findFile(id);
    if (file === undefined) throw new Error('the file is kept');
    workspace.changeFile({ ...file, bytes: Buffer.from('abc') });
    expect([complete(), post()]).toEqual(['none', 'none']);
  });
});

describe('a response address', () => {
  const grant = { userId: mira, placeId: team };

  test('works five times', () => {
    const { workspace } = createTestWorkspace();
    const id = workspace.issueResponse(grant);
    expect([1, 2, 3, 4, 5, 6].map(() => workspace.useResponse(id).kind)).toEqual([
      'ok',
      'ok',
      'ok',
      'ok',
      'ok',
      'refused',
    ]);
    expect(workspace.useResponse(id)).toEqual({ kind: 'refused', error: 'used_url' });
  });

  test('works for thirty minutes', () => {
    let realNow = 0;
    const { workspace } = createTestWorkspace({ realNow: () => realNow });
    const id = workspace.issueResponse(grant);
    realNow = 30 * 60_000;
    expect(workspace.useResponse(id).kind).toBe('ok');
    realNow += 1;
    expect(workspace.useResponse(id)).toEqual({ kind: 'refused', error: 'expired_url' });
  });

  test('answers to one person unless it says otherwise', () => {
    const { workspace } = createTestWorkspace();
    answerInPlace(grant, { text: 'alone' }, workspace);
    answerInPlace(grant, { text: 'for all', response_type: 'in_channel' }, workspace);
    expect(workspace.visibleTo(tomas, team).map(({ text }) => text)).toEqual(['for all']);
    expect(workspace.visibleTo(mira, team).map(({ text }) => text)).toEqual(['alone', 'for all']);
  });

  test('replaces and deletes the message it came from', () => {
    const { workspace } = createTestWorkspace();
    const { ts } = workspace.post({ placeId: team, authorId: 'U0BOT', text: 'a' });
    const from = { ...grant, messageTs: ts };
    expect(answerInPlace(from, { text: 'b', replace_original: true }, workspace).ok).toBe(true);
    expect(workspace.findMessage(team, ts)?.text).toBe('b');
    expect(answerInPlace(from, { delete_original: true }, workspace).ok).toBe(true);
    expect(workspace.findMessage(team, ts)).toBeUndefined();
    expect(error(answerInPlace(from, { text: 'c', replace_original: true }, workspace))).toBe(
      'message_not_found',
    );
    expect(error(answerInPlace(grant, { text: '' }, workspace))).toBe('no_text');
  });
});
