import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Conversation, openConversation, people } from '../../helpers/conversation.ts';
import { eventPayload } from '../../helpers/payloads.ts';
import { pushAndHinge } from './classes.ts';

const { ana } = people;
let talk: Conversation;

beforeEach(async () => {
  talk = await openConversation();
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

const withBear = pushAndHinge.replace('push-up', 'bear crawl');
const withPlank = pushAndHinge.replace('push-up', 'side plank');

/** An edit of the message of that stamp, made at `edited`. */
const edit = (stamp: string, text: string, edited: string, thread?: string) =>
  talk.deliver(
    eventPayload({
      type: 'message',
      subtype: 'message_changed',
      channel_type: 'im',
      channel: 'D1',
      message: {
        type: 'message',
        user: ana,
        text,
        ts: stamp,
        edited: { user: ana, ts: edited },
        ...(thread === undefined ? {} : { thread_ts: thread }),
      },
      previous_message: { text: '' },
    }),
  );

describe('an edit that comes before its own message', () => {
  test('opens the draft; the message, when it comes, changes nothing', async () => {
    await edit('200.000001', withBear, '200.000002');
    const first = await talk.versionOf(ana);
    expect(first).toMatchObject({ version: 1, text: withBear });
    expect(await talk.planOf(ana)).toMatchObject({ home: { place: 'D1', thread: '200.000001' } });
    await talk.say(ana, pushAndHinge, { stamp: '200.000001' });
    expect(await talk.plansOf(ana)).toHaveLength(1);
    expect(await talk.versionOf(ana)).toEqual(first);
    await talk.say(ana, 'rounds A x4', { thread: '200.000001' });
    expect((await talk.versionOf(ana)).version).toBe(2);
  });

  test('of words that are no class, or in a thread, opens none', async () => {
    await edit('200.000001', 'hello there', '200.000002');
    await edit('200.000003', withBear, '200.000004', '200.000001');
    expect(await talk.plansOf(ana)).toEqual([]);
    expect(talk.posts()).toEqual([]);
  });

  test('of words of the timetable does nothing: they count as first said', async () => {
    await edit('200.000001', 'week', '200.000002');
    expect(talk.posts()).toEqual([]);
  });
});

test('of two edits the later one stands, whichever comes first', async () => {
  await talk.say(ana, pushAndHinge, { stamp: '200.000001' });
  await edit('200.000001', withPlank, '200.000009');
  await edit('200.000001', withBear, '200.000005');
  expect(await talk.versionOf(ana)).toMatchObject({ version: 2, text: withPlank });
  await edit('200.000001', withBear, '200.000010');
  expect(await talk.versionOf(ana)).toMatchObject({ version: 3, text: withBear });
});

test('of two edits before their message the later one stands too', async () => {
  await edit('200.000001', withPlank, '200.000009');
  await edit('200.000001', withBear, '200.000005');
  await talk.say(ana, pushAndHinge, { stamp: '200.000001' });
  expect(await talk.versionOf(ana)).toMatchObject({ version: 1, text: withPlank });
});

test('a class that was answered as no class opens its draft once it is put right', async () => {
  const stamp = await talk.say(ana, 'hello there');
  await edit(stamp, pushAndHinge, '300.000001');
  expect(await talk.planOf(ana)).toMatchObject({ home: { place: 'D1', thread: stamp } });
});
