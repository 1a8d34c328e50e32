import { afterEach, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import { english } from '../../../bot/words/en.ts';
import { viewPayload } from '../../helpers/payloads.ts';
import { coach, createTimetableStudio, mira } from './timetable-studio.ts';

const noon = '2026-10-14T11:00:00.000Z';
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const text = (title: string, when = 'Thu 18:30') =>
  `${title}, 45 min, ${when}, 14 people\nwarm-up 5:00: march\ncircuit x6, 40/20\npush-up\nplank\ndead bug\nreverse lunge alternating\ncool-down to the end`;

/** Classes of the week with their plans' titles. */
async function calendar(): Promise<readonly string[]> {
  const classes = await studio.storage.classes.listBetween(
    'T1',
    '2026-10-14T00:00:00.000Z',
    '2026-10-19T00:00:00.000Z',
  );
  return Promise.all(
    classes.map(async ({ startsAt, planId, state }) => {
      const record = planId === undefined ? undefined : await studio.storage.plans.find('T1', planId);
      const version =
        record && (await studio.storage.plans.findVersion('T1', record.id, record.currentVersion));
      return `${startsAt.date} ${startsAt.time} ${version?.plan?.facts.title ?? 'none'} ${state}`;
    }),
  );
}
const inThread = (thread: string) =>
  studio.workspace.posts.filter((post) => post.thread === thread).map((post) => post.text);
const question =
  'Thu 15 Oct, 18:30 has *Lift and Press* already (draft). A class has one plan, so *Row &amp; Squat* is not on the calendar yet. Both are kept.';

test('a second plan for a class asks; nothing is counted twice until it is answered', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat'), { ts: '900.2' });
  expect(await calendar()).toEqual(['2026-10-15 18:30 Lift and Press planned']);
  expect(inThread('900.2').at(-1)).toBe(question);
  expect(inThread('900.2').join()).not.toContain('Clash');
  await studio.say(mira, 'people 12', { thread_ts: '900.2' });
  expect(inThread('900.2').filter((said) => said === question)).toHaveLength(1);
  expect(await calendar()).toEqual(['2026-10-15 18:30 Lift and Press planned']);
});

test('takes the place by a tap, of its author or a head coach; the other plan is kept and told', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat'), { ts: '900.2' });
  const value = studio.valueOf('D1', actions.takePlace);
  await studio.tap('U4', actions.takePlace, value);
  expect(await calendar()).toEqual(['2026-10-15 18:30 Lift and Press planned']);
  await studio.tap(mira, actions.takePlace, value);
  expect(await calendar()).toEqual(['2026-10-15 18:30 Row & Squat planned']);
  expect(inThread('900.1').at(-1)).toBe(
    'Thu 15 Oct, 18:30 has *Row &amp; Squat* in its place now. This plan is kept, off the calendar.',
  );
  expect(inThread('900.2').at(-1)).toBe(
    'Thu 15 Oct, 18:30 has *Row &amp; Squat* now. *Lift and Press* is kept, off the calendar.',
  );
  expect(await studio.storage.plans.listByAuthor('T1', mira, 5)).toHaveLength(2);
  const standing = await calendar();
  await studio.tap(mira, actions.takePlace, value);
  expect(studio.workspace.told.at(-1)?.text).toBe(english.flow.buttonGone);
  expect(await calendar()).toEqual(standing);
});

test('at another time both are on the calendar', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat'), { ts: '900.2' });
  await studio.say(mira, text('Row & Squat', 'Fri 10:00'), { thread_ts: '900.2' });
  expect(await calendar()).toEqual([
    '2026-10-15 18:30 Lift and Press planned',
    '2026-10-16 10:00 Row & Squat planned',
  ]);
});

test('the form says that the class has a plan, and takes another time', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat'), { ts: '900.2' });
  const [plan] = await studio.storage.plans.listByAuthor('T1', mira, 1);
  const hand = (time: string) =>
    studio.send(
      viewPayload(
        'schedule-form',
        {
          date: { date: { type: 'datepicker', selected_date: '2026-10-15' } },
          time: { time: { type: 'timepicker', selected_time: time } },
        },
        {
          user: { id: mira, team_id: 'T1' },
          view: {
            id: 'V1',
            hash: 'h',
            callback_id: 'schedule-form',
            private_metadata: JSON.stringify({ plan: plan?.id, version: 1 }),
            state: {
              values: {
                date: { date: { type: 'datepicker', selected_date: '2026-10-15' } },
                time: { time: { type: 'timepicker', selected_time: time } },
              },
            },
          },
        },
      ),
    );
  expect((await hand('18:30')).acks).toEqual([
    { response_action: 'errors', errors: { time: english.place.hasInForm('Lift and Press') } },
  ]);
  await hand('12:00');
  expect(await calendar()).toEqual([
    '2026-10-15 12:00 Row & Squat planned',
    '2026-10-15 18:30 Lift and Press planned',
  ]);
});

test('a plan that has a class and is moved onto another stays until it takes the place', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat', 'Fri 10:00'), { ts: '900.2' });
  await studio.say(mira, text('Row & Squat'), { thread_ts: '900.2' });
  expect(await calendar()).toEqual([
    '2026-10-15 18:30 Lift and Press planned',
    '2026-10-16 10:00 Row & Squat planned',
  ]);
  await studio.tap(mira, actions.takePlace, studio.valueOf('D1', actions.takePlace));
  expect(await calendar()).toEqual([
    '2026-10-15 18:30 Row & Squat planned',
    '2026-10-16 10:00 Row & Squat cancelled',
  ]);
});

test('the review says what has its place, and what its class clashes with', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, text('Lift and Press'), { ts: '900.1' });
  await studio.say(mira, text('Row & Squat'), { ts: '900.2' });
  await studio.say(mira, 'send', { thread_ts: '900.2' });
  expect(studio.last('C7')?.text).toContain('Thu 15 Oct, 18:30 has *Lift and Press* already (draft).');
  await studio.say(mira, text('Push', 'Thu 19:00, Hall'), { ts: '900.3' });
  await studio.say(mira, 'send', { thread_ts: '900.3' });
  expect(studio.last('C7')?.text).toContain('Clash: <@U1> also teaches *Lift and Press*, Thu 15 Oct, 18:30.');
  expect(studio.last('C7')?.text).toContain('Clash: the room is taken by *Late Lift*, Thu 15 Oct, 19:30.');
  expect(inThread('900.3').join('\n')).toContain('Clash: you also teach *Lift and Press*');
  expect(await studio.storage.plans.listByAuthor('T1', coach, 5)).toEqual([]);
});
