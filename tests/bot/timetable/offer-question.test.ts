import { afterEach, beforeEach, expect, test } from 'vitest';
import { buttonsOf, type Conversation, openConversation, people } from '../../helpers/conversation.ts';

let talk: Conversation;
beforeEach(async () => {
  talk = await openConversation({
    slots: [{ id: 'fri', name: 'Friday', weekday: 'Fri', time: '18:30', seconds: 2_700, instructorId: 'U1' }],
  });
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

test('the answer takes the place of the question, and the offer taken back that of the answer', async () => {
  await talk.say(people.ana, 'can’t teach Fri');
  const question = () => talk.inChannel('D1').at(-1) ?? { text: '', blocks: [] };
  const posts = talk.inChannel('D1').length;
  expect(buttonsOf(question())).toEqual(['Offer it to the team']);
  await talk.tap(people.ana, 'Offer it to the team');
  expect(question().text).toContain('offered to the team');
  expect(buttonsOf(question())).toEqual(['Take it back']);
  await talk.tap(people.ana, 'Take it back');
  expect(question().text).toContain('it is not offered any more, you teach it.');
  expect(buttonsOf(question())).toEqual([]);
  expect(talk.inChannel('D1')).toHaveLength(posts);
  expect(talk.inChannel('C1').at(-1)?.text).toContain('after all');
});

test('an offer made anew, or of a class moved there and back, is a new post that the team sees', async () => {
  const offer = async () => {
    await talk.say(people.ana, 'can’t teach Fri');
    await talk.tap(people.ana, 'Offer it to the team');
  };
  const inTeam = () => talk.inChannel('C1').map((post) => [post.text.split('\n')[0], buttonsOf(post)]);
  await offer();
  await talk.tap(people.ana, 'Take it back');
  await offer();
  const open = expect.stringContaining('Who takes it?');
  expect(inTeam()).toEqual([
    [expect.stringContaining('after all'), []],
    [open, ['I take it']],
  ]);
  await talk.say(people.ana, 'move Fri to 19:00');
  await talk.say(people.ana, 'move Fri to 18:30');
  expect(inTeam().filter(([, buttons]) => buttons?.length !== 0)).toEqual([[open, ['I take it']]]);
  expect(inTeam()).toHaveLength(4);
});
