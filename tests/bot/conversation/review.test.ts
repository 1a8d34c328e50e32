import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import { english } from '../../../bot/words/en.ts';
import { defaultSettings } from '../../../domain/settings.ts';
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
const lastAnswer = () => talk.inThread(thread).at(-1)?.text ?? '';
const reviews = () => talk.inChannel(reviewChannel).filter((post) => post.thread === undefined);
const review = () => reviews().at(-1) ?? nothing;
const card = () => talk.inThread(thread)[0] ?? nothing;
const kindsOf = async (planId: string) => (await talk.stepsOf(planId)).map(({ kind }) => kind);

describe('sent for review', () => {
  test('is one message in the review channel, with whole actions on its buttons', async () => {
    await talk.tap(ana, 'Send for review');
    expect(reviews()).toHaveLength(1);
    expect(review().text).toContain('Push &amp; Hinge, v1, for review from <@U1>');
    expect(buttonsOf(review()).slice(0, 3)).toEqual([
      'Approve v1 for teaching',
      'Approve with a note',
      'Ask for changes',
    ]);
    expect(buttonsOf(card())).not.toContain('Send for review');
  });

  test('twice is one message; the second is told', async () => {
    await reply('send');
    await reply('send');
    expect(reviews()).toHaveLength(1);
    expect(lastAnswer()).toBe(english.refusal({ code: 'already-in-review', facts: { version: 1 } }));
  });

  test('with an open line is refused, and says which words fill it', async () => {
    await reply('add ? core after C');
    await reply('send');
    expect((await talk.planOf(ana)).state).toBe('draft');
    expect(lastAnswer()).toBe(english.flow.openLinesLeft);
  });

  test('goes on in its thread where another review channel is set since', async () => {
    await reply('send');
    const { ts } = talk.inChannel(reviewChannel).at(-1) ?? { ts: '' };
    const stored = await talk.storage.settings.find('T1');
    const settings = { ...(stored?.settings ?? defaultSettings), reviewChannel: 'C6' };
    await talk.storage.settings.save('T1', settings, 'g', talk.clock.instant);
    await reply('rounds A x2');
    expect(talk.inChannel('C6')).toEqual([]);
    expect(talk.inChannel(reviewChannel).at(-1)).toMatchObject({
      thread: ts,
      text: expect.stringContaining('circuit x3, 40/20 → circuit x2, 40/20'),
    });
  });

  test('and taken back has no buttons to decide', async () => {
    await reply('send');
    await talk.tap(ana, 'Take back from review');
    expect((await talk.planOf(ana)).state).toBe('draft');
    expect(buttonsOf(review())).not.toContain('Approve v1 for teaching');
    expect(shownText(review())).toContain('Taken back by <@U1>');
  });
});

describe('approval', () => {
  test('by a head coach is one tap: the message says so, its buttons go, the author is told', async () => {
    await reply('send');
    await talk.tap(cleo, 'Approve v1 for teaching');
    expect(await talk.planOf(ana)).toMatchObject({ state: 'approved', approvedVersion: 1 });
    expect(buttonsOf(review()).some((label) => label.startsWith('Approve'))).toBe(false);
    expect(shownText(review())).toContain('Approved for teaching, structure and timing: v1, by <@U8>');
    expect(lastAnswer()).toBe(english.review.approvedNote(cleo, 1));
    expect(shownText(card())).toContain('approved for teaching: structure and timing');
  });

  const ways: readonly [string, () => Promise<unknown>][] = [
    ['the button', () => talk.tap(ben, 'Approve v1 for teaching')],
    [
      'a word in the review’s thread',
      () => talk.mention(ben, 'approve', { channel: reviewChannel, thread: postStamp() }),
    ],
    ['a word in the draft’s thread', () => talk.mention(ben, 'approve', { channel: 'D1', thread })],
    [
      'a forged button',
      async () =>
        talk.act(ben, actions.approve, JSON.stringify({ plan: (await talk.planOf(ana)).id, version: 1 })),
    ],
    [
      'a forged button for the author',
      async () =>
        talk.act(ana, actions.approve, JSON.stringify({ plan: (await talk.planOf(ana)).id, version: 1 })),
    ],
    [
      'a forged request for changes',
      async () => {
        await talk.act(
          ben,
          actions.openAskChanges,
          JSON.stringify({ plan: (await talk.planOf(ana)).id, version: 1 }),
        );
        await talk.submit(ben, { reason: 'no' });
      },
    ],
    [
      'the word changes',
      () => talk.mention(ben, 'changes: no', { channel: reviewChannel, thread: postStamp() }),
    ],
  ];
  test.each(ways)('by nobody else, by %s', async (_way, ask) => {
    await reply('send');
    await ask();
    const record = await talk.planOf(ana);
    expect(record.state).toBe('in review');
    expect(await kindsOf(record.id)).toEqual(['sent']);
  });

  test('of an own plan is for another coach', async () => {
    const own = await talk.say(cleo, pushAndHinge);
    await talk.say(cleo, 'send', { thread: own });
    await talk.tap(cleo, 'Approve v1 for teaching');
    expect((await talk.planOf(cleo)).state).toBe('in review');
    expect(talk.toldLast()).toBe(english.refusal({ code: 'own-plan', facts: { soleCoach: false } }));
    await talk.tap(dora, 'Approve v1 for teaching');
    expect((await talk.planOf(cleo)).state).toBe('approved');
  });

  test('two coaches at once: one step, one message, the second is told who came first', async () => {
    await reply('send');
    const standing = talk.inChannel(reviewChannel)[0];
    await Promise.all([
      talk.tap(cleo, 'Approve v1 for teaching', standing),
      talk.tap(dora, 'Approve v1 for teaching', standing),
    ]);
    const record = await talk.planOf(ana);
    const steps = await talk.stepsOf(record.id);
    expect(steps.map(({ kind }) => kind)).toEqual(['sent', 'approved']);
    expect(reviews()).toHaveLength(1);
    expect(talk.inThread(thread).filter(({ text }) => text.includes('approved v1'))).toHaveLength(1);
    expect(talk.toldLast()).toContain(`<@${steps[1]?.by}> came first`);
  });

  test('of a version that has changed since is refused: look, then decide', async () => {
    await reply('send');
    const standing = talk.inChannel(reviewChannel)[0];
    await reply('rounds A x4');
    await talk.act(cleo, actions.approve, JSON.stringify({ plan: (await talk.planOf(ana)).id, version: 1 }));
    expect(talk.toldLast()).toBe(english.refusal({ code: 'stale-version', facts: { named: 1, current: 2 } }));
    expect((await talk.planOf(ana)).state).toBe('in review');
    expect(standing).toBeDefined();
  });
});

describe('changes asked', () => {
  test('go to the author’s thread with the coach’s words; an edit and a second sending follow', async () => {
    await reply('send');
    await talk.tap(cleo, 'Ask for changes');
    expect(await talk.submit(cleo, { reason: 'One more <pull>, please' })).toBeUndefined();
    expect(lastAnswer()).toContain('<@U8> asks for changes to v1: One more &lt;pull&gt;, please');
    expect(shownText(review())).toContain('Changes asked by <@U8> on v1: One more &lt;pull&gt;, please');
    await reply('swap A bent-over row');
    expect(reviews()).toHaveLength(1);
    await reply('send');
    expect(reviews()).toHaveLength(2);
    expect(await kindsOf((await talk.planOf(ana)).id)).toEqual(['sent', 'changes asked', 'sent']);
    const again = shownText(review());
    expect(again).toContain(`*${english.review.changedSinceAsked(1)}*\nA: push-up → bent-over row`);
    expect(again).toContain('circuit x3, 40/20 → emom 6');
    await talk.tap(cleo, 'Approve v2 for teaching');
    expect(shownText(review())).not.toContain(english.review.changedSinceAsked(1));
  });

  test('without a word of why are not sent', async () => {
    await reply('send');
    await talk.tap(cleo, 'Ask for changes');
    expect(await talk.submit(cleo, { reason: '  ' })).toEqual({
      response_action: 'errors',
      errors: { reason: english.forms.reasonMissing },
    });
  });
});

describe('an edit after approval', () => {
  test('goes back to review with only the difference', async () => {
    await reply('send');
    await talk.tap(cleo, 'Approve v1 for teaching');
    await reply('swap A bear crawl');
    expect(await talk.planOf(ana)).toMatchObject({
      state: 'in review',
      currentVersion: 2,
      approvedVersion: 1,
    });
    expect(reviews()).toHaveLength(2);
    const shown = shownText(review());
    expect(shown).toContain('Changed since the last approval:');
    expect(shown).toContain('A: push-up → bear crawl');
    expect(shown).not.toContain('circuit x3, 40/20 →');
    expect(shown).not.toContain('goblet squat');
    await talk.tap(dora, 'Approve v2 for teaching');
    expect(await talk.planOf(ana)).toMatchObject({ state: 'approved', approvedVersion: 2 });
  });

  test('an edit while in review brings the message up to date and tells the difference once', async () => {
    await reply('send');
    await reply('rounds A x4');
    expect(reviews()).toHaveLength(1);
    expect(buttonsOf(review())).toContain('Approve v2 for teaching');
    const told = talk.inChannel(reviewChannel).filter((post) => post.thread !== undefined);
    expect(told.map(({ text }) => text.split('\n')[0])).toEqual(['Now at v2.']);
    expect(told[0]?.text).toContain('circuit x3, 40/20 → circuit x4, 40/20');
  });
});

function postStamp(): string {
  return talk.inChannel(reviewChannel)[0]?.ts ?? '';
}
