import { expect, test } from 'vitest';
import { buttonsOf, openConversation, people } from '../../helpers/conversation.ts';

test('the answer takes the place of the question, and the offer taken back that of the answer', async () => {
  const talk = await openConversation({
    slots: [{ id: 'fri', name: 'Friday', weekday: 'Fri', time: '18:30', seconds: 2_700, instructorId: 'U1' }],
  });
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
  expect(await talk.close()).toEqual([]);
});
