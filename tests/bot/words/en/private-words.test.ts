import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { demoClasses } from '../../../../bot/local/demo/demo-classes.ts';
import { demoSettings } from '../../../../bot/local/demo/demo-studio.ts';
import { privateWordIn, someonesHealthIn } from '../../../../bot/words/en/private-words.ts';
import { catalogue } from '../../../../domain/catalogue/catalogue.ts';
import { houseClass, houseClassNames } from '../../../../domain/plan/house-classes.ts';
import { defaultSettings } from '../../../../domain/settings.ts';
import { wholeClasses } from '../../../classes/whole-classes.ts';
import { spellings } from '../../../domain/catalogue/spellings.ts';

const alarmsIn = (texts: readonly string[]) =>
  texts.flatMap((text) => {
    const word = privateWordIn(text);
    return word === undefined ? [] : [`${word}: ${text.slice(0, 80)}`];
  });

const calmFolder = new URL('../../../domain/checks/calm-classes/', import.meta.url);
const context = { catalogue, settings: defaultSettings, now: '2026-11-02T09:00:00.000Z' };
const readme = readFileSync(new URL('../../../../README.md', import.meta.url), 'utf8');

const linesOf = (folder: string, files: RegExp) => {
  const there = new URL(folder, import.meta.url);
  return readdirSync(there)
    .filter((name) => files.test(name))
    .flatMap((name) => readFileSync(new URL(name, there), 'utf8').split('\n'));
};

describe('no word of the trade is taken for a private one', () => {
  test.each<[string, readonly string[], number]>([
    [
      'names, nicknames and cues of the catalogue',
      catalogue.moves.flatMap(({ name, nicknames, setUpCue, cue }) => [name, ...nicknames, setUpCue, cue]),
      1_500,
    ],
    ['spellings people type', spellings.map((each) => JSON.stringify(each)), 200],
    [
      'the calm classes',
      readdirSync(calmFolder).map((name) => readFileSync(new URL(name, calmFolder), 'utf8')),
      40,
    ],
    ['the worked classes', wholeClasses.map(({ text }) => text), 10],
    ['the demo classes', Object.values(demoClasses).flat(), 15],
    [
      'the house classes',
      houseClassNames.map((name) =>
        houseClass(name, { slotSeconds: 2_700, startsAt: { date: '2026-11-05', time: '18:30' } }, context),
      ),
      3,
    ],
    [
      'what the README shows to type',
      [...readme.matchAll(/```[\s\S]*?```|`[^`\n]+`/g)].map(([shown]) => shown),
      100,
    ],
    ['the classes that set off each check', linesOf('../../../domain/checks/', /-cases\.ts$/), 500],
    ['the classes of the conversation', linesOf('../../conversation/', /^classes\.ts$/), 10],
    [
      'the demo studio',
      demoSettings.rooms.flatMap(({ name, emergencyCard = '' }) => [name, emergencyCard]),
      4,
    ],
  ])('%s', (_, texts, least) => {
    expect(texts.length).toBeGreaterThanOrEqual(least);
    expect(alarmsIn(texts)).toEqual([]);
  });

  test.each([
    'watch their backs in round three',
    'keep your knees over your toes, shoulders depressed',
    'scapular depression first, then pull',
    'knees out to avoid injury',
    'let’s hip hinge before we load',
    "it's back squat day",
    'child’s pose, world’s greatest stretch, farmer’s carry',
    'everyone’s back flat',
    'Postnatal Strength, 45 min, level 1',
    'prenatal class on Friday',
    'sore tomorrow is fine',
    'hours of operation',
    'heart of the class first',
    '30 strokes on the rower',
    'fire truck, dead bug, skull crusher, suicide runs',
  ])('%s', (text) => {
    expect(privateWordIn(text)).toBeUndefined();
  });
});

describe('what may tell of someone’s health', () => {
  test.each([
    ['Ana’s knee', 'skip jumps, Ana’s knee'],
    ["Jo's bad back", "no deadlifts: Jo's bad back"],
    ['her knee', 'her knee hurts'],
    ['his sore shoulder', 'because of his sore shoulder'],
    ['their bad hip', 'someone with their bad hip'],
    ['bad knee', 'bad knee at the front, left'],
    ['back pain', 'two with back pain'],
    ['knee replacement', 'knee replacement in May'],
    ['pregnant', 'one is pregnant'],
    ['injured', 'she is injured'],
    ['an operation', 'back after an operation'],
    ['is depressed', 'he is depressed'],
    ['asthma', 'inhaler: asthma'],
    ['blood pressure', 'high blood pressure'],
    ['postnatal', 'Eva is postnatal'],
    ['diabetes', 'DIABETES'.toLowerCase()],
  ])('%s', (word, text) => {
    expect(privateWordIn(text)).toBe(word);
  });

  test('on an emergency card conditions are spoken of as such, people are not', () => {
    expect(
      someonesHealthIn('Heart attack, asthma, injury: call from gate 2; the person’s back flat.'),
    ).toBeUndefined();
    expect(someonesHealthIn('Mind Ana’s knee.')).toBe('Ana’s knee');
  });
});
