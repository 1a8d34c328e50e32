import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { english } from '../../../bot/words/en.ts';
import {
  buttonsOf,
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

describe('again', () => {
  beforeEach(async () => {
    await talk.say(ana, pushAndHinge.replace('10 people', '10 people, Mon 18:00'));
  });

  test.each([
    'again Push & Hinge',
    'Again push &amp; hinge',
    'again push and hinge',
    'again push hinge',
    'again push',
  ])('%s is a new draft with the same class and no day', async (words) => {
    const stamp = await talk.say(ana, words);
    expect(await talk.plansOf(ana)).toHaveLength(2);
    expect(await talk.versionOf(ana)).toMatchObject({ version: 1, problemCount: 0, totalSeconds: 1_800 });
    expect((await talk.versionOf(ana)).plan?.facts.startsAt).toBeUndefined();
    expect(talk.inThread(stamp).at(-1)?.text).toBe('Started from Push &amp; Hinge, v1 of Mon 2 Nov.');
  });

  test('with a day it is on the calendar', async () => {
    await talk.say(ana, 'again Push & Hinge, Thu 18:30');
    const { startsAt } = (await talk.versionOf(ana)).plan?.facts ?? {};
    expect(startsAt).toEqual({ date: '2026-11-05', time: '18:30' });
  });

  test('open keeps the structure and opens its lines; it can’t be sent before they are filled', async () => {
    const stamp = await talk.say(ana, 'again Push & Hinge open');
    const { text } = await talk.versionOf(ana);
    expect(text.split('\n').slice(2)).toEqual([
      'circuit x3, 40/20',
      '? horizontal push',
      '? hinge',
      '? anti-extension',
      'rest 60',
      'emom 6',
      '8 ? squat',
      '10 ? horizontal pull',
      'cool-down to the end',
    ]);
    await talk.say(ana, 'send', { thread: stamp });
    expect(talk.inThread(stamp).at(-1)?.text).toBe(english.flow.openLinesLeft);
  });

  test('as a command it is the same draft, with its link', async () => {
    await talk.command(ana, 'again Push & Hinge');
    expect(await talk.plansOf(ana)).toHaveLength(2);
    expect(talk.toldLast()).toMatch(/^Your draft and its card are here/);
  });

  test('a title nobody used gets those there are', async () => {
    await talk.say(ana, 'again Pull <&> Twist');
    expect(talk.inChannel('D1').at(-1)?.text).toBe(
      'I found no class called Pull &lt;&amp;&gt; Twist. There are: Push &amp; Hinge',
    );
    expect(await talk.plansOf(ana)).toHaveLength(1);
  });

  test('alone asks which, with those there are', async () => {
    await talk.say(ana, 'again');
    expect(talk.inChannel('D1').at(-1)?.text).toBe('Which class once more? There are: Push &amp; Hinge');
    expect(await talk.plansOf(ana)).toHaveLength(1);
  });

  test('each of those there are is one tap; with open where its lines were to be open', async () => {
    await talk.say(ana, 'again');
    await talk.tap(ana, 'Push & Hinge');
    expect(await talk.plansOf(ana)).toHaveLength(2);
    expect((await talk.versionOf(ana)).plan?.facts.startsAt).toBeUndefined();
    await talk.say(ana, 'again Pull open');
    await talk.tap(ana, 'Push & Hinge');
    expect((await talk.versionOf(ana)).text).toContain('? hinge');
    await talk.act(ben, 'start-again', JSON.stringify({ plan: (await talk.planOf(ana)).id, version: 1 }));
    expect(await talk.plansOf(ben)).toEqual([]);
    expect(talk.toldLast()).toBe(english.flow.buttonGone);
  });

  test('finds the studio’s classes of the past year where there is none of one’s own', async () => {
    talk.clock.instant = '2026-11-09T09:00:00.000Z';
    await talk.say(ben, 'again Push & Hinge');
    expect(await talk.versionOf(ben)).toMatchObject({ totalSeconds: 1_800, madeBy: ben });
  });
});

describe('leaving a finding out', () => {
  const idle = pushAndHinge.replace('30 min', '45 min');

  test('takes a word of reason, which both threads see; it stays away for this plan', async () => {
    const thread = await talk.say(ana, idle);
    await talk.say(ana, 'send', { thread });
    await talk.tap(ana, 'All checks and why', talk.inThread(thread)[0]);
    expect(shownText({ text: '', blocks: talk.view().blocks })).toContain('has no use');
    await talk.tapInView(ana, 'Leave out');
    expect(await talk.submit(ana, { reason: 'We <talk> at the end' })).toMatchObject({
      response_action: 'update',
    });
    const told = /^<@U1> leaves out: Look at: .* Why: We &lt;talk&gt; at the end$/;
    expect(talk.inThread(thread).at(-1)?.text).toMatch(told);
    expect(talk.inChannel(reviewChannel).at(-1)?.text).toMatch(told);
    expect(shownText(talk.inThread(thread)[0] ?? { text: '', blocks: [] })).not.toContain('has no use');
    await talk.say(ana, 'title Push again', { thread });
    expect(shownText(talk.inThread(thread)[0] ?? { text: '', blocks: [] })).not.toContain('has no use');
  });

  test.each([
    ['  ', english.dismiss.reasonMissing],
    ['her knee hurts', english.privacy.found('her knee')],
  ])('%j is no reason', async (reason, said) => {
    const thread = await talk.say(ana, idle);
    await talk.tap(ana, 'All checks and why', talk.inThread(thread)[0]);
    await talk.tapInView(ana, 'Leave out');
    expect(await talk.submit(ana, { reason })).toEqual({
      response_action: 'errors',
      errors: { reason: said },
    });
  });

  test('by someone else is refused', async () => {
    const thread = await talk.say(ana, idle);
    await talk.tap(ben, 'All checks and why', talk.inThread(thread)[0]);
    await talk.tapInView(ben, 'Leave out');
    expect(talk.toldLast()).toBe(english.refusal({ code: 'not-your-plan', facts: { authorId: ana } }));
  });

  test('what must be fixed has no such button, and a forged form is refused', async () => {
    const thread = await talk.say(ana, pushAndHinge.replace('30 min', '20 min'));
    await talk.tap(cleo, 'All checks and why', talk.inThread(thread)[0]);
    const mustFix = talk.view().blocks.filter(({ text }) => text?.text.startsWith('*Must fix'));
    expect(mustFix).toHaveLength(1);
    expect(mustFix[0]?.accessory).toBeUndefined();
    const { id } = await talk.planOf(ana);
    await talk.act(ana, 'open-dismiss', JSON.stringify({ plan: id, version: 1, name: 'over-teaching-time' }));
    expect(await talk.submit(ana, { reason: 'fine' })).toEqual({
      response_action: 'errors',
      errors: { reason: english.dismiss.mustFix },
    });
  });

  test('in the thread, why leads to the same view', async () => {
    const thread = await talk.say(ana, idle);
    await talk.say(ana, 'why', { thread });
    expect(buttonsOf(talk.inThread(thread).at(-1) ?? { text: '', blocks: [] })).toContain(
      'All checks and why',
    );
  });
});
