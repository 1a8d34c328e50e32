import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { settingsParts } from '../../bot/flows/settings-part.ts';
import { actions, views } from '../../bot/ids.ts';
import type { Settings } from '../../domain/settings.ts';
import {
  actionPayload,
  commandPayload,
  eventPayload,
  shortcutPayload,
  viewPayload,
} from '../helpers/payloads.ts';
import { coach, createTimetableStudio, ines, mira, studioSettings } from './timetable/timetable-studio.ts';

/** Each sign that could take effect, short enough for a name. */
const evil = (mark: string) =>
  `${mark} <!channel> <@U0EVIL> <https://evil.example|win> @here https://evil.example *bolded* _slanted_ ~struck~ \`coded\` \`\`\`pre\`\`\` &`;
const short = '=1+1 <!channel> *bolded* ```pre```';

const [hall] = studioSettings.rooms;
const hostileSettings: Settings = {
  ...studioSettings,
  rooms:
    hall === undefined
      ? []
      : [
          { ...hall, name: `Hall ${short}`, emergencyCard: evil('card') },
          { ...hall, name: `Loft ${short}` },
        ],
  sharedKit: [{ item: 'dumbbell', pieces: 20, rooms: [`Hall ${short}`, `Loft ${short}`] }],
  slots: studioSettings.slots.map((slot) => ({
    ...slot,
    name: `=${slot.id} ${short}`,
    room: `Hall ${short}`,
  })),
  slotHabits: [{ name: evil('habit'), slotIds: ['mon', 'thu'] }],
  ownNames: { [`swing ${short}`]: 'kettlebell-swing' },
};

const classText = (title: string, when = '') => `${title}, 45 min, level 2, 14 people${when}
warm-up 6:00: march
circuit x5, 40/20
push-up
say: ${evil('cue')}
goblet squat
dead bug
rest 60
circuit x3, 40/20
"${evil('words')}"
plank
cool-down to the end`;

type Sent = { readonly where: string; readonly text: string; readonly verbatim: boolean };

/** Everything that was said and shown over three weeks in a studio whose people type the worst they can. */
async function runStudio() {
  const studio = await createTimetableStudio('2026-10-26T09:00:00.000Z', hostileSettings);
  const { workspace, send, settle } = studio;
  const by = (id: string) => ({ user: { id, team_id: 'T1' } });
  const say = studio.say;
  const mention = async (id: string, text: string, thread: string) => {
    const event = {
      type: 'app_mention',
      user: id,
      channel: 'C7',
      thread_ts: thread,
      text: `<@UBOT> ${text}`,
    };
    await send(eventPayload({ ...event, ts: `700.${Math.floor(Math.random() * 900_000) + 100_000}` }));
    await settle();
  };
  const act = async (id: string, actionId: string, value: string, changes: Record<string, unknown> = {}) => {
    await send(actionPayload(actionId, value, { ...by(id), ...changes }));
    await settle();
  };
  const submit = async (id: string, callbackId: string, metadata: string, values: Record<string, string>) => {
    const state = Object.fromEntries(
      Object.entries(values).map(([block, value]) => [
        block,
        { [block]: { type: 'plain_text_input', value } },
      ]),
    );
    const view = { id: 'V1', hash: 'h', callback_id: callbackId, private_metadata: metadata };
    const { acks } = await send(
      viewPayload(callbackId, {}, { ...by(id), view: { ...view, state: { values: state } } }),
    );
    await settle();
    shown.push(...acks.flatMap((ack) => (ack === undefined ? [] : [JSON.stringify(ack)])));
  };
  const shown: string[] = [];
  const planOf = async (id: string) => {
    const [record] = await studio.storage.plans.listByAuthor('T1', id, 1);
    if (record === undefined) throw new Error('No plan.');
    return JSON.stringify({ plan: record.id, version: record.currentVersion });
  };

  for (const [slotId, date] of [
    ['mon', '2026-10-26'],
    ['thu', '2026-11-05'],
  ] as const)
    await studio.givePlan(slotId, date, 'approved', classText(`Given ${evil('typed')}`));
  await say(mira, classText(`Lift ${evil('typed')}`, ', Thu 18:30'), { ts: '100.000001' });
  for (const text of [
    'timeline',
    'why',
    'versions',
    `title Lift ${evil('typed')}`,
    `focus ${evil('typed')}`,
    `aim ${evil('typed')}`,
    `A ${evil('typed')}`,
    'easier',
    'no jumps',
    `swap A ${evil('typed')}`,
    `${evil('typed')}`,
    'send',
  ])
    await say(mira, text, { thread_ts: '100.000001' });
  const value = await planOf(mira);
  const review =
    workspace.posts.findLast(({ channel, thread }) => channel === 'C7' && thread === undefined)?.ts ?? '';
  await mention(coach, `A: ${evil('comment')}`, review);
  await submit(coach, views.comment, value, { line: 'nowhere', comment: evil('comment') });
  await submit(coach, views.askChanges, value, { reason: evil('changes') });
  await say(mira, 'send', { thread_ts: '100.000001' });
  await act(mira, actions.allFindings, await planOf(mira));
  await act(
    mira,
    actions.openDismiss,
    JSON.stringify({ ...JSON.parse(await planOf(mira)), name: 'time-unused' }),
  );
  await submit(
    mira,
    views.dismiss,
    JSON.stringify({ ...JSON.parse(await planOf(mira)), name: 'time-unused' }),
    { reason: evil('dismissed') },
  );
  await say(coach, 'reviews');
  await submit(coach, views.approveWithNote, await planOf(mira), { note: evil('note') });
  for (const actionId of [
    actions.timeline,
    actions.muscles,
    actions.options,
    actions.openSchedule,
    actions.openComment,
  ])
    await act(coach, actionId, await planOf(mira));
  await say(ines, `Broken ${evil('typed')}, 30 min\ncircuit x3, 40/20\n${evil('typed')}\nplank`, {
    ts: '100.000002',
  });
  for (const text of [evil('typed'), `line 3: ${evil('typed')}`, 'versions'])
    await say(ines, text, { thread_ts: '100.000002' });
  for (const text of [
    `again ${evil('typed')}`,
    `new move ${evil('typed')} like plank`,
    `new move yard crawl like ${evil('typed')}`,
    `nickname ${evil('typed')} = plank`,
    `drop nickname ${evil('typed')}`,
    `retire move ${evil('typed')}`,
    'our moves',
    `cancel ${evil('typed')}`,
    `taught: ${evil('typed')}`,
    'my data',
    'week',
    'calendar',
    'help',
  ])
    await say(mira, text);
  await send(commandPayload(`Row ${evil('typed')}`));
  await send(shortcutPayload('draft-from-message', evil('typed')));
  await studio.walkTo('2026-10-29T17:45:00.000Z');
  await say(mira, '18 now');
  await studio.walkTo('2026-10-29T21:00:00.000Z');
  await submit(mira, views.taughtWithChanges, 'thu:2026-10-29', { changes: evil('taught') });
  await say(mira, 'last time', { thread_ts: '100.000001' });
  await say(mira, "can't teach 2026-11-05");
  await act(mira, actions.cannotTeach, JSON.stringify(['thu:2026-11-05', '2026-11-05T18:30:00.000Z']));
  await act(ines, actions.takeClass, JSON.stringify(['thu:2026-11-05', '2026-11-05T18:30:00.000Z']));
  await say(ines, 'move 2026-11-05 18:30 to 2026-11-06 18:30');
  await say(coach, 'cancel 2026-11-09');
  await say(coach, 'holiday 2026-11-12 to 2026-11-13');
  await studio.walkTo('2026-11-03T09:00:00.000Z');
  await say(coach, 'week 44');
  for (const part of settingsParts)
    await act(coach, actions.settingsPart, JSON.stringify({ part }), {
      channel: undefined,
      message: undefined,
      container: { type: 'view', view_id: 'V1' },
      view: { id: 'V1', private_metadata: '', state: { values: {} } },
    });
  for (const id of [mira, ines, coach])
    await send(eventPayload({ type: 'app_home_opened', user: id, tab: 'home' }));
  await settle();
  const token = (await studio.storage.timetable.findFeedToken('T1')) ?? '';
  const files = workspace.posts.flatMap(({ file }) => (file === undefined ? [] : [file]));
  const calls = [...workspace.calls];
  const responses = workspace.responses.map(({ body }) => body);
  const fallbacks = await studio.storage.care.exportStudio('T1');
  await studio.end();
  return { calls, files, responses, shown, token, notices: fallbacks.notices ?? [] };
}

const noticeRow = z.looseObject({ payload: z.looseObject({ text: z.string() }) });

let ran: Awaited<ReturnType<typeof runStudio>>;
let sent: readonly Sent[];
beforeAll(async () => {
  ran = await runStudio();
  sent = [
    ...ran.calls.flatMap(({ method, args }) => [
      ...(args.text === undefined
        ? []
        : [{ where: method, text: args.text, verbatim: args.parse === 'none' }]),
      ...markedIn(method, args.blocks ?? args.view ?? '[]'),
    ]),
    ...ran.responses.map(({ text }) => ({ where: 'response', text, verbatim: true })),
    ...ran.responses.flatMap((body) => markedIn('response', JSON.stringify(body))),
    ...ran.shown.flatMap((ack) => markedIn('ack', ack)),
    ...ran.notices.flatMap((row) => [
      // Stands in the place of a file or chart that can't be posted.
      { where: 'notice', text: noticeRow.parse(row).payload.text, verbatim: true },
      ...markedIn('notice', JSON.stringify(row)),
    ]),
  ];
}, 120_000);

/** Every text that is read as markup. */
function markedIn(where: string, json: string): readonly Sent[] {
  const found: Sent[] = [];
  JSON.parse(json, (_key, value: unknown) => {
    if (
      typeof value === 'object' &&
      value !== null &&
      'type' in value &&
      value.type === 'mrkdwn' &&
      'text' in value
    )
      found.push({
        where,
        text: String(value.text),
        verbatim: 'verbatim' in value && value.verbatim === true,
      });
    return value;
  });
  return found;
}

const withoutCode = (text: string) => text.replace(/```[\s\S]*?```/g, '');

describe('what people type takes no effect, wherever it is shown', () => {
  test('enough was said, and the worst was in it', () => {
    expect(sent.length).toBeGreaterThan(150);
    for (const method of ['chat.postMessage', 'chat.update', 'views.open', 'views.update', 'views.publish'])
      expect(
        sent.filter(({ where, text }) => where === method && text.includes('bolded')).length,
        method,
      ).toBeGreaterThan(0);
  });

  test.each([
    'card',
    'habit',
    'cue',
    'words',
    'comment',
    'changes',
    'dismissed',
    'note',
    'taught',
    'typed',
    'Lift typed',
    'Broken typed',
    'Hall =1+1',
    'Loft =1+1',
    '=thu =1+1',
    'swing =1+1',
  ])('%s is shown', (mark) => {
    expect(sent.filter(({ text }) => text.includes(`${mark} &lt;!channel`)).length).toBeGreaterThan(0);
  });

  test.each([
    ['a mention of everyone', /<!/],
    ['a mention of a person', /<@U0EVIL/],
    ['a mention of a channel but the studio’s own', /<#(?!C[17]>)/],
    ['a link', /<https?:\/\/evil/],
    ['an entity of their own', /&(?!(?:amp|lt|gt);)/],
  ])('no %s', (_name, sign) => {
    expect(sent.filter(({ text }) => sign.test(text))).toEqual([]);
  });

  test.each([
    ['bold', '*bolded*'],
    ['italic', '_slanted_'],
    ['struck through', '~struck~'],
    ['code', '`coded`'],
  ])('nothing of theirs is %s', (_name, sign) => {
    expect(sent.filter(({ text }) => withoutCode(text).includes(sign))).toEqual([]);
  });

  test('no code block is begun or ended by them', () => {
    expect(sent.filter(({ text }) => text.includes('```pre'))).toEqual([]);
    expect(sent.filter(({ text }) => (text.match(/```/g)?.length ?? 0) % 2 === 1)).toEqual([]);
  });

  test('addresses and names without brackets stay as typed', () => {
    expect(sent.filter(({ verbatim }) => !verbatim)).toEqual([]);
  });
});

describe('files', () => {
  test('have names of our own', () => {
    expect(
      ran.files
        .map(({ name }) => name)
        .filter((name) => !/^[a-z0-9-]+(?:-W\d{2})?\.(?:csv|ics|txt|png)$/.test(name)),
    ).toEqual([]);
    expect(new Set(ran.files.map(({ name }) => name.split('.').at(-1)))).toEqual(new Set(['csv', 'ics']));
  });

  test('the table has no cell that a spreadsheet runs', () => {
    const tables = ran.files.filter(({ name }) => name.endsWith('.csv'));
    expect(tables.length).toBeGreaterThan(0);
    for (const { content } of tables) {
      expect(content).toContain("'=thu");
      for (const cell of content.split(/[,\r\n]+/)) expect(cell).not.toMatch(/^"?[=+\-@\t]/);
    }
  });

  test('the calendar has no line of theirs', () => {
    const calendars = ran.files.filter(({ name }) => name.endsWith('.ics'));
    for (const { content } of calendars) {
      const events = new ICAL.Component(ICAL.parse(content)).getAllSubcomponents('vevent');
      expect(events.length).toBeGreaterThan(5);
      const names = new Set(
        events.flatMap((event) => event.getAllProperties().map((property) => property.name)),
      );
      expect([...names].toSorted()).toEqual([
        'description',
        'dtend',
        'dtstamp',
        'dtstart',
        'location',
        'sequence',
        'status',
        'summary',
        'uid',
      ]);
    }
  });
});
