import { afterEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
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

const { ana, ben, cleo } = people;
const nothing: Sent = { text: '', blocks: [] };
let talk: Conversation;
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});
const reviews = () => talk.inChannel(reviewChannel).filter((post) => post.thread === undefined);

describe('a trusted instructor', () => {
  test('has a plan approved once it is sent, where nothing is found; the channel sees it', async () => {
    talk = await openConversation({ trustedInstructors: [ana] });
    const thread = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'send', { thread });
    expect(await talk.planOf(ana)).toMatchObject({ state: 'approved', approvedVersion: 1 });
    expect(reviews()).toHaveLength(1);
    const shown = reviews()[0] ?? nothing;
    expect(shownText(shown)).toContain('by <@U1>. Note: nothing found, and its instructor is trusted');
    expect(buttonsOf(shown)).not.toContain('Approve v1 for teaching');
  });

  test.each([
    ['with something to look at', ana, pushAndHinge.replace('30 min', '45 min')],
    ['with something to fix', ana, pushAndHinge.replace('30 min', '20 min')],
    ['of someone else', ben, pushAndHinge],
  ])('a plan %s waits for a coach', async (_what, personId, text) => {
    talk = await openConversation({ trustedInstructors: [ana] });
    const thread = await talk.say(personId, text);
    await talk.say(personId, 'send', { thread });
    expect((await talk.planOf(personId)).state).toBe('in review');
  });

  test('approves nothing by a button, a word or a forged value', async () => {
    talk = await openConversation({ trustedInstructors: [ana] });
    const thread = await talk.say(ana, pushAndHinge.replace('30 min', '45 min'));
    await talk.say(ana, 'send', { thread });
    await talk.say(ana, 'approve', { thread });
    const { id } = await talk.planOf(ana);
    await talk.act(ana, actions.approve, JSON.stringify({ plan: id, version: 1 }));
    expect((await talk.planOf(ana)).state).toBe('in review');
  });
});

describe('a small edit of an approved plan', () => {
  const approved = async (smallEditsKeepApproval: boolean) => {
    talk = await openConversation({ smallEditsKeepApproval });
    const thread = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'send', { thread });
    await talk.tap(cleo, 'Approve v1 for teaching');
    return thread;
  };

  test('keeps the approval where the studio says so, with a line to the coach', async () => {
    const thread = await approved(true);
    await talk.say(ana, 'block A 45/20', { thread });
    expect(await talk.planOf(ana)).toMatchObject({
      state: 'approved',
      currentVersion: 2,
      approvedVersion: 2,
    });
    expect(talk.inThread(reviews()[0]?.ts ?? '').at(-1)?.text).toContain(
      'circuit x3, 40/20 → circuit x3, 45/20',
    );
    expect(shownText(reviews()[0] ?? nothing)).toContain('v2, by <@U1>. Note: a small change');
  });

  test('several do not add up to a large one unseen', async () => {
    const thread = await approved(true);
    await talk.say(ana, 'block A 50/20', { thread });
    await talk.say(ana, 'block A 58/20', { thread });
    expect(await talk.planOf(ana)).toMatchObject({
      state: 'in review',
      currentVersion: 3,
      approvedVersion: 2,
    });
  });

  test('goes back to review where the studio does not', async () => {
    const thread = await approved(false);
    await talk.say(ana, 'block A 45/20', { thread });
    expect((await talk.planOf(ana)).state).toBe('in review');
  });

  test('a large one goes back to review all the same', async () => {
    const thread = await approved(true);
    await talk.say(ana, 'swap A bear crawl', { thread });
    expect((await talk.planOf(ana)).state).toBe('in review');
  });

  test('the same class on another day stays approved, whatever the setting', async () => {
    const thread = await approved(false);
    await talk.tap(ana, 'Put on the calendar', talk.inThread(thread)[0]);
    await talk.submit(ana, { date: '2026-11-05', time: '18:30', people: '10' });
    expect(await talk.planOf(ana)).toMatchObject({
      state: 'approved',
      currentVersion: 2,
      approvedVersion: 2,
    });
  });
});
