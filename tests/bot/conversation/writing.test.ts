import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { english } from '../../../bot/words/en.ts';
import {
  buttonsOf,
  type Conversation,
  openConversation,
  people,
  type Sent,
  shownText,
} from '../../helpers/conversation.ts';
import { eventPayload, messagePayload, shortcutPayload, viewPayload } from '../../helpers/payloads.ts';
import { pushAndHinge } from './classes.ts';

const { ana, cleo } = people;
let talk: Conversation;

beforeEach(async () => {
  talk = await openConversation();
});
afterEach(async () => {
  expect(await talk.close()).toEqual([]);
});

const nothing: Sent = { text: '', blocks: [] };
const cardIn = (thread: string): Sent =>
  talk.inThread(thread).find(({ key }) => key?.startsWith('card:')) ?? nothing;
const answersIn = (thread: string) => talk.inThread(thread).filter(({ key }) => !key?.startsWith('card:'));
const lastIn = (thread: string): Sent => talk.inThread(thread).at(-1) ?? nothing;
const lineByLine = async (text: string): Promise<string> => {
  const [first = '', ...lines] = text.split('\n');
  const stamp = await talk.say(ana, first);
  for (const line of lines) await talk.say(ana, line);
  return stamp;
};
/** An edit of one message, as the workspace tells it. */
const putRight = (stamp: string, before: string, text: string) =>
  talk.deliver(
    eventPayload({
      type: 'message',
      subtype: 'message_changed',
      channel_type: 'im',
      channel: 'D1',
      message: { type: 'message', user: ana, text, ts: stamp, edited: { user: ana, ts: '900.000001' } },
      previous_message: { text: before },
    }),
  );

describe('a class that comes line by line', () => {
  test('has one answer, kept up to date, whatever the number of its lines', async () => {
    const stamp = await lineByLine(pushAndHinge);
    expect(answersIn(stamp)).toHaveLength(1);
    expect(lastIn(stamp).text).toBe('*Push &amp; Hinge*: 30:00, exactly the teaching time');
    expect(buttonsOf(lastIn(stamp))).toEqual(['Send for review', 'Undo']);
    expect(talk.inChannel('D1').filter(({ thread }) => thread === undefined)).toEqual([]);
  });

  test('tells what comes next while it is not whole, and blames nothing', async () => {
    const stamp = await talk.say(ana, 'Lift & Push, 45 min, level 1, Thu 18:30');
    expect(cardIn(stamp).text).toBe(
      [
        'Lift &amp; Push:',
        '45 min · level 1 · Thu 5 Nov, 18:30',
        english.draft.leftToWrite({ kind: 'blocks' }),
        english.draft.linesWelcome,
      ].join('\n'),
    );
    expect(shownText(cardIn(stamp))).not.toContain('^');
    await talk.say(ana, 'circuit x3, 40/20');
    expect(lastIn(stamp).text).toBe('*Lift &amp; Push*\nNow the moves of this circuit, a line each.');
    await talk.say(ana, 'push-up');
    expect(lastIn(stamp).text).toMatch(/^\*Lift &amp; Push\*: 2:40 of 45:00/);
    expect(answersIn(stamp)).toHaveLength(1);
  });

  test('goes on with several lines in a message too, in its thread and beside it', async () => {
    const [title = '', ...lines] = pushAndHinge.split('\n');
    const stamp = await talk.say(ana, title);
    await talk.say(ana, lines.slice(0, 5).join('\n'), { thread: stamp });
    await talk.say(ana, lines.slice(5).join('\n'), { thread: stamp });
    expect(await talk.versionOf(ana)).toMatchObject({ text: pushAndHinge, problemCount: 0 });
    expect(answersIn(stamp)).toHaveLength(1);
    await talk.say(people.ben, title);
    await talk.say(people.ben, lines.slice(0, 5).join('\n'));
    await talk.say(people.ben, lines.slice(5).join('\n'));
    expect(await talk.versionOf(people.ben)).toMatchObject({ text: pushAndHinge, problemCount: 0 });
  });

  test('is written anew by a whole class in its thread', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    const anew = pushAndHinge.replace('Push & Hinge', 'Pull & Hinge').replace('push-up', 'bent-over row');
    await talk.say(ana, anew, { thread: stamp });
    expect((await talk.versionOf(ana)).text).toBe(anew);
  });

  test('carries what puts a line right where it is told; a tap mends it in the same place', async () => {
    const stamp = await lineByLine('Lift & Push, 45 min\ncircuit x3, 40/20\npress\nplank');
    expect(answersIn(stamp)).toHaveLength(1);
    expect(lastIn(stamp).text).toContain('One line I could not read');
    expect(shownText(lastIn(stamp))).toContain('press\n^^^^^');
    const [name = ''] = buttonsOf(lastIn(stamp));
    expect(name).toMatch(/^Use /);
    await talk.tap(ana, name, talk.inThread(stamp).at(-1));
    expect(await talk.versionOf(ana)).toMatchObject({ problemCount: 0 });
    await talk.say(ana, 'goblet squat');
    expect(answersIn(stamp)).toHaveLength(1);
    expect(lastIn(stamp).text).toMatch(/of 45:00/);
  });

  test('has an answer of its own again after another change, and its buttons go with that', async () => {
    const stamp = await lineByLine(pushAndHinge);
    await talk.say(ana, 'rounds A x4', { thread: stamp });
    const [lines, edit] = answersIn(stamp);
    expect(buttonsOf(lines ?? nothing)).toEqual([]);
    expect(buttonsOf(edit ?? nothing)).toEqual(['Send for review', 'Undo']);
  });

  test('goes from its running answer too once it is sent', async () => {
    const stamp = await lineByLine(pushAndHinge);
    await talk.say(ana, 'send', { thread: stamp });
    expect(answersIn(stamp).flatMap(buttonsOf)).toEqual([]);
  });

  test('keeps its other lines where its first message is put right, and one of them where that is', async () => {
    const stamp = await talk.say(ana, 'Lift & Push, 45 min');
    const circuit = await talk.say(ana, 'circuit x3, 40/20');
    const move = await talk.say(ana, 'goblin squash');
    await talk.say(ana, 'plank');
    await putRight(stamp, 'Lift &amp; Push, 45 min', 'Lift & Pull, 40 min');
    await putRight(move, 'goblin squash', 'goblet squat');
    expect((await talk.versionOf(ana)).text).toBe(
      'Lift & Pull, 40 min\ncircuit x3, 40/20\ngoblet squat\nplank',
    );
    expect(await talk.versionOf(ana)).toMatchObject({ problemCount: 0 });
    await putRight(circuit, 'something else', 'circuit x4, 40/20');
    expect((await talk.versionOf(ana)).text).toContain('circuit x3');
  });
});

describe('talk above the class', () => {
  const said = `Try this one tomorrow?\n${pushAndHinge}`;

  test('is left out, and which line is said', async () => {
    const stamp = await talk.say(ana, said);
    expect(cardIn(stamp).text).toMatch(/^Push &amp; Hinge: 30:00/);
    expect(shownText(cardIn(stamp))).toContain('Line 1 left out, the title line is below it');
  });

  test('a message of another comes into the form as people see it', async () => {
    await talk.deliver(shortcutPayload('draft-from-message', said.replace('&', '&amp;')));
    expect(talk.view().blocks[0]?.element).toMatchObject({ initial_value: said });
    await talk.submit(ana, { class: said });
    expect(talk.posts().find(({ key }) => key?.startsWith('text:'))?.text).toContain('Push &amp; Hinge');
    expect(talk.posts().find(({ key }) => key?.startsWith('text:'))?.text).not.toContain('&amp;amp;');
  });

  test('a title that ends in a sign of its own gets no full stop', async () => {
    const stamp = await talk.say(ana, pushAndHinge.replace('Push & Hinge', 'Ready?'));
    await talk.editMessage(ana, stamp, pushAndHinge.replace('Push & Hinge', 'Steady?'));
    expect(lastIn(stamp).text.split('\n')[0]).toBe('Read anew: Steady?');
  });
});

describe('sending and taking back', () => {
  test('each has its one line in the thread', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'send', { thread: stamp });
    expect(lastIn(stamp).text).toBe('v1 is sent for review to <#C7>.');
    await talk.say(ana, 'withdraw', { thread: stamp });
    expect(lastIn(stamp).text).toBe('Taken back: v1 is a draft again.');
    await talk.say(ana, 'withdraw', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.draft.youTookItBack);
    await talk.mention(cleo, 'withdraw', { channel: 'D1', thread: stamp });
    expect(lastIn(stamp).text).toContain('came first: took back v1');
  });

  test('the link to a draft is told where the form was asked for, and not beside the draft', async () => {
    await talk.command(ana, '');
    await talk.submit(ana, { class: pushAndHinge });
    expect(talk.toldLast()).toContain('open the draft');
    const before = talk.workspace.told.length + talk.workspace.responses.length;
    const state = { class: { class: { type: 'plain_text_input', value: pushAndHinge } } };
    const { callback_id } = talk.view();
    await talk.deliver(
      viewPayload(callback_id, state, {
        user: { id: ana, team_id: 'T1' },
        view: { id: 'V1', hash: 'h', callback_id, private_metadata: 'D1', state: { values: state } },
      }),
    );
    expect(await talk.plansOf(ana)).toHaveLength(2);
    expect(talk.workspace.told.length + talk.workspace.responses.length).toBe(before);
    expect(talk.inChannel('D1').filter(({ text }) => text.includes('open the draft'))).toEqual([]);
  });
});

describe('lines put right', () => {
  const mistyped = pushAndHinge
    .replace('kettlebell swing', 'goblin squash')
    .replace('8 goblet squat', '8 press');
  const right = (lines: Readonly<Record<number, string>>) =>
    mistyped
      .split('\n')
      .map((line, place) => lines[place + 1] ?? line)
      .filter((line) => line !== '')
      .join('\n');

  test.each([
    [
      'line 5: kettlebell swing\nline 9: 8 goblet squat',
      right({ 5: 'kettlebell swing', 9: '8 goblet squat' }),
    ],
    ['line 5:', right({ 5: '' })],
    ['drop line 5', right({ 5: '' })],
    ['leave line 9 out\nLine 5. kettlebell swing', right({ 5: 'kettlebell swing', 9: '' })],
  ])('%s', async (said, text) => {
    const stamp = await talk.say(ana, mistyped);
    await talk.say(ana, said, { thread: stamp });
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, text });
  });

  test('a line is left out by one tap, on the card and under the answer', async () => {
    const stamp = await talk.say(ana, mistyped);
    expect(buttonsOf(cardIn(stamp))).toContain('Leave line 5 out');
    await talk.tap(ana, 'Leave line 5 out');
    expect((await talk.versionOf(ana)).text).toBe(right({ 5: '' }));
    await talk.tap(ana, 'Leave line 8 out', talk.inThread(stamp).at(-1));
    expect(await talk.versionOf(ana)).toMatchObject({
      text: right({ 5: '', 9: '' }),
      problemCount: 0,
    });
  });

  test('the first line is left out by one tap too', async () => {
    const stamp = await talk.say(ana, 'Strong, 45 min, 60 min\nemom 10\n8 goblet squat');
    await talk.tap(ana, 'Leave line 1 out');
    expect((await talk.versionOf(ana)).text).toBe('emom 10\n8 goblet squat');
    expect(lastIn(stamp).text).toContain('Read anew');
  });

  test('a line that is not there is said, and the last one stays', async () => {
    const stamp = await talk.say(ana, mistyped);
    await talk.say(ana, 'line 40: plank', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.draft.noSuchLine(40, 11));
    const title = await talk.say(ana, 'Strong, 45 min, 60 min');
    await talk.say(ana, 'drop line 1', { thread: title });
    expect(lastIn(title).text).toBe(english.draft.onlyLines);
  });

  test.each(['swap A bear crawl', 'timeline', 'no jumps', 'send'])(
    '%s waits for them, with what puts them right',
    async (said) => {
      const stamp = await talk.say(ana, mistyped);
      await talk.say(ana, said, { thread: stamp });
      expect(lastIn(stamp).text).toContain(english.draft.mendFirst);
      await talk.tap(ana, 'Use goblet squat', talk.inThread(stamp).at(-1));
      expect(await talk.versionOf(ana)).toMatchObject({ version: 2, problemCount: 1 });
    },
  );

  test('what is not written yet is no line to mend', async () => {
    const stamp = await talk.say(ana, 'Strong, 45 min');
    await talk.say(ana, 'send', { thread: stamp });
    expect(lastIn(stamp).text).toBe(
      [
        english.draft.notWhole,
        english.draft.leftToWrite({ kind: 'blocks' }),
        english.draft.linesWelcome,
      ].join('\n'),
    );
    await talk.say(ana, 'asdf', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.help.unclearAmongLines(undefined));
    await talk.say(ana, 'circuit x3, 40/20\ngoblin squash', { thread: stamp });
    await talk.say(ana, 'so be it', { thread: stamp });
    expect(lastIn(stamp).text).toContain('`line 3: goblet squat` · `drop line 3`');
    await talk.say(ana, 'help', { thread: stamp });
    expect(lastIn(stamp).text).toContain('*Put lines right:* `line 3: goblet squat` · `drop line 3`');
  });

  test('how they are put right names what is really there', async () => {
    const own = await talk.say(ana, 'Strong, 45 min, 60 min\nemom 10\n8 goblet squat');
    expect(cardIn(own).text).toContain('Reply with the line put right (line 1: …), or edit your message.');
    await talk.command(ana, mistyped);
    const posted = talk.posts().findLast(({ key }) => key?.startsWith('text:'));
    expect(cardIn(posted?.ts ?? '').text).toContain(
      'Tap a name, or reply with the line put right (line 5: …).',
    );
  });
});

describe('the original message put right', () => {
  test('tells each changed line, and offers the edits of the thread that it leaves out', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'drop A', { thread: stamp });
    await talk.say(ana, 'rounds A x4', { thread: stamp });
    await talk.say(ana, 'level 3', { thread: stamp });
    await talk.editMessage(
      ana,
      stamp,
      pushAndHinge.replace('plank', 'side plank split sides').replace('level 2', 'level 3'),
    );
    const answer = talk.inThread(stamp).at(-1);
    const lines = answer?.text.split('\n') ?? [];
    expect(lines[0]).toBe('Read anew: Push &amp; Hinge.');
    expect(lines).toContain('circuit x4, 40/20 → circuit x3, 40/20');
    expect(lines.join()).toContain('side plank split sides');
    expect(lines).toContain('From the thread, not in this text: drop A · rounds A x4');
    // In the letters of the new text: A is back, and the circuit's other letter has moved on.
    expect(buttonsOf(answer ?? nothing).slice(0, 2)).toEqual(['drop A', 'rounds B x4']);
    await talk.tap(ana, 'rounds B x4', answer);
    expect((await talk.versionOf(ana)).text).toContain('circuit x4, 40/20');
  });

  test('an edit that was undone is not offered again', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'drop A\n', { thread: stamp });
    await talk.say(ana, 'undo', { thread: stamp });
    await talk.editMessage(ana, stamp, pushAndHinge.replace('level 2', 'level 3'));
    expect(lastIn(stamp).text).not.toContain('From the thread');
  });
});

describe('words in a draft’s thread', () => {
  test('move alone asks what is to move; fill says that no line is open', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await talk.say(ana, 'move', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.draft.moveWhat(['A', 'B', 'C', 'D', 'E']));
    await talk.say(ana, 'fill', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.draft.noLineOpen);
    await talk.say(ana, 'move C before A', { thread: stamp });
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2 });
  });

  test('a draft with open lines says so and is not offered for sending', async () => {
    const stamp = await talk.say(ana, pushAndHinge.replace('push-up', '? push').replace('plank', '? core'));
    expect(cardIn(stamp).text).toContain(english.draft.openLines(2));
    expect(buttonsOf(cardIn(stamp))).not.toContain('Send for review');
    await talk.say(ana, 'fill', { thread: stamp });
    expect(lastIn(stamp).text).toBe(english.draft.fillByHand(['A', 'C']));
    await talk.say(ana, 'swap A push-up\nswap C plank', { thread: stamp });
    expect(buttonsOf(lastIn(stamp))).toContain('Send for review');
  });

  test('a head count for a class whose plan is not approved changes the plan', async () => {
    const stamp = await talk.say(ana, pushAndHinge.replace('10 people', '10 people, Thu 18:30'));
    await talk.say(ana, '18 now', { thread: stamp });
    expect(await talk.versionOf(ana)).toMatchObject({ version: 2, plan: { facts: { people: 18 } } });
    expect(lastIn(stamp).text).toContain('people: 10 → 18');
  });

  test('what is found of other moves than before is told once', async () => {
    const stamp = await talk.say(ana, pushAndHinge.replace('level 2', 'level 1'));
    await talk.say(ana, 'swap A kettlebell snatch split sides', { thread: stamp });
    const told = lastIn(stamp)
      .text.split('\n')
      .filter((line) => line.includes('above level 1'));
    expect(told).toHaveLength(1);
    await talk.say(ana, 'swap D kettlebell snatch split sides', { thread: stamp });
    const again = lastIn(stamp)
      .text.split('\n')
      .filter((line) => line.includes('above level 1'));
    expect(again).toHaveLength(1);
    expect(again[0]).not.toContain('Cleared');
  });
});

describe('words for a draft said beside its thread', () => {
  test.each(['swap A bear crawl', 'timeline', 'undo', 'no jumps'])(
    '%s is sent on to its thread',
    async (said) => {
      await talk.say(ana, pushAndHinge);
      await talk.say(ana, said);
      expect(talk.inChannel('D1').at(-1)?.text).toMatch(
        /^That goes into the thread under your class: open <https:[^|]*\|Push &amp; Hinge> and reply there\.$/,
      );
      expect(await talk.planOf(ana)).toMatchObject({ currentVersion: 1 });
    },
  );

  test('without any draft they get the help', async () => {
    await talk.say(ana, 'timeline');
    expect(talk.inChannel('D1').at(-1)?.text).toContain(english.help.next);
  });
});

test('the calendar form is filled with one’s next class without a plan, and saved by one tap', async () => {
  await talk.close();
  const slot = { seconds: 1_800, instructorId: ana };
  talk = await openConversation({
    rooms: [{ name: 'Mill Room', kit: { dumbbell: 40 }, doorSeconds: 0, clearUpSeconds: 0 }],
    slots: [
      { ...slot, id: 'mon', weekday: 'Mon' as const, time: '08:00', name: 'Early Lift', room: 'Mill Room' },
      {
        ...slot,
        id: 'thu',
        weekday: 'Thu' as const,
        time: '18:30',
        name: 'Thursday Lift',
        room: 'Mill Room',
      },
    ],
  });
  await talk.say(ana, pushAndHinge);
  await talk.tap(ana, 'Put on the calendar');
  const [date, time] = talk.view().blocks;
  expect(date).toMatchObject({
    element: { initial_date: '2026-11-05' },
    hint: { text: english.forms.offeredSlot('Thursday Lift') },
  });
  expect(time).toMatchObject({ element: { initial_time: '18:30' } });
  await talk.submit(ana, { date: '2026-11-05', time: '18:30', room: 'Mill Room' });
  await talk.say(ana, pushAndHinge.replace('Push', 'Pull'));
  await talk.tap(ana, 'Put on the calendar');
  expect(talk.view().blocks[0]).toMatchObject({ element: { initial_date: '2026-11-09' } });
});

test('moves that alternate are said once in the timeline', async () => {
  const stamp = await talk.say(ana, pushAndHinge.replace('plank', 'reverse lunge alternating'));
  await talk.say(ana, 'timeline', { thread: stamp });
  expect(lastIn(stamp).text).toContain('*C reverse lunge alternating*  0:40 · round 1');
});

describe('harder', () => {
  test('offers nothing that the room has no kit for', async () => {
    await talk.close();
    talk = await openConversation({
      rooms: [
        {
          name: 'Mill Room',
          kit: { dumbbell: 40, mat: 20, kettlebell: 20 },
          doorSeconds: 0,
          clearUpSeconds: 0,
        },
      ],
    });
    const stamp = await talk.say(ana, pushAndHinge.replace('10 people', '10 people, Mill Room'));
    await talk.say(ana, 'harder', { thread: stamp });
    expect(lastIn(stamp).text).toContain('*D* goblet squat → front squat');
    expect(lastIn(stamp).text).toContain('bent-over row: nothing at hand');
    expect(buttonsOf(lastIn(stamp)).join()).not.toContain('harder E');
  });
});

test('the example of the help is tried by one tap, once', async () => {
  await talk.say(ana, 'hello');
  await talk.tap(ana, 'Try this one');
  expect(await talk.versionOf(ana)).toMatchObject({ text: english.help.example, problemCount: 0 });
  await talk.tap(ana, 'Try this one');
  expect(await talk.plansOf(ana)).toHaveLength(1);
  expect(talk.toldLast()).toBe(english.help.triedAlready);
});

describe('a picture', () => {
  const withPicture = (text: string, at: { readonly ts: string; readonly thread_ts?: string }) =>
    talk.deliver(messagePayload(text, { subtype: 'file_share', user: ana, channel: 'D1', ...at }));

  test('with a class under it is drafted as any class is', async () => {
    await withPicture(pushAndHinge, { ts: '500.000001' });
    expect(cardIn('500.000001').text).toContain('Push &amp; Hinge');
  });

  test('alone is answered with help, and is no line of the draft', async () => {
    const stamp = await talk.say(ana, pushAndHinge);
    await withPicture('', { ts: '500.000001' });
    expect(talk.inChannel('D1').at(-1)?.text).toContain(english.help.lead);
    await withPicture('', { ts: '500.000002', thread_ts: stamp });
    expect(lastIn(stamp).text).toContain('I did not read that as an edit or a question.');
    expect((await talk.planOf(ana)).currentVersion).toBe(1);
  });
});
