import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { escapeText } from '../../../bot/blocks/escape.ts';
import { english } from '../../../bot/words/en.ts';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  shownText,
} from '../../helpers/conversation.ts';
import { shortcutPayload } from '../../helpers/payloads.ts';
import { pushAndHinge } from './classes.ts';

const { ana } = people;
let talk: Conversation;

beforeEach(async () => {
  talk = await openConversation();
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

/** The card as it stands in a thread. */
const cardIn = (thread: string) => {
  const card = talk.inThread(thread).find(({ key }) => key?.startsWith('card:'));
  return card === undefined ? '' : shownText(card);
};

describe('a draft', () => {
  test('by message has its card in the thread under it', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    const [card, ...others] = talk.inThread(stamp);
    expect(others).toEqual([]);
    expect(card?.text).toMatch(/^Push &amp; Hinge: 30:00, exactly the teaching time\./);
    expect(await talk.planOf(ana)).toMatchObject({
      state: 'draft',
      currentVersion: 1,
      home: { place: 'D1', thread: stamp },
    });
  });

  test('by /evenset has the same card under the text that Evenset posts, and its link', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.command(ana, pushAndHinge);
    const text = talk.posts().findLast(({ key }) => key?.startsWith('text:'));
    expect(cardIn(text?.ts ?? '')).toBe(cardIn(stamp));
    expect(talk.toldLast()).toMatch(/^Your draft and its card are here: <https:.*\|open the draft>/);
  });

  test('by the form has the same card', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.command(ana, '');
    expect(await talk.submit(ana, { class: pushAndHinge })).toBeUndefined();
    const text = talk.posts().findLast(({ key }) => key?.startsWith('text:'));
    expect(cardIn(text?.ts ?? '')).toBe(cardIn(stamp));
  });

  test('a form without a class keeps what was typed and says what would work', async () => {
    await talk.command(ana, '');
    expect(await talk.submit(ana, { class: 'see you tomorrow' })).toEqual({
      response_action: 'errors',
      errors: { class: english.forms.classUnclear },
    });
    expect(await talk.plansOf(ana)).toEqual([]);
  });

  test('a class in any message opens the form with its text', async () => {
    await talk.deliver(shortcutPayload('draft-from-message', pushAndHinge));
    expect(talk.view().blocks[0]?.element).toMatchObject({ initial_value: pushAndHinge });
  });

  test('a class too long for one field stands in several, and is one draft with nothing lost', async () => {
    const lines = Array.from(
      { length: 20 },
      (_, at) => `circuit x1, 20/10\n${'push-up + dead bug\n'.repeat(15)}plank (${at})`,
    );
    const long = ['Long haul, 180 min', ...lines].join('\n');
    expect(long.length).toBeGreaterThan(6_000);
    await talk.deliver(shortcutPayload('draft-from-message', long));
    const fields = talk
      .view()
      .blocks.map(({ block_id, element }) => [block_id ?? '', element?.initial_value ?? '']);
    expect(fields).toHaveLength(3);
    expect(await talk.submit(ana, Object.fromEntries(fields))).toBeUndefined();
    expect((await talk.versionOf(ana)).text).toBe(long);
  });

  test('that arrives line by line is one draft', async () => {
    const [first = '', ...lines] = pushAndHinge.split('\n');
    const stamp = await talk.say(ana, first);
    for (const line of lines) await talk.say(ana, line);
    expect(await talk.plansOf(ana)).toHaveLength(1);
    const whole = await talk.say(people.ben, pushAndHinge);
    expect(cardIn(stamp).replace(/v\d+ ·/, 'v1 ·')).toBe(cardIn(whole));
  });

  test('the same by replies in its thread', async () => {
    const [first = '', ...lines] = pushAndHinge.split('\n');
    const stamp = await talk.say(ana, first);
    for (const line of lines) await talk.say(ana, line, { thread: stamp });
    expect(await talk.plansOf(ana)).toHaveLength(1);
    const whole = await talk.say(people.ben, pushAndHinge);
    // The cool-down is read as an edit there, which prints the class and so assumes nothing.
    const [uptoNotes] = cardIn(whole).split('\nrest 60 once');
    expect(cardIn(stamp)).toContain(uptoNotes);
  });

  test.each(['thanks!', 'see you at six'])('%s behind it is no line of the class', async (words) => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.say(ana, words);
    await talk.say(ana, words, { thread: stamp });
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
  });

  test('lines after five minutes belong to no draft any more', async () => {
    await talk.say(ana, pushAndHinge);
    talk.clock.instant = '2026-11-02T09:05:01.000Z';
    await talk.say(ana, 'rest 60');
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
  });

  test('an edit of the original message is a new version; the same text is none', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.editMessage(ana, stamp, pushAndHinge.replace('push-up', 'bear crawl'));
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, cause: { kind: 'written' } });
    expect(cardIn(stamp)).toContain('bear crawl');
    await talk.editMessage(ana, stamp, pushAndHinge.replace('push-up', 'bear crawl'));
    expect((await talk.planOf(ana)).currentVersion).toBe(2);
  });

  test('says once what to mind, behind the letters it goes with, and what was assumed', async () => {
    const stamp = await talk.say(ana, `${pushAndHinge.replace('plank', 'side plank')}`);
    const card = cardIn(stamp);
    expect(card.match(/keep clear of the swing/g)).toHaveLength(1);
    expect(card).toContain('*B* keep clear of the swing');
    expect(card).toContain('*A C* shoulders in a comfortable range');
    expect(card).toContain('side plank: half the time each side (split sides)');
  });

  test('what to do next stands before what can be read after', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    const card = talk.inThread(stamp).find(({ key }) => key?.startsWith('card:'));
    const places = card?.blocks.map(({ block_id }) => block_id?.replace(/-\d+$/, ''));
    expect(places).toEqual([
      'title',
      'blocks',
      'findings',
      'notes',
      'next',
      'totals',
      'look',
      'cautions',
      'standing',
    ]);
    expect(card?.blocks[4]?.elements?.map(({ text }) => text?.text)).toEqual([
      'Send for review',
      'Put on the calendar',
    ]);
  });

  test('what was typed takes no effect as markup', async () => {
    const stamp = await talk.say(
      ana,
      `<!channel> *Row* &amp; <@U9>, 30 min\ncircuit x3, 40/20\n"<@U9>"\nplank`,
    );
    const sent = talk.inThread(stamp).map((post) => post.text + shownText(post));
    expect(sent.join()).not.toMatch(/<[!@]/);
  });
});

describe('lines that could not be read', () => {
  const mistyped = pushAndHinge
    .replace('kettlebell swing', 'goblin squash')
    .replace('8 goblet squat', '8 press');

  test('are all told, each with a caret and its names as buttons; the draft is kept', async () => {
    const stamp = await talk.say(ana, mistyped);
    const [card] = talk.inThread(stamp);
    expect(card?.text.split('\n')[0]).toBe('Push &amp; Hinge: 2 lines I could not read. Your draft is kept.');
    expect(shownText(card ?? { text: '', blocks: [] })).toContain('goblin squash\n^^^^^^^^^^^^^');
    expect(buttonsOf(card ?? { text: '', blocks: [] })).toContain('Use goblet squat');
    expect((await talk.versionOf(ana)).text).toBe(mistyped);
  });

  test('are mended one at a time: by a name button, and by the line put right', async () => {
    const stamp = await talk.say(ana, mistyped);
    await talk.tap(ana, 'Use goblet squat');
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, problemCount: 1 });
    await talk.say(ana, 'line 9: 8 dumbbell shoulder press', { thread: stamp });
    expect(await talk.versionOf(ana)).toMatchObject({ version: 3, problemCount: 0 });
    expect(cardIn(stamp)).toContain('*D* 8 dumbbell shoulder press');
  });

  test('a name button of an earlier version changes nothing and says so', async () => {
    await talk.say(ana, mistyped);
    const old = talk.posts().find(({ key }) => key?.startsWith('card:'));
    await talk.tap(ana, 'Use goblet squat');
    await talk.tap(ana, 'Use goblet squat', old);
    expect((await talk.planOf(ana)).currentVersion).toBe(2);
    expect(talk.toldLast()).toBe(english.flow.madeOnEarlierVersion(2));
  });

  test('a move nobody knows is kept as words by one tap', async () => {
    const stamp = await talk.say(ana, pushAndHinge.replace('kettlebell swing', 'goblin squash'));
    await talk.tap(ana, 'Keep as words, no load');
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, problemCount: 0 });
    expect(cardIn(stamp)).toContain('goblin squash');
  });

  test('are not sent for review', async () => {
    const stamp = await talk.say(ana, mistyped);
    await talk.say(ana, 'send', { thread: stamp });
    expect((await talk.planOf(ana)).state).toBe('draft');
    const answer = talk.inThread(stamp).at(-1);
    expect(answer?.text).toContain(`${english.draft.mendFirst}\nline 5:`);
    expect(buttonsOf(answer ?? { text: '', blocks: [] })).toContain('Leave line 5 out');
  });
});

describe('help', () => {
  test.each([
    'hello',
    'Hi!',
    'what can you do?',
    'asdf',
    'Hi!\nHow does this work?',
    'x',
    '…',
    '👋',
    ':wave:',
  ])('%s is answered with an example', async (text) => {
    await talk.say(ana, text);
    const { lead, example } = english.help;
    expect(talk.posts()).toHaveLength(1);
    expect(talk.posts()[0]?.text.startsWith(`${lead}\n${escapeText(example)}\n`)).toBe(true);
    expect(await talk.plansOf(ana)).toEqual([]);
  });

  test('its example works when sent back, as it stands and as it is copied from the message', async () => {
    const bare = english.help.example;
    const copied = bare
      .replace('&', '&amp;')
      .split('\n')
      .map((line) => ` ${line} `)
      .join('\n');
    for (const text of [bare, copied, `\`\`\`${bare}\`\`\``]) {
      await talk.say(ana, text);
      expect(await talk.versionOf(ana)).toMatchObject({ problemCount: 0, totalSeconds: 1_800 });
    }
  });
});
