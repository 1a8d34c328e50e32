import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { english } from '../../../bot/words/en.ts';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  shownText,
} from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');

const { ana, cleo } = people;
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
const answers = () => talk.inThread(thread).slice(1);
const last = () => answers().at(-1) ?? { text: '', blocks: [] };

describe('an ask is answered from the plan and changes nothing', () => {
  test.each([
    ['timeline', ['`  6:00`  *A push-up*  0:40 · round 1', '*cool-down to the end*']],
    ['timeline', ['`  0:00`  march, hip hinge  6:00']],
    ['Timeline?', ['`  6:00`  *A push-up*  0:40 · round 1']],
    ['why', ['Checked: nothing to mend.']],
    ['muscles', ['*chest*  3 (2:00)', '*back*  upper back ']],
    ['versions', ['v1 · written · 30:00 · today 09:00']],
    ['easier', ['*A* push-up → knee push-up', '*D* goblet squat → bodyweight squat']],
    ['harder', ['*D* goblet squat → front squat']],
    ['no kit', ['*B* kettlebell swing → ']],
    ['last time', [english.asks.notTaughtYet]],
    ['no wrists', ['Options for no wrists, naming nobody:', '*A* push-up → ']],
    ['not on the back', [english.asks.allAsPlanned]],
    ['No jumps, no floor', ['Options for no jumps, no floor, naming nobody:', '*C* plank']],
    ['no jumps no wrists', ['Options for no jumps, no wrists, naming nobody:']],
  ])('%s', async (ask, lines) => {
    await reply(ask);
    const text = answers()
      .map((each) => each.text)
      .join('\n');
    for (const line of lines) expect(text).toContain(line);
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
  });

  const [, said = ''] = /`undo`, `redo`; and to ask: ([^\n]+)/.exec(readme) ?? [];
  const words = [...said.matchAll(/`([^`]+)`/g)].map(([, word = '']) => word);
  test.each(words)('%s of the README is answered', async (word) => {
    expect(words).toHaveLength(16);
    await reply(word);
    expect(answers().length + talk.inChannel('C7').length).toBeGreaterThan(0);
    expect(last().text).not.toContain('I did not read that');
  });

  test('each is listed in the help', async () => {
    await talk.say(ana, 'help');
    const help = talk.posts().findLast(({ thread: under }) => under === undefined)?.text ?? '';
    const listed = ['timeline', 'why', 'muscles', 'easier', 'harder', 'no kit', 'last time', 'versions'];
    for (const ask of [...listed, 'no jumps', 'no floor', 'no wrists', 'nothing overhead', 'not on the back'])
      expect(help).toContain(ask);
  });

  test.each(['what about tomorrow', 'asdf', 'hello'])(
    '%s is told in two lines what works here',
    async (words) => {
      await reply(words);
      expect(last().text).toBe(english.help.unclearInThread(['swap A bear crawl', 'drop E']));
      expect(last().text.split('\n')).toHaveLength(2);
    },
  );

  test.each(['thanks', 'Thanks!', 'ok', 'OK, thanks a lot', ':+1:', '👍🏽', 'nice, done.'])(
    '%s needs no lecture',
    async (words) => {
      await reply(words);
      expect(last().text).toBe(english.draft.gladly);
      await talk.say(ana, words);
      expect(talk.inChannel('D1').at(-1)?.text).toBe(english.draft.gladly);
    },
  );

  test.each(['ok swap A bear crawl', 'good morning', 'done with A', '👋'])(
    '%s is more than that',
    (words) => {
      expect(english.draft.isSmallTalk(words)).toBe(false);
    },
  );

  test('versions are told in the studio’s zone and by day', async () => {
    talk.clock.instant = '2026-11-03T09:30:00.000Z';
    await reply('drop C');
    talk.clock.instant = '2026-11-05T00:10:00.000Z';
    await reply('undo');
    await reply('versions');
    expect(
      last()
        .text.split('\n')
        .map((line) => line.split(' · ').at(-1)),
    ).toEqual(['Mon 2 Nov, 09:00', 'Tue 3 Nov, 09:30', 'today 00:10']);
  });

  test('every word of the help works as it stands there', async () => {
    await reply('help');
    const said = [...last().text.matchAll(/`([^`]+)`/g)].map(([, word = '']) => word);
    expect(said).toHaveLength(28);
    for (const word of said) {
      thread = await talk.say(ana, english.help.example);
      if (word === 'undo' || word === 'redo' || word === 'withdraw')
        await reply({ undo: 'drop C', redo: 'drop C\nundo', withdraw: 'send' }[word] ?? '');
      const before = answers().length;
      await reply(word);
      const told = answers().slice(before);
      expect(told.length, word).toBeGreaterThan(0);
      expect(told.map(({ text }) => text).join('\n'), word).not.toMatch(
        /I did not read|I don't read|nothing to [ur]|there is no [A-Z]|is not whole|can't read/,
      );
    }
  });

  test('the help of a class without those letters names its own', async () => {
    thread = await talk.say(
      ana,
      'Pairs, 30 min\nemom 10\n8 push-up + 8 plank\n10 goblet squat\ncool-down to the end',
    );
    await reply('help');
    expect(last().text).toContain('`swap A1 bear crawl` · `drop B` · `move B before A`');
  });
});

describe('substitutes are edits', () => {
  test.each(['easier', 'harder', 'no kit'])('each button of %s makes its edit', async (ask) => {
    await reply(ask);
    const offered = last();
    const [all, ...labels] = buttonsOf(offered);
    expect(all).toMatch(/^All /);
    for (const label of labels) {
      await talk.tap(
        ana,
        label,
        talk.posts().find(({ text }) => text === offered.text),
      );
      expect((await talk.versionOf(ana)).cause).toEqual({ kind: 'edit', words: label });
      await reply('undo');
    }
  });

  test('all at once is one version', async () => {
    await reply('no kit');
    await talk.tap(ana, 'All of these');
    const { version, text } = await talk.versionOf(ana);
    expect(version).toBe(2);
    expect(text).not.toMatch(/kettlebell|goblet|bent-over/);
  });
});

test('why names the checks that found nothing too, by the source of their rule', async () => {
  await reply('why');
  const lines = last().text.split('\n');
  expect(lines[0]).toBe(english.card.noFindings);
  expect(lines.find((line) => line.startsWith('_ACSM:_'))).toContain('a warm-up');
  await reply('swap A kettlebell snatch\nlevel 1');
  await reply('why');
  expect(last().text).toContain('above level 1');
  expect(last().text).not.toContain('moves above the level');
});

test('the options sheet is one tap on the card, limit by limit', async () => {
  await talk.tap(ana, 'Options sheet');
  const shown = shownText({ text: '', blocks: talk.view().blocks });
  for (const title of ['No jumps', 'No floor', 'No wrists', 'Nothing overhead', 'Not on the back'])
    expect(shown).toContain(`*${title}*`);
});

describe('last time', () => {
  const taught = `${pushAndHinge.replace('10 people', '10 people, Mon 18:00')}`;

  test('tells what changed since the version that was approved when the class began', async () => {
    thread = await talk.say(ana, taught);
    await reply('send');
    await talk.tap(cleo, 'Approve v1 for teaching');
    const { id } = await talk.planOf(ana);
    const [scheduled] = await talk.storage.classes.findByPlan('T1', id);
    const outcome = {
      how: 'as planned',
      effort: 7,
      length: 'over',
      saidAt: '2026-11-02T19:00:00.000Z',
    } as const;
    await talk.storage.classes.setState('T1', scheduled?.id ?? '', 'taught', outcome);
    talk.clock.instant = '2026-11-03T09:00:00.000Z';
    await reply('last time');
    expect(last().text).toContain('Last taught: Push &amp; Hinge, Mon 2 Nov, 18:00, v1 · Taught as planned');
    expect(last().text).toContain(english.asks.sameAsLast);
    await reply('swap A bear crawl');
    await reply('last time');
    expect(last().text.split('\n')).toEqual([
      expect.stringContaining('ran over'),
      english.asks.changedSinceLast,
      'A: push-up → bear crawl',
    ]);
  });

  test('finds the last class of the same title where this plan was not taught itself', async () => {
    thread = await talk.say(ana, taught);
    const { id } = await talk.planOf(ana);
    const [scheduled] = await talk.storage.classes.findByPlan('T1', id);
    await talk.storage.classes.setState('T1', scheduled?.id ?? '', 'taught');
    talk.clock.instant = '2026-11-03T09:00:00.000Z';
    thread = await talk.say(ana, pushAndHinge.replace('plank', 'side plank'));
    await reply('last time');
    expect(last().text).toContain('C added: side plank split sides');
    expect(last().text).not.toContain('push-up');
  });
});

test('a long timeline spills into several messages, every second of it told', async () => {
  const long = `Long haul, 60 min, level 2, 10 people\nwarm-up 6:00\ncircuit x20, 20/5\npush-up\nplank\ngoblet squat\nbent-over row\ncool-down to the end`;
  thread = await talk.say(ana, long);
  await reply('timeline');
  expect(answers().length).toBeGreaterThan(1);
  const lines = answers().flatMap(({ text }) => text.split('\n'));
  expect(lines.filter((line) => line.includes('*A push-up*'))).toHaveLength(20);
  expect(answers()[0]?.text).toMatch(/^Long haul \(1 of \d\)/);
});

test('a timeline of too many messages goes on as a file in the same thread', async () => {
  const bouts = 'circuit x50, 1/0\npush-up\nplank\ngoblet squat\nbent-over row';
  thread = await talk.say(ana, ['Long haul, 60 min', bouts, bouts, bouts].join('\n'));
  await reply('timeline');
  expect(answers()).toHaveLength(2);
  expect(answers()[0]?.text).toMatch(/and \d+ more lines, in the file below_$/);
  const posted = talk.workspace.posts.find(({ file }) => file !== undefined);
  expect(posted).toMatchObject({ thread, text: 'The whole timeline, 603 lines' });
  expect(posted?.file?.content.split('\n')).toHaveLength(604);
});
