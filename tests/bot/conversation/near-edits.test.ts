import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  shownText,
} from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana } = people;
let talk: Conversation;
let thread: string;

beforeEach(async () => {
  talk = await openConversation();
  thread = await talk.say(ana, pushAndHinge);
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

const reply = (text: string) => talk.say(ana, text, { thread });
const last = () => talk.inThread(thread).at(-1) ?? { text: '', blocks: [] };

describe('words that almost match an edit', () => {
  test.each<readonly [string, readonly string[]]>([
    ['swap A goblin squash', ['swap A goblet squat', 'swap A goblet sumo squat', 'swap A squat pulse']],

    ['swpa A bear crawl\ndrop B', ['swap A bear crawl; drop B']],
    ['drop B\nswpa A bear crawl', ['drop B, swap A bear crawl']],
    ['swap B goblin squash\nswpa A bear crawl', ['swap B goblet squat, swap A bear crawl']],
  ])('%j are offered as a button, which makes it', async (words, labels) => {
    await reply(words);
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
    expect(buttonsOf(last())).toEqual(labels);
    await talk.tap(ana, labels[0] ?? '');
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, problemCount: 0 });
  });

  test('a name that may be several moves has a button for each', async () => {
    await reply('swap A press');
    const labels = buttonsOf(last());
    expect(labels.length).toBeGreaterThan(1);
    expect(labels.every((label) => /^swap A .*press/.test(label))).toBe(true);
  });

  test.each(['swap A xqzv', 'swap Z plank', 'rounds A x60', 'swap A goblin squash\nswap Z plank'])(
    '%j has no button, since none would work',
    async (words) => {
      await reply(words);
      expect(buttonsOf(last())).toEqual([]);
      expect((await talk.planOf(ana)).currentVersion).toBe(1);
    },
  );
});

describe('what changed is told line by line', () => {
  test('by undo and redo', async () => {
    await reply('swap A bear crawl');
    await reply('undo');
    expect(shownText(last())).toContain('A: bear crawl → push-up');
    await reply('redo');
    expect(shownText(last())).toContain('A: push-up → bear crawl');
  });

  test('by an edit of the message itself', async () => {
    await talk.editMessage(ana, thread, pushAndHinge.replace('plank', 'side plank').replace('x3', 'x4'));
    const lines = shownText(last()).split('\n');
    expect(lines).toEqual(expect.arrayContaining(['C dropped: plank', 'C added: side plank split sides']));
    expect(lines).toContain('circuit x3, 40/20 → circuit x4, 40/20');
    expect(lines.join('\n')).not.toContain('push-up');
  });
});
