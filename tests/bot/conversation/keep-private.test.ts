import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { english } from '../../../bot/words/en.ts';
import { type Conversation, openConversation, people } from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana, cleo } = people;
const notKept = english.privacy.notKept('Eva’s bad knee');
const told = pushAndHinge.replace('plank', 'plank "Eva’s bad knee: no jumps"');

let talk: Conversation;
beforeEach(async () => {
  talk = await openConversation();
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

/** Nothing of it stands in the database, in no table and no column. */
const keptAnywhere = async (word: string) =>
  JSON.stringify(await talk.storage.care.exportStudio('T1')).includes(word);

describe('a class that may tell of someone’s health', () => {
  test('by message is not kept: the word is named, and put right in the message it becomes the draft', async () => {
    const thread = await talk.say(ana, told);
    expect(talk.posts().map(({ text }) => text)).toEqual([notKept]);
    expect(await talk.plansOf(ana)).toEqual([]);
    expect(await keptAnywhere('no jumps')).toBe(false);
    await talk.editMessage(ana, thread, told.replace('bad knee', 'sore hip'));
    expect(talk.posts().at(-1)?.text).toBe(english.privacy.notKept('Eva’s sore hip'));
    await talk.editMessage(ana, thread, pushAndHinge);
    expect((await talk.versionOf(ana)).text).toBe(pushAndHinge);
    expect(talk.inThread(thread)).toHaveLength(1);
  });

  test('by command is not kept, and comes back to its writer alone', async () => {
    await talk.command(ana, told);
    expect(talk.toldLast()).toBe(english.privacy.withText(notKept, told.replaceAll('&', '&amp;')));
    expect(talk.posts()).toEqual([]);
    expect(await talk.plansOf(ana)).toEqual([]);
  });

  test('in the form is told at its field, and the form stays open as filled in', async () => {
    await talk.command(ana, '');
    expect(await talk.submit(ana, { class: told })).toEqual({
      response_action: 'errors',
      errors: { class: english.privacy.inForm('Eva’s bad knee') },
    });
    expect(await talk.plansOf(ana)).toEqual([]);
  });
});

describe('in a draft that stands', () => {
  let thread: string;
  beforeEach(async () => {
    thread = await talk.say(ana, pushAndHinge);
  });
  const answer = () => talk.inThread(thread).at(-1)?.text;

  test.each([
    ['an edit', 'title Push for Eva’s bad knee'],
    ['a line put right', 'line 4: push-up "Eva’s bad knee"'],
    ['the class written anew', told],
  ])('%s is not made', async (_, said) => {
    await talk.say(ana, said, { thread });
    expect(answer()).toBe(notKept);
    expect((await talk.versionOf(ana)).version).toBe(1);
    expect(await keptAnywhere('no jumps')).toBe(false);
  });

  test('the original message edited so changes nothing, however often, and says so each time', async () => {
    await talk.editMessage(ana, thread, told);
    await talk.editMessage(ana, thread, `${told} `);
    expect(talk.posts().filter(({ text }) => text === notKept)).toHaveLength(2);
    expect((await talk.versionOf(ana)).version).toBe(1);
  });
});

describe('said of a class or of a move', () => {
  test.each([
    ['a class taught without a plan', ana, 'taught: squat, hinge, Eva’s bad knee'],
    ['an own move', ana, 'new move Eva’s bad knee press like push-up'],
    ['a nickname', cleo, 'nickname Eva’s bad knee press = push-up'],
  ])('%s is not kept', async (_, who, said) => {
    await talk.say(who, said);
    expect(talk.posts().at(-1)?.text).toBe(notKept);
    expect((await talk.storage.settings.find('T1'))?.settings).toMatchObject({ ownMoves: [], ownNames: {} });
  });
});
