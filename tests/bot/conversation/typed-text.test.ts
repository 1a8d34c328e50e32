import { expect, test } from 'vitest';
import { openConversation, people, reviewChannel } from '../../helpers/conversation.ts';
import { pushAndHinge } from './classes.ts';

const { ana, cleo } = people;
const hostile = '<!channel> <https://x.example|y> *b* `c` &';

test('nothing that was typed, wherever it was typed, takes effect where it is shown', async () => {
  const talk = await openConversation();
  const inReview = () => ({
    channel: reviewChannel,
    thread: talk.inChannel(reviewChannel).find((post) => post.thread === undefined)?.ts ?? '',
  });
  const thread = await talk.say(ana, pushAndHinge.replace('Push & Hinge', hostile));
  const broken = await talk.say(ana, `Row ${hostile}, 30 min\ncircuit x3, 40/20\n${hostile}\nplank`);
  for (const text of [hostile, `line 3: ${hostile}`, `title ${hostile}`, 'versions'])
    await talk.say(ana, text, { thread: broken });
  for (const text of [
    hostile,
    `swap A ${hostile}`,
    `swpa A ${hostile}`,
    `title Row ${hostile}`,
    `focus ${hostile}`,
    `aim ${hostile}`,
    `A ${hostile}`,
    'versions',
    'timeline',
    'why',
    'easier',
    'no jumps',
    'last time',
    'send',
  ])
    await talk.say(ana, text, { thread });
  await talk.mention(cleo, `B: ${hostile}`, inReview());
  await talk.mention(cleo, `${hostile}: ${hostile}`, inReview());
  await talk.tap(cleo, 'Ask for changes');
  await talk.submit(cleo, { reason: hostile });
  await talk.say(ana, 'send', { thread });
  await talk.mention(cleo, `approve: ${hostile}`, inReview());
  await talk.say(ana, `again ${hostile}`);
  await talk.say(ana, `slot 50`, { thread });
  await talk.tap(ana, 'All checks and why', talk.inThread(thread)[0]);
  await talk.tapInView(ana, 'Leave out');
  await talk.submit(ana, { reason: hostile });
  await talk.say(cleo, 'reviews');
  const marked = talk.workspace.calls.flatMap(({ args }) => markedTexts(args.blocks ?? args.view ?? '[]'));
  const tops = talk.workspace.calls.flatMap(({ args }) => args.text ?? []);
  const shown = [...marked, ...tops, ...talk.workspace.responses.map(({ body }) => body.text)];
  expect(shown.length).toBeGreaterThan(60);
  expect(shown.filter((text) => /<!|<http/.test(text.replace(/<https:\/\/morgen[^>]*>/g, '')))).toEqual([]);
  expect(shown.join('\n')).toContain('&lt;!channel&gt;');
  expect(await talk.close()).toEqual([]);
});

test('a message of edits none of which can be read is answered in one message', async () => {
  const talk = await openConversation();
  const thread = await talk.say(ana, pushAndHinge);
  await talk.say(ana, Array.from({ length: 500 }, () => 'swap Z plank').join('\n'), { thread });
  expect(talk.inThread(thread)).toHaveLength(2);
  expect(await talk.close()).toEqual([]);
});

/** Every text that is read as markup in blocks or a view; plain text shows signs as they are. */
function markedTexts(json: string): readonly string[] {
  const found: string[] = [];
  JSON.parse(json, (_key, value: unknown) => {
    if (
      typeof value === 'object' &&
      value !== null &&
      'type' in value &&
      value.type === 'mrkdwn' &&
      'text' in value
    )
      found.push(String(value.text));
    return value;
  });
  return found;
}

/** Half of a character: what is left where a text is cut inside one. */
const half = '\ud83d';

test('half a character is said, drafted and answered like any other, and holds up nothing', async () => {
  const talk = await openConversation();
  await talk.command(ana, `Push ${half} & Hinge, 30 min\nwarm-up 6:00\ncircuit x3, 40/20\npush-up\nplank`);
  await talk.command(ana, `words ${half} of no class`);
  const thread = await talk.say(ana, pushAndHinge.replace('Push', half));
  await talk.say(ana, half, { thread });
  await talk.say(ana, `add ${'x'.repeat(35)}${String.fromCodePoint(0x1f3cb)} after A`, { thread });
  const [told] = talk.workspace.responses.map(({ body }) => JSON.stringify(body));
  expect(told).toBeDefined();
  expect(talk.posts().some(({ text }) => text.includes('Push \ufffd &amp; Hinge'))).toBe(true);
  expect(talk.inThread(thread).length).toBeGreaterThan(2);
  expect(talk.posts().every(({ text }) => text.isWellFormed())).toBe(true);
  expect(talk.lines.filter((line) => line.includes('not sent'))).toEqual([]);
  expect(await talk.close()).toEqual([]);
});
