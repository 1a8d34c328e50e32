import nock from 'nock';
import { afterEach, describe, expect, test } from 'vitest';
import {
  coach,
  createTimetableStudio,
  homeThread,
  mira,
  studioSettings,
  teamChannel,
} from './timetable-studio.ts';

const thursday = '2026-10-15';
const noon = '2026-10-15T11:00:00.000Z';
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const countdowns = () => studio.texts(teamChannel).filter((text) => text.startsWith('Thursday Lift'));
const firstLine = () => countdowns().map((text) => text.split('\n')[0]);

describe('the one message of a class', () => {
  test('is posted once and changed at each moment, with what the last minutes need', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.givePlan('late', thursday, 'approved');
    await studio.walkTo('2026-10-15T16:30:00.000Z');
    expect(countdowns()).toEqual([
      [
        'Thursday Lift, 18:30, in 60 min: <@U1>, Hall, 14 people',
        'Lay out for 14: 28 dumbbells, 14 mats',
        'First: circuit, push-up → dumbbell shoulder press → goblet squat → dead bug',
      ].join('\n'),
    ]);
    await studio.walkTo('2026-10-15T17:15:00.000Z');
    expect(countdowns()).toEqual([
      [
        'Thursday Lift, 18:30, in 15 min: <@U1>, Hall, 14 people',
        'Lay out for 14: 28 dumbbells, 14 mats',
        'May stay out for Late Lift, 19:30: 20 dumbbells, 10 mats',
        'First: circuit, push-up → dumbbell shoulder press → goblet squat → dead bug',
        'Emergency card, Hall: Phone by the door, gate 2.',
      ].join('\n'),
    ]);
    await studio.walkTo('2026-10-15T17:30:00.000Z');
    expect(firstLine()).toEqual(['Thursday Lift, 18:30, on now: <@U1>, Hall, 14 people']);
    expect(studio.workspace.callsOf('chat.update')).toHaveLength(3);
  });

  test('says the time that is really left where it is late, and then keeps still', async () => {
    studio = await createTimetableStudio(noon);
    await studio.at('2026-10-15T16:52:10.000Z');
    expect(firstLine()).toEqual(['Thursday Lift, 18:30, in 38 min: <@U1>, Hall, 14 people']);
    await studio.at('2026-10-15T16:58:00.000Z');
    expect(firstLine()).toEqual(['Thursday Lift, 18:30, in 38 min: <@U1>, Hall, 14 people']);
    expect(studio.workspace.callsOf('chat.update')).toEqual([]);
  });

  test('says so when the class is cancelled, and nothing more is due; on again, it counts on', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T16:40:00.000Z');
    await studio.say(mira, 'cancel Thu 18:30');
    expect(countdowns()).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: cancelled.']);
    const posts = studio.workspace.posts.length;
    await studio.walkTo('2026-10-15T17:20:00.000Z');
    expect(countdowns()).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: cancelled.']);
    expect(studio.workspace.posts.length).toBe(posts);
    await studio.say(mira, 'on again Thu');
    expect(firstLine()).toEqual(['Thursday Lift, 18:30, in 10 min: <@U1>, Hall, 14 people']);
  });

  test('of a moved class says where it went; the new one has a message of its own', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T16:40:00.000Z');
    await studio.say(coach, 'move Thu 18:30 to Fri 12:00');
    expect(countdowns()).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: moved to Fri 16 Oct, 12:00.']);
    await studio.walkTo('2026-10-16T10:10:00.000Z');
    expect(firstLine()).toEqual([
      'Thursday Lift, Thu 15 Oct, 18:30: moved to Fri 16 Oct, 12:00.',
      'Thursday Lift, 12:00, in 60 min: <@U1>, Hall, 14 people',
    ]);
  });

  test('follows a plan that is approved, and one that is changed', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'draft');
    await studio.walkTo('2026-10-15T16:30:00.000Z');
    expect(countdowns()[0]).toContain('Plan in change.');
    const inThread = { thread_ts: homeThread('thu', thursday) };
    await studio.say(mira, 'send', inThread);
    await studio.at('2026-10-15T16:35:00.000Z');
    await studio.say(coach, 'approve', { ...inThread, channel: 'D1' });
    expect(countdowns()[0]).toContain('Lay out for 14: 28 dumbbells');
    expect(countdowns()[0]).toContain('in 55 min');
    await studio.say(mira, 'swap B push-up', inThread);
    expect(countdowns()).toHaveLength(1);
    expect(countdowns()[0]).toContain('Plan in change: shown is the last approved one.');
  });

  test('has posts of its own at each moment where a studio asks for them', async () => {
    studio = await createTimetableStudio(noon, { ...studioSettings, countdownPosts: true });
    await studio.walkTo('2026-10-15T17:30:00.000Z');
    expect(firstLine().map((line) => line?.split(': ')[0])).toEqual([
      'Thursday Lift, 18:30, on now',
      'Thursday Lift, 18:30, in 15 min',
      'Thursday Lift, 18:30, in 5 min',
      'Thursday Lift, 18:30, on now',
    ]);
  });
});

describe('after a stop', () => {
  test('what came too late to help is told to the coach in one message, the rest at once', async () => {
    studio = await createTimetableStudio('2026-10-15T08:00:00.000Z');
    await studio.at('2026-10-15T08:30:00.000Z');
    await studio.at('2026-10-15T18:20:00.000Z');
    expect(firstLine()).toEqual([]);
    expect(studio.texts(teamChannel)).toEqual([expect.stringContaining('Late Lift, 19:30, in 10 min')]);
    expect(studio.texts('D9')).toEqual([
      expect.stringContaining('<@U2> has not said'),
      [
        'I was stopped from Thu 15 Oct, 09:00 to Thu 15 Oct, 19:20. What I did not post in that time, because it came too late to help:',
        '• *Thursday Lift*, Thu 15 Oct, 18:30: countdown, I’m in',
      ].join('\n'),
    ]);
    await studio.at('2026-10-15T18:21:00.000Z');
    expect(studio.texts('D9')).toHaveLength(2);
  });

  test('an overdue notice is posted within five seconds of the start', async () => {
    const first = await createTimetableStudio(noon);
    const { storage } = first;
    await first.stop();
    nock.cleanAll();
    const started = performance.now();
    studio = await createTimetableStudio('2026-10-15T16:44:00.000Z', studioSettings, storage);
    await expect
      .poll(() => studio.last(teamChannel)?.text, { timeout: 5_000 })
      .toContain('Thursday Lift, 18:30, in 46 min');
    expect(performance.now() - started).toBeLessThan(5_000);
  });
});
