import { afterEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import {
  coach,
  createTimetableStudio,
  homeThread,
  ines,
  mira,
  studioSettings,
  teamChannel,
} from './timetable-studio.ts';

const thursday = '2026-10-15';
const wednesday = '2026-10-14T11:00:00.000Z';
const noon = '2026-10-15T11:00:00.000Z';
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

describe('the evening before', () => {
  test('one list for the team: who, where, cover open, kit short, plans that wait; it follows every change', async () => {
    const settings = {
      ...studioSettings,
      rooms: studioSettings.rooms.map((room) => ({ ...room, kit: { dumbbell: 20, mat: 16 } })),
    };
    studio = await createTimetableStudio(wednesday, settings);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.givePlan('late', thursday, 'draft');
    await studio.walkTo('2026-10-14T16:59:00.000Z');
    expect(studio.texts(teamChannel)).toEqual([]);
    await studio.walkTo('2026-10-14T17:00:00.000Z');
    expect(studio.texts(teamChannel)).toEqual([
      [
        'Thu 15 Oct: 2 classes',
        '18:30 *Thursday Lift*, <@U1>, Hall, 14 people',
        '    Kit short: 28 dumbbells needed, 20 in the room.',
        '19:30 *Late Lift*, <@U2>, Hall, 10 people',
        '    Plan in change.',
      ].join('\n'),
    ]);
    await studio.say(ines, 'I can’t teach Thursday');
    await studio.tap(ines, actions.cannotTeach, studio.valueOf('D2', actions.cannotTeach));
    await studio.say(mira, 'cancel Thu');
    expect(studio.texts(teamChannel)[0]).toBe(
      [
        'Thu 15 Oct: 1 class',
        '18:30 *Thursday Lift*: cancelled',
        '19:30 *Late Lift*, *cover open*, Hall, 10 people',
        '    Plan in change.',
      ].join('\n'),
    );
  });
});

describe('the last minutes', () => {
  const asked = () => studio.texts('D1').filter((text) => text.includes('Are you in'));

  test('I’m in, said twenty minutes before, leaves the coach in peace', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:10:00.000Z');
    expect(asked()).toEqual(['*Thursday Lift*, Thu 15 Oct, 18:30, Hall, starts in 20 min. Are you in?']);
    const value = studio.valueOf('D1', actions.imIn);
    await studio.tap(ines, actions.imIn, value);
    expect(asked()).toHaveLength(1);
    await studio.tap(mira, actions.imIn, value);
    expect(studio.texts('D1')).toEqual([
      '*Thursday Lift*, Thu 15 Oct, 18:30: you are in. Have a good class.',
    ]);
    await studio.walkTo('2026-10-15T17:20:00.000Z');
    expect(studio.texts('D9')).toEqual([]);
  });

  test('without it the coach is told at fifteen, once', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:29:00.000Z');
    expect(studio.texts('D9')).toEqual([
      '*Thursday Lift*, Thu 15 Oct, 18:30, starts in 15 min and <@U1> has not said *I’m in* yet.',
    ]);
  });

  test('an I’m in for a class that is moved holds for the old time only', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:10:00.000Z');
    const value = studio.valueOf('D1', actions.imIn);
    await studio.tap(mira, actions.imIn, value);
    await studio.say(mira, 'move Thu 18:30 to 20:30');
    await studio.tap(mira, actions.imIn, value);
    await studio.walkTo('2026-10-15T19:15:00.000Z');
    expect(studio.texts('D9').filter((text) => text.includes('has not said'))).toEqual([
      expect.stringContaining('*Late Lift*'),
      expect.stringContaining('*Thursday Lift*, Thu 15 Oct, 20:30'),
    ]);
  });

  test('at five the instructor alone gets the first three lines and the two cuts for a late start', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.walkTo('2026-10-15T17:25:00.000Z');
    const text = studio.last('D1')?.text.split('\n') ?? [];
    expect(text.slice(0, 4)).toEqual([
      '*Thursday Lift*, Thu 15 Oct, 18:30, starts in 5 min. It begins:',
      'warm-up 6:00: march, arm circle',
      'circuit x5, 40/20',
      'push-up',
    ]);
    expect(text[4]).toMatch(/^3 min late: ./);
    expect(text[5]).toMatch(/^5 min late: ./);
    expect(studio.texts(teamChannel).join()).not.toContain('It begins');
  });

  test('18 now counts the kit again and says where to rotate, in the direct message and in the class’s thread', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.walkTo('2026-10-15T17:15:00.000Z');
    await studio.say(mira, '18 now');
    expect(studio.last('D1')?.text.split('\n')).toEqual([
      'Counted again for 18, in this class alone. Its plan stays written for 14.',
      'Lay out for 18: 36 dumbbells, 18 mats',
      'B: dumbbell for 14 at once. 4 start at A and change over each round.',
      'A: mat for 16 at once. 2 start at B and change over each round.',
      'D: mat for 16 at once. 2 start at B and change over each round.',
      'E: mat for 16 at once. 2 start at F and change over each round.',
    ]);
    const countdown = studio.workspace.posts.find(({ text }) => text.startsWith('Thursday Lift'));
    expect(countdown?.text).toContain('18 people');
    await studio.say(mira, '12 now', { channel: teamChannel, thread_ts: countdown?.ts });
    expect(studio.last(teamChannel)).toMatchObject({
      thread: countdown?.ts,
      text: 'Counted again for 12, in this class alone. Its plan stays written for 14.\nLay out for 12: 24 dumbbells, 12 mats\nThe kit in the room is enough.',
    });
    await studio.say(ines, '20 now', { thread_ts: countdown?.ts, channel: teamChannel });
    expect(studio.last(teamChannel)?.text).toBe(
      'Only the instructor of the class or a head coach can do that.',
    );
    await studio.say(mira, 'rounds B x2', { thread_ts: homeThread('thu', thursday) });
    expect(studio.workspace.posts.find(({ text }) => text.startsWith('Thursday Lift'))?.text).toContain(
      '12 people',
    );
  });
});

test('18 now in a plan’s thread is of its class once approved: the card shows both, the plan keeps its people', async () => {
  studio = await createTimetableStudio(noon);
  const text =
    'Push, 45 min, Thu 18:30, Hall, 14 people\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end';
  await studio.say(mira, text, { ts: '900.1' });
  const card = () => {
    const found = studio.workspace.posts.find(
      ({ thread, key }) => thread === '900.1' && key?.startsWith('card:'),
    );
    return JSON.stringify(found?.blocks);
  };
  expect(card()).toContain('14 people · Hall');
  expect(card()).not.toContain('in its class');
  const [draft] = await studio.storage.plans.listByAuthor('T1', mira, 1);
  if (draft !== undefined)
    await studio.storage.plans.update('T1', { ...draft, state: 'approved', approvedVersion: 1 });
  await studio.say(mira, '18 now', { thread_ts: '900.1' });
  expect(card()).toContain('14 people · Hall · in its class: 18 people');
  const scheduled = await studio.storage.classes.find('T1', 'thu:2026-10-15');
  expect(scheduled?.people).toBe(18);
  const { planId = '' } = scheduled ?? {};
  expect(await studio.storage.plans.find('T1', planId)).toMatchObject({ currentVersion: 1 });
  await studio.say(mira, '14 now', { thread_ts: '900.1' });
  expect(card()).not.toContain('in its class');
});

test('18 now in the thread of a plan that was never approved is of the plan, and so of its class', async () => {
  studio = await createTimetableStudio(noon);
  await studio.say(mira, 'Push, 45 min, Thu 18:30, Hall, 14 people\nemom 10\n8 push-up', { ts: '900.1' });
  await studio.say(mira, '18 now', { thread_ts: '900.1' });
  const scheduled = await studio.storage.classes.find('T1', 'thu:2026-10-15');
  expect(scheduled?.people).toBe(18);
  const version = await studio.storage.plans.findVersion('T1', scheduled?.planId ?? '', 2);
  expect(version?.plan?.facts.people).toBe(18);
});

describe('a plan that is not approved', () => {
  test('is told to coach and instructor a day and three hours before, and to the team as in change', async () => {
    studio = await createTimetableStudio(wednesday);
    await studio.givePlan('thu', thursday, 'draft');
    await studio.walkTo('2026-10-14T17:30:00.000Z');
    const day =
      '*Thursday Lift*, Thu 15 Oct, 18:30, starts in 24 h: its plan is not approved yet. The team sees: *plan in change*.';
    expect([studio.texts('D9'), studio.texts('D1')]).toEqual([[day], [day]]);
    await studio.walkTo('2026-10-15T14:30:00.000Z');
    const hours = day.replace('24 h', '3 h');
    expect([studio.texts('D9'), studio.texts('D1')]).toEqual([
      [day, hours],
      [day, hours],
    ]);
    await studio.walkTo('2026-10-15T16:30:00.000Z');
    expect(studio.texts(teamChannel).at(-1)).toContain('Plan in change.');
  });

  test('says nothing where it is approved in time, or was begun after that moment', async () => {
    studio = await createTimetableStudio(wednesday);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.walkTo(noon);
    await studio.givePlan('late', thursday, 'draft');
    await studio.walkTo('2026-10-15T15:00:00.000Z');
    expect(studio.texts('D9')).toEqual([]);
    await studio.walkTo('2026-10-15T15:30:00.000Z');
    expect(studio.texts('D9')).toEqual([
      expect.stringContaining('*Late Lift*, Thu 15 Oct, 19:30, starts in 3 h'),
    ]);
  });
});

test('who is instructor and coach in one is told once', async () => {
  const own = studioSettings.slots.map((slot) => ({ ...slot, instructorId: coach }));
  studio = await createTimetableStudio(wednesday, { ...studioSettings, slots: own });
  await studio.givePlan('thu', thursday, 'draft');
  await studio.walkTo('2026-10-14T17:30:00.000Z');
  expect(studio.texts('D9')).toHaveLength(1);
});
