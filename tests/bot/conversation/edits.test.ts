import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import { english } from '../../../bot/words/en.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  shownText,
} from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana, ben } = people;
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
const lastAnswer = () => talk.inThread(thread).at(-1)?.text;

describe('an edit', () => {
  test.each([
    ['swap A bear crawl', 'A: push-up → bear crawl'],
    ['sub A bear crawl', 'A: push-up → bear crawl'],
    ['rounds A x4', 'circuit x3, 40/20 → circuit x4, 40/20'],
    ['swap A with C', 'A: push-up → plank'],
    ['drop C', 'C dropped: plank'],
    ['title Push & Pull', 'title: Push &amp; Hinge → Push &amp; Pull'],
    ['12 now', 'people: 10 → 12'],
    ['level 1', 'level: 2 → 1'],
    ['add side plank alternating after C', 'D added: side plank alternating'],
    ['work A 30', 'A: push-up → push-up 30s'],
  ])('%s is answered with just what changed', async (words, line) => {
    await reply(words);
    expect(lastAnswer()?.split('\n')).toContain(line);
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, cause: { kind: 'edit', words } });
  });

  test('tells the time, the sets that moved, and what the checks gained', async () => {
    await reply('rounds A x4');
    const lines = lastAnswer()?.split('\n') ?? [];
    expect(lines.join()).not.toContain('30:00');
    expect(lines.find((line) => line.startsWith('Interval sets:'))).toContain('chest 3 → 4');
  });

  test('tells the time where it moved, and that nothing did', async () => {
    await reply('cool-down 5:00');
    expect(lastAnswer()).toMatch(/\*30:00 → \d+:\d\d of 30:00/);
    await reply('level 2');
    expect(lastAnswer()).toBe(english.draft.nothingChanged);
  });

  test('several in one message are one version, all with the letters of the version before', async () => {
    await reply('drop A\nswap B goblet squat\nrounds B x4');
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, problemCount: 0 });
    expect(lastAnswer()?.split('\n')).toEqual(
      expect.arrayContaining([
        'A dropped: push-up',
        'A: kettlebell swing → goblet squat',
        'B is now A, C is now B, D is now C, E is now D',
      ]),
    );
  });

  test('where one line of several can’t be made, nothing changes and it is said', async () => {
    await reply('swap A bear crawl\nswap Z plank');
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
    expect(lastAnswer()).toContain('Z');
  });

  test('that is almost one is offered as a button, which makes it', async () => {
    await reply('swpa A bear crawl');
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
    expect(buttonsOf(talk.inThread(thread).at(-1) ?? { text: '', blocks: [] })).toEqual([
      'swap A bear crawl',
    ]);
    await talk.tap(ana, 'swap A bear crawl');
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2 });
  });

  test('long after the one before leaves its answer as it stands, whose text is not kept', async () => {
    await reply('drop C');
    const [first] = talk.inThread(thread).slice(-1);
    const limits = { ...defaultSettings.retention, sentPayloadDays: 0 };
    const later = new Date(Date.parse(talk.clock.instant) + 86_400_000).toISOString();
    await talk.storage.care.retain('T1', limits, later);
    await reply('rounds A x4');
    expect(lastAnswer()).toContain('circuit x3, 40/20 → circuit x4, 40/20');
    expect(talk.inThread(thread).find(({ ts }) => ts === first?.ts)).toEqual(first);
  });

  test('by someone else is refused, in the thread and by a forged button', async () => {
    const { id } = await talk.planOf(ana);
    await talk.mention(ben, 'swap A bear crawl', { channel: 'D1', thread });
    expect(lastAnswer()).toBe(english.refusal({ code: 'not-your-plan', facts: { authorId: ana } }));
    await talk.act(ben, actions.applyEdit, JSON.stringify({ plan: id, version: 1, edit: 'drop A' }));
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
    expect(talk.toldLast()).toBe(english.refusal({ code: 'not-your-plan', facts: { authorId: ana } }));
  });
});

describe('undo and redo', () => {
  test('go to the first version and back, each as a version of its own', async () => {
    const first = (await talk.versionOf(ana)).plan;
    await reply('drop C');
    await reply('rounds A x4');
    const last = (await talk.versionOf(ana)).plan;
    for (const version of [2, 1]) {
      await reply('undo');
      expect(lastAnswer()).toContain(english.edits.undone(version));
    }
    expect((await talk.versionOf(ana)).plan).toEqual(first);
    await reply('undo');
    expect(lastAnswer()).toBe(english.flow.nothingToUndo);
    for (const version of [2, 3]) {
      await reply('redo');
      expect(lastAnswer()).toContain(english.edits.redone(version));
    }
    expect((await talk.versionOf(ana)).plan).toEqual(last);
    await reply('redo');
    expect(lastAnswer()).toBe(english.flow.nothingToRedo);
    expect((await talk.planOf(ana)).currentVersion).toBe(7);
  });

  test.each([
    ['undo\nundo', 1],
    ['rounds A x2\nundo', 3],
    ['undo\nredo', 3],
    ['undo; swap C side plank split sides; undo', 2],
  ])('%s in one message are made in turn', async (words, restores) => {
    await reply('rounds A x5');
    await reply('rounds A x4');
    const { version } = await talk.versionOf(ana);
    await reply(words);
    const made = await talk.versionOf(ana);
    expect(made.version).toBe(version + words.split(/[\n;]/).length);
    expect(made.cause).toMatchObject({ restores });
  });

  test('in turn, the letters of an edit are those the message was written on', async () => {
    await reply('drop A');
    await reply('undo\nswap C side plank split sides');
    // C was the squat before A came back.
    expect((await talk.versionOf(ana)).text).not.toContain('goblet squat');
  });

  test('an undo carries the way back as a button', async () => {
    await reply('drop C');
    await reply('drop C');
    await reply('undo');
    expect(buttonsOf(talk.inThread(thread).at(-1) ?? { text: '', blocks: [] })).toEqual([
      'Send for review',
      'Undo',
      'Redo',
    ]);
    await talk.tap(ana, 'Redo');
    expect((await talk.versionOf(ana)).cause).toEqual({ kind: 'redo', restores: 3 });
    await reply('undo\nundo');
    const answer = talk.inThread(thread).at(-1);
    expect(buttonsOf(answer ?? { text: '', blocks: [] })).toEqual(['Send for review', 'Redo']);
    await talk.tap(ana, 'Redo', answer);
    await talk.tap(ana, 'Redo', answer);
    expect((await talk.versionOf(ana)).cause).toEqual({ kind: 'redo', restores: 2 });
    expect(talk.toldLast()).toContain('The plan is at v');
  });

  test('the button undoes the change it stands under, and tapped again nothing more', async () => {
    await reply('drop C');
    await reply('rounds A x4');
    const answer = talk.inThread(thread).at(-1);
    // As a client shows it that has not yet heard of the change.
    await talk.tap(ana, 'Undo', answer);
    expect((await talk.versionOf(ana)).cause).toEqual({ kind: 'undo', restores: 2 });
    await talk.tap(ana, 'Undo', answer);
    expect((await talk.planOf(ana)).currentVersion).toBe(4);
    expect(talk.toldLast()).toBe(english.flow.madeOnEarlierVersion(4));
  });
});

describe('a button of an earlier version', () => {
  test('makes its edit where its lines still stand, whatever their letters are now', async () => {
    const { id } = await talk.planOf(ana);
    await reply('drop A');
    await talk.act(
      ana,
      actions.applyEdit,
      JSON.stringify({ plan: id, version: 1, edit: 'swap C side plank' }),
    );
    expect((await talk.versionOf(ana)).text).toContain('kettlebell swing\nside plank');
  });

  test('is refused where its line is gone, with where the plan is now', async () => {
    const { id } = await talk.planOf(ana);
    await reply('drop A');
    await talk.act(
      ana,
      actions.applyEdit,
      JSON.stringify({ plan: id, version: 1, edit: 'swap A bear crawl' }),
    );
    expect((await talk.planOf(ana)).currentVersion).toBe(2);
    expect(talk.toldLast()).toBe(english.flow.madeOnEarlierVersion(2));
  });

  test.each(['', 'x', '{}', '{"plan":"nope","version":1}', '{"plan":"nope","version":1,"edit":"drop A"}'])(
    'a value that is none (%s) is told',
    async (value) => {
      await talk.act(ana, actions.applyEdit, value);
      expect(talk.toldLast()).toBe(english.flow.buttonGone);
    },
  );
});

test('buttons go from an answer once the next change is made, and once the plan is sent', async () => {
  await reply('rounds A x4');
  await reply('rounds A x3');
  const [, first, second] = talk.inThread(thread);
  expect(buttonsOf(first ?? { text: '', blocks: [] })).toEqual([]);
  expect(buttonsOf(second ?? { text: '', blocks: [] })).toEqual(['Send for review', 'Undo']);
  expect(shownText(first ?? { text: '', blocks: [] })).not.toContain('draft');
  await talk.tap(ana, 'Send for review', second);
  expect(talk.inThread(thread).slice(1).flatMap(buttonsOf)).toEqual([]);
});

test('each answer and the card show the version and the state they stand at', async () => {
  await reply('rounds A x4');
  const [card] = talk.inThread(thread);
  const answer = talk.inThread(thread).at(-1);
  expect(shownText(card ?? { text: '', blocks: [] })).toContain('v2 · draft');
  expect(shownText(answer ?? { text: '', blocks: [] })).toContain('v2 · draft');
});
