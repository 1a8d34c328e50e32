import { expect, test } from 'vitest';
import { enqueueDue, nextDueAt } from '../../../bot/notices/due-in-studio.ts';
import { english } from '../../../bot/words/en.ts';
import type { Words } from '../../../bot/words/words.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { houseClassNames } from '../../../domain/plan/house-classes.ts';
import { type Conversation, openConversation, people } from '../../helpers/conversation.ts';
import { eventPayload } from '../../helpers/payloads.ts';
import { pushAndHinge } from '../conversation/classes.ts';
import { studioSettings } from '../timetable/timetable-studio.ts';

const plain = 'abcdefghijklmnopqrstuvwxyz';
const other = 'ȧƀƈḋėƒɠħıǰķŀɱńȯƥɋŗşŧŭṽŵẋẏż';

/** What a translator leaves as it is: mentions and links, what is to be typed, emoji, escaped signs. */
const kept = /<[^>]*>|```[\s\S]*?```|`[^`]*`|:[a-z_]+:|&[a-z]+;/g;

function translate(text: string): string {
  const letters = (part: string) =>
    part.toLowerCase().replaceAll(/[a-z]/g, (letter) => other[plain.indexOf(letter)] ?? letter);
  const between = text.match(kept) ?? [];
  return text
    .split(kept)
    .map((piece, place) => letters(piece) + (between[place] ?? ''))
    .join('');
}

/** A second language by machine: each text the words give, at any depth, in letters no other source has. */
function translated<Value>(value: Value): Value {
  const walk = (each: unknown): unknown => {
    if (typeof each === 'string') return translate(each);
    if (typeof each === 'function') return (...args: unknown[]) => walk(Reflect.apply(each, undefined, args));
    if (Array.isArray(each)) return each.map(walk);
    if (typeof each === 'object' && each !== null && Object.getPrototypeOf(each) === Object.prototype)
      return Object.fromEntries(Object.entries(each).map(([name, inner]) => [name, walk(inner)]));
    return each;
  };
  return walk(value) as Value;
}

const words: Words = translated(english);

/** Every text a person reads in blocks or a view. */
function textsIn(value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(textsIn);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, inner]) =>
    typeof inner === 'string'
      ? ['text', 'alt_text', 'title', 'label', 'name'].includes(name)
        ? [inner]
        : []
      : textsIn(inner),
  );
}

/** A title line with every fact there is, whose own words are nobody's. */
const everyFact =
  'Xx, 30 min, level 1, 10 people, beginners, older adults, hot room, focus xx, aim xx\nwarm-up 6:00: march\ncircuit x3, 40/20\npush-up\ncool-down to the end';
const brokenClass = 'Broken, 30 min\ncircuit x3 40/20\npushh up\nfoo bar 12';
const inThread = [
  'timeline',
  'why',
  'muscles',
  'easier',
  'harder',
  'no kit',
  'last time',
  'versions',
  'rounds A x4',
  'rownds A x4',
  'undo',
  'swap A thruster',
  'send',
];
const commands = ['', 'week', 'help', 'reviews', 'my data', 'again Push', "I can't teach Thursday"];
/** Thursday's class at 18:30 in Lisbon, a day before to the end; then the Monday after. */
const moments = [
  '2026-11-04T18:00:00.000Z',
  '2026-11-05T17:30:00.000Z',
  '2026-11-05T18:10:00.000Z',
  '2026-11-05T18:16:00.000Z',
  '2026-11-05T18:26:00.000Z',
  '2026-11-05T19:20:00.000Z',
  '2026-11-09T08:00:00.000Z',
];

type Button = { readonly actionId: string; readonly value: string };

function buttonsIn(value: unknown): readonly Button[] {
  if (Array.isArray(value)) return value.flatMap(buttonsIn);
  if (typeof value !== 'object' || value === null) return [];
  const each = Object.entries(value).flatMap(([, inner]) => buttonsIn(inner));
  if (!('action_id' in value) || typeof value.action_id !== 'string') return each;
  return 'value' in value && typeof value.value === 'string'
    ? [...each, { actionId: value.action_id, value: value.value }]
    : each;
}

/** The shorthand is one language of its own, and a studio's names are its own. */
const ofNoLanguage = new Set(
  [
    ...catalogue.moves.map(({ name }) => name),
    ...houseClassNames,
    'arm circles, reverse lunge alternating',
    pushAndHinge,
    brokenClass,
    'rounds work swap easier harder with no sides',
    JSON.stringify(studioSettings),
    'Morgen',
  ]
    .flatMap((text) => text.split(/[^a-z]+/i))
    .map((word) => word.toLowerCase()),
);

/** Words in plain letters that are nobody's own, with the text each stands in. */
function leaksIn(texts: readonly string[]): readonly string[] {
  return texts.flatMap((text) =>
    (text.replaceAll(kept, ' ').match(/[a-z]{3,}/gi) ?? [])
      .filter((word) => !ofNoLanguage.has(word.toLowerCase()))
      .map((word) => `${word} in: ${text}`),
  );
}

/** A draft, a review, a broken class, a cover, a whole week of notices, every form: each button pressed once. */
async function walk(talk: Conversation) {
  const { ana, cleo } = people;
  const thread = await talk.say(ana, pushAndHinge);
  await talk.say(ana, 'hello');
  for (const text of inThread) await talk.say(ana, text, { thread });
  const withFacts = await talk.say(ana, everyFact);
  await talk.say(ana, 'send', { thread: withFacts });
  await talk.say(ana, brokenClass);
  for (const text of commands) for (const personId of [ana, cleo]) await talk.command(personId, text);
  for (const user of [ana, cleo])
    await talk.deliver(eventPayload({ type: 'app_home_opened', user, tab: 'home' }));
  const pressed = new Set<string>();
  const pressAll = async (): Promise<void> => {
    const fresh = talk.workspace.calls
      .flatMap(({ args }) => [args.blocks, args.view].flatMap((sent) => buttonsIn(JSON.parse(sent ?? '[]'))))
      .find(({ actionId }) => !pressed.has(nameOf(actionId)));
    if (fresh === undefined) return;
    pressed.add(nameOf(fresh.actionId));
    for (const personId of [cleo, ana]) await talk.act(personId, fresh.actionId, fresh.value);
    return pressAll();
  };
  await pressAll();
  for (const instant of moments) {
    talk.clock.instant = instant;
    await talk.settle();
    await pressAll();
  }
  return pressed;
}

const nameOf = (actionId: string) => actionId.split(':')[0] ?? '';

test('nothing a person reads comes from anywhere but the words, so that a second language is one file', async () => {
  const settings = { ...studioSettings, headCoaches: [people.cleo] };
  const talk = await openConversation(settings, { words, due: { enqueueDue, nextDueAt } });
  const pressed = await walk(talk);
  const texts = talk.workspace.calls.flatMap(({ method, args }) => [
    ...(method.startsWith('chat.') ? [args.text ?? ''] : []),
    ...[args.blocks, args.view].flatMap((sent) => textsIn(JSON.parse(sent ?? '[]'))),
  ]);
  const told = talk.workspace.responses.map(({ body }) => body.text);
  expect(leaksIn([...texts, ...told])).toEqual([]);
  expect(pressed.size).toBeGreaterThan(20);
  expect(texts.length).toBeGreaterThan(1_000);
  await talk.close();
});

test('a text from elsewhere would be found', () => {
  expect(leaksIn([words.card.intervalSets, '*A* push-up', 'Saved at once'])).toEqual([
    'Saved in: Saved at once',
    'once in: Saved at once',
  ]);
});
