import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { personFirst, personText } from '../../../bot/words/en/person-words.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import {
  type Conversation,
  openConversation,
  people,
  reviewChannel,
  shownText,
} from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana, ben, cleo } = people;

let talk: Conversation;
beforeEach(async () => {
  talk = await openConversation();
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

const review = () =>
  talk
    .inChannel(reviewChannel)
    .filter(({ thread }) => thread === undefined)
    .at(-1);
const inReview = () => ({ channel: reviewChannel, thread: review()?.ts ?? '' });
const kept = async () => JSON.stringify(await talk.storage.care.exportStudio('T1'));

test('a coach who is forgotten reads as a coach wherever their step is told again', async () => {
  const thread = await talk.say(ana, pushAndHinge);
  await talk.say(ana, 'send', { thread });
  await talk.mention(cleo, 'approve: well built', inReview());
  expect(talk.inThread(thread).at(-1)?.text).toMatch(/^<@U8> approved v1/);

  await talk.say(cleo, 'forget me');
  await talk.tap(cleo, 'Forget me', talk.inChannel('D8').at(-1));
  expect(await kept()).not.toContain(cleo);

  await talk.mention(people.dora, 'B: slower down', inReview());
  expect(shownText(review() ?? { text: '', blocks: [] })).toContain(': v1, by a coach*');
  const before = talk.posts().length;
  await talk.say(ana, 'work A 45', { thread });
  await talk.say(ana, 'undo', { thread });
  const told = [...talk.posts().slice(before), review()].map((post) =>
    post === undefined ? '' : `${post.text}\n${shownText(post)}`,
  );
  expect(told.join('\n')).not.toContain(cleo);
  expect(told.join('\n')).not.toContain('forgotten');
});

test('an instructor who is forgotten reads as an instructor, and what waits to be sent names nobody', async () => {
  const thread = await talk.say(ana, pushAndHinge);
  await talk.say(ana, 'send', { thread });
  await talk.mention(cleo, 'approve', inReview());
  await talk.say(ana, 'work A 45', { thread });
  await talk.storage.notices.enqueue('T1', {
    key: 'waits',
    to: 'C1',
    action: { kind: 'post' },
    payload: {
      text: `<@${ana}> and <@${ben}> teach.`,
      blocks: [{ type: 'section', text: { type: 'mrkdwn', text: `<@${ana}> teaches.` } }],
    },
    causedAt: '2026-11-02T09:00:00.000Z',
  });
  await talk.storage.inTransaction(({ care }) =>
    care.forgetPerson('T1', ana, [], '2026-11-02T09:00:00.000Z'),
  );
  expect(await kept()).not.toMatch(/\bU1\b/);
  await talk.settle();
  const posted = talk.inChannel('C1').at(-1);
  expect(posted?.text).toBe(`someone and <@${ben}> teach.`);
  expect(shownText(posted ?? { text: '', blocks: [] })).toBe('someone teaches.');

  await talk.say(cleo, 'reviews');
  expect(JSON.stringify(talk.posts().at(-1))).toContain('an instructor');
  expect(JSON.stringify(talk.posts().at(-1))).not.toMatch(/U1\b|<@forgotten>/);
});

test('the coaches hear which weekly slots nobody teaches then, and not who did', async () => {
  await talk.close();
  const slot = { weekday: 'Fri', time: '18:30', seconds: 2_700 } as const;
  talk = await openConversation({
    slots: [
      { ...slot, id: 'fri', name: 'Friday Lift', instructorId: ana },
      { ...slot, id: 'late', name: 'Late Lift', time: '19:30', instructorId: ben },
    ],
  });
  await talk.say(ana, 'forget me');
  await talk.tap(ana, 'Forget me', talk.inChannel('D1').at(-1));
  for (const place of ['D8', 'D9'])
    expect(talk.inChannel(place).at(-1)?.text).toBe(english.data.slotsLeft(['Friday Lift']));
  expect(await kept()).not.toMatch(/\bU1\b/);
});

test('a person is named by one function alone', () => {
  expect([personText('U1', 'a coach'), personFirst('U1')]).toEqual(['<@U1>', '<@U1>']);
  expect([personText('forgotten', 'a coach'), personFirst('forgotten', 'an instructor')]).toEqual([
    'a coach',
    'An instructor',
  ]);
  const folder = new URL('../../../bot/', import.meta.url);
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.ts') && !name.startsWith('local/'),
  );
  const naming = files.filter((name) => readFileSync(new URL(name, folder), 'utf8').includes('<@${'));
  expect(naming).toEqual(['words/en/person-words.ts']);
});

test('the desk of a studio whose coach was forgotten has one coach less', async () => {
  await talk.storage.inTransaction(({ care }) =>
    care.forgetPerson('T1', cleo, [], '2026-11-02T09:00:00.000Z'),
  );
  const makeDesk = createMakeDesk({
    clock: { now: () => '2026-11-02T09:00:00.000Z' },
    newId: () => 'id',
    words: english,
    catalogue,
  });
  const desk = await talk.storage.inTransaction((stores) => makeDesk('T1', stores));
  expect(desk.settings.headCoaches).toEqual([people.dora]);
});
