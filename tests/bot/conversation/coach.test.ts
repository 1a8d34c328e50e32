import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { inertText } from '../../../bot/blocks/escape.ts';
import { actions } from '../../../bot/ids.ts';
import { english } from '../../../bot/words/en.ts';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  reviewChannel,
  type Sent,
  shownText,
} from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana, ben, cleo, dora } = people;
const nothing: Sent = { text: '', blocks: [] };
let talk: Conversation;
let thread: string;

beforeEach(async () => {
  talk = await openConversation();
  thread = await talk.say(ana, pushAndHinge);
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

const reply = (text: string, personId: string = ana) => talk.say(personId, text, { thread });
const lastAnswer = () => talk.inThread(thread).at(-1) ?? nothing;
const reviews = () => talk.inChannel(reviewChannel).filter((post) => post.thread === undefined);
const review = () => reviews().at(-1) ?? nothing;
const underReview = () => talk.inThread(reviews().at(-1)?.ts ?? '').at(-1) ?? nothing;
const lineOf = async (label: string) =>
  talk
    .view()
    .blocks.find(({ block_id }) => block_id === 'line')
    ?.element?.option_groups?.flatMap(({ options }) => options)
    .find(({ text }) => text.text.startsWith(`${label} `))?.value ?? '';

describe('the review', () => {
  test('stands in the order a coach reads', async () => {
    await reply('swap B kettlebell snatch');
    await reply('send');
    const lines = shownText(review()).split('\n');
    const order = [
      /Push &amp; Hinge, v2, for review from <@U1>/,
      /Not on the calendar yet\. · level 2 · 10 people · First time/,
      /circuit x3, 40\/20 → emom 6/,
      /30:00, exactly the teaching time/,
      /Technical: /,
      /\*Patterns\* {2}.*squat 3 \(3 in its week\)/,
      /Approve v2 for teaching/,
    ].map((wanted) => lines.findIndex((line) => wanted.test(line)));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(order).not.toContain(-1);
    expect(buttonsOf(review())).toEqual([
      'Approve v2 for teaching',
      'Approve with a note',
      'Ask for changes',
      'Comment on a move',
      'Full timeline',
      'All checks and why',
      'Muscles in detail',
    ]);
  });

  test('tells the explaining inside the fit, and the week’s other classes beside the patterns', async () => {
    thread = await talk.say(ben, pushAndHinge.replace('10 people', '10 people, Tue 18:00'));
    await reply('send', ben);
    await talk.tap(cleo, 'Approve v1 for teaching');
    thread = await talk.say(
      ana,
      pushAndHinge.replace('rest 60', 'rest 60, explain').replace('10 people', '10 people, Wed 18:00'),
    );
    await reply('send');
    expect(shownText(review())).toContain('*30:00, exactly the teaching time, explaining 1:00 inside it*');
    expect(shownText(review())).toContain('squat 3 (6 in its week)');
  });
});

describe('approval with a note', () => {
  test('by the form reaches the author and stays on the review', async () => {
    await reply('send');
    await talk.tap(cleo, 'Approve with a note');
    expect(await talk.submit(cleo, { note: 'Cue the *hinge* early' })).toBeUndefined();
    expect((await talk.planOf(ana)).state).toBe('approved');
    expect(lastAnswer().text).toBe(
      `<@U8> approved v1 for teaching: structure and timing.\nNote: ${inertText('Cue the *hinge* early')}`,
    );
    expect(shownText(review())).toContain(`Note: ${inertText('Cue the *hinge* early')}`);
    expect((await talk.stepsOf((await talk.planOf(ana)).id)).at(-1)?.reason).toBe('Cue the *hinge* early');
  });

  test('by a word in the thread', async () => {
    await reply('send');
    await talk.mention(cleo, 'approve: watch the clock', {
      channel: reviewChannel,
      thread: reviews()[0]?.ts ?? '',
    });
    expect(lastAnswer().text).toContain('Note: watch the clock');
  });

  test('by someone else is refused before there is a form, and in one that is open', async () => {
    await reply('send');
    await talk.tap(ben, 'Approve with a note');
    expect(talk.toldLast()).toBe(english.refusal({ code: 'not-a-head-coach', facts: {} }));
    expect(talk.view().blocks).toEqual([]);
    await talk.tap(cleo, 'Approve with a note');
    expect(await talk.submit(ben, { note: 'fine' })).toMatchObject({ response_action: 'errors' });
    expect((await talk.planOf(ana)).state).toBe('in review');
  });
});

describe('a comment on a move', () => {
  test('by the button goes to the author, to the thread and to the review, until it is resolved', async () => {
    await reply('send');
    await talk.tap(cleo, 'Comment on a move');
    expect(await talk.submit(cleo, { line: await lineOf('B'), comment: 'Why <so> early?' })).toBeUndefined();
    const told = '<@U8> on B kettlebell swing: Why &lt;so&gt; early?';
    expect(lastAnswer().text).toBe(told);
    expect(underReview().text).toBe(told);
    expect(shownText(review())).toContain(`${english.coach.openComments}*\n${told}`);
    await talk.tap(ana, 'Mark resolved', talk.inThread(thread).at(-1));
    expect(shownText(lastAnswer())).toContain('Resolved by <@U1>');
    expect(buttonsOf(lastAnswer())).toEqual([]);
    expect(buttonsOf(underReview())).toEqual([]);
    expect(shownText(review())).not.toContain('Why');
  });

  test('follows its line when letters move, and says when the line is gone', async () => {
    await reply('send');
    await talk.mention(cleo, 'B: why so early?', { channel: reviewChannel, thread: reviews()[0]?.ts ?? '' });
    await reply('drop A');
    expect(shownText(review())).toContain('<@U8> on A kettlebell swing: why so early?');
    await reply('drop A');
    expect(shownText(review())).toContain(`<@U8> on ${english.coach.commentGone}: why so early?`);
  });

  test.each([
    ['B slower at the top', 'slower at the top'],
    ['B: slower', 'slower'],
    ['b: slower', 'slower'],
  ])('%s by mention is one', async (words, text) => {
    await reply('send');
    await talk.mention(cleo, words, { channel: reviewChannel, thread: reviews()[0]?.ts ?? '' });
    const { id } = await talk.planOf(ana);
    expect(await talk.storage.comments.list('T1', id)).toMatchObject([{ text, by: cleo }]);
  });

  test.each(['I like this one', 'Z slower at the top', 'looks good to me'])('%s is none', async (words) => {
    await reply('send');
    await talk.mention(cleo, words, { channel: reviewChannel, thread: reviews()[0]?.ts ?? '' });
    const { id } = await talk.planOf(ana);
    expect(await talk.storage.comments.list('T1', id)).toEqual([]);
  });

  test('to a letter that is not there, or by someone else, is told and kept nowhere', async () => {
    await reply('send');
    const at = { channel: reviewChannel, thread: reviews()[0]?.ts ?? '' };
    await talk.mention(cleo, 'Z: why?', at);
    expect(underReview().text).toBe(english.coach.noSuchLetter('Z', 'E'));
    await talk.mention(ben, 'B: why?', at);
    expect(underReview().text).toBe(english.refusal({ code: 'not-a-head-coach', facts: {} }));
    const { id } = await talk.planOf(ana);
    expect(await talk.storage.comments.list('T1', id)).toEqual([]);
  });

  test('is resolved by its plan’s author or a coach only', async () => {
    await reply('send');
    await talk.mention(cleo, 'B: why?', { channel: reviewChannel, thread: reviews()[0]?.ts ?? '' });
    const { id } = await talk.planOf(ana);
    const [comment] = await talk.storage.comments.list('T1', id);
    await talk.act(
      ben,
      actions.resolveComment,
      JSON.stringify({ plan: id, version: 1, comment: comment?.id }),
    );
    expect(talk.toldLast()).toBe(english.coach.onlyTheirs);
    expect((await talk.storage.comments.list('T1', id))[0]?.resolved).toBeUndefined();
  });
});

describe('several reviews at once', () => {
  const over = pushAndHinge.replace('Push & Hinge, 30 min', 'Too long, 20 min');

  beforeEach(async () => {
    await reply('send');
    for (const [personId, text] of [
      [ben, pushAndHinge],
      [ben, over],
      [cleo, pushAndHinge],
    ] as const) {
      const stamp = await talk.say(personId, text);
      await talk.say(personId, 'send', { thread: stamp });
    }
  });

  test('are told apart, and the clean ones approved by one tap', async () => {
    await talk.say(cleo, 'reviews');
    const batch = talk.inChannel('D8').at(-1) ?? nothing;
    expect(batch.text.split('\n')[0]).toBe('2 clean, 2 to look at');
    expect(batch.text).toContain('Too long>, v1, <@U2>: *Must fix:* 6:40 over the 20:00 there are.');
    expect(batch.text).toContain('Push &amp; Hinge>, v1, <@U8>: your own');
    await talk.tap(cleo, 'Approve the clean ones (2)');
    expect((await talk.storage.plans.listByState('T1', 'approved')).map(({ authorId }) => authorId)).toEqual([
      ana,
      ben,
    ]);
    const done = talk.inChannel('D8').at(-1) ?? nothing;
    expect(done.text).toBe(english.coach.approvedClean(2));
    expect(buttonsOf(done)).toEqual([]);
  });

  test('one that was changed or decided meanwhile is left as it is, and said', async () => {
    await talk.command(cleo, 'reviews');
    const call = talk.workspace.responses.at(-1)?.body;
    expect(call?.text).toContain('2 clean, 2 to look at');
    const waiting = await talk.storage.plans.listByState('T1', 'in review');
    const value = JSON.stringify(waiting.slice(0, 2).map(({ id, currentVersion }) => [id, currentVersion]));
    await reply('rounds A x4');
    await talk.act(cleo, actions.approveClean, value);
    expect(talk.workspace.told.at(-1)?.text.split('\n').slice(0, 2)).toEqual([
      english.coach.approvedClean(1),
      english.coach.leftOut,
    ]);
    expect((await talk.planOf(ana)).state).toBe('in review');
  });

  test.each(['reviews'])('%s is for head coaches', async (words) => {
    await talk.say(ben, words);
    expect(talk.inChannel('D2').at(-1)?.text).toBe(english.coach.onlyCoaches);
    const waiting = await talk.storage.plans.listByState('T1', 'in review');
    await talk.act(ben, actions.approveClean, JSON.stringify(waiting.map(({ id }) => [id, 1])));
    expect(await talk.storage.plans.listByState('T1', 'approved')).toEqual([]);
  });

  test('nothing waiting is said', async () => {
    for (const personId of [cleo, dora]) await talk.say(personId, 'reviews');
    await talk.tap(dora, 'Approve the clean ones (3)');
    await talk.act(cleo, actions.approveClean, '[]');
    expect(talk.toldLast()).toBe(english.flow.buttonGone);
  });
});

describe('health details are kept out of what is posted', () => {
  test.each([
    [
      'a reason',
      async () => {
        await talk.tap(cleo, 'Ask for changes');
        return talk.submit(cleo, { reason: 'Mia is pregnant, swap the jumps' });
      },
    ],
    [
      'a note',
      async () => {
        await talk.tap(cleo, 'Approve with a note');
        return talk.submit(cleo, { note: 'mind her bad knee' });
      },
    ],
    [
      'a comment',
      async () => {
        await talk.tap(cleo, 'Comment on a move');
        return talk.submit(cleo, { line: await lineOf('B'), comment: 'two with a back injury' });
      },
    ],
  ] as const)('%s with a private word is kept in its form', async (_what, hand) => {
    await reply('send');
    const posted = talk.posts().length;
    expect(await hand()).toMatchObject({
      response_action: 'errors',
      errors: expect.objectContaining({}),
    });
    expect(talk.posts()).toHaveLength(posted);
    expect((await talk.planOf(ana)).state).toBe('in review');
  });

  test('the word changes tells why', async () => {
    await reply('send');
    await talk.mention(cleo, 'changes: his shoulder hurts', {
      channel: reviewChannel,
      thread: reviews()[0]?.ts ?? '',
    });
    expect(underReview().text).toBe(english.privacy.found('his shoulder'));
  });

  test.each([
    'shoulder press is too heavy',
    'keep the back long',
    'one more pull',
    'swap the knee push-up',
    'heart of the class first',
  ])('%s is no private word', (text) => {
    expect(english.privateWordIn(text)).toBeUndefined();
  });
});
