import { afterEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import { coach, createTimetableStudio, mira, teamChannel } from './timetable-studio.ts';

const noon = '2026-10-15T11:00:00.000Z';
const thursday = '2026-10-15';
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const standing = (start: string) =>
  studio.workspace.posts.filter(({ key }) => key?.startsWith(start)).map(({ text }) => text);
const classOf = (id: string) => studio.storage.classes.find('T1', id);
const offer = async (by: string) => {
  await studio.say(by, 'can’t teach today');
  await studio.tap(by, actions.cannotTeach, studio.valueOf(`D${by.slice(1)}`, actions.cannotTeach));
};

describe('the message of a class', () => {
  test('says at its end that it is over, and no more of lay-out and kit', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.walkTo('2026-10-15T17:40:00.000Z');
    expect(standing('countdown:thu')[0]).toContain('on now');
    await studio.walkTo('2026-10-15T18:20:00.000Z');
    expect(standing('countdown:thu')).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: over.']);
  });

  test('says so too after a stop of days, once, and is posted for no class that had none', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:40:00.000Z');
    await studio.at('2026-10-18T09:00:00.000Z');
    expect(standing('countdown:')).toEqual([
      'Thursday Lift, Thu 15 Oct, 18:30: over.',
      'Late Lift, Thu 15 Oct, 19:30: over.',
    ]);
    const calls = studio.workspace.calls.length;
    await studio.at('2026-10-18T09:05:00.000Z');
    expect(studio.workspace.calls.length).toBe(calls);
  });

  test('says of a class that was not taught that it did not take place', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:40:00.000Z');
    await studio.tap(mira, actions.notTaught, `thu:${thursday}`);
    await studio.walkTo('2026-10-15T18:20:00.000Z');
    expect(standing('countdown:thu')).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: did not take place.']);
  });
});

describe('a class whose cover nobody took', () => {
  test('can’t be taken once it has begun', async () => {
    studio = await createTimetableStudio(noon);
    await offer(mira);
    const value = studio.valueOf(teamChannel, actions.takeClass);
    await studio.walkTo('2026-10-15T17:30:00.000Z');
    const [post] = studio.workspace.posts.filter(({ key }) => key?.startsWith('cover:thu'));
    expect(post?.text).toBe('*Thursday Lift*, Thu 15 Oct, 18:30: nobody took it.');
    expect(JSON.stringify(post?.blocks)).not.toContain(actions.takeClass);
    await studio.tap('U3', actions.takeClass, value);
    expect(await classOf('thu:2026-10-15')).toMatchObject({ instructorId: mira, coverOpen: true });
  });

  test('is not assumed taught: the coach is asked, and it counts once that is said', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await offer(mira);
    await studio.walkTo('2026-10-16T09:00:00.000Z');
    const loads = () =>
      studio.storage.classes.listLoadBetween('T1', '2026-10-15T00:00:00.000Z', '2026-10-15T18:20:00.000Z');
    expect((await classOf('thu:2026-10-15'))?.outcome).toBeUndefined();
    expect(await loads()).toEqual([]);
    expect(standing('countdown:thu')).toEqual(['Thursday Lift, Thu 15 Oct, 18:30: over. Cover stayed open.']);
    expect(studio.texts('D1').join('\n')).not.toContain('Did it take place?');
    expect(studio.texts('D1').join('\n')).not.toContain('how did it go?');
    expect(studio.last('D9')?.text).toContain(
      '*Thursday Lift*, Thu 15 Oct, 18:30: cover stayed open. Did it take place?',
    );
    await studio.tap(coach, actions.taughtAsPlanned, `thu:${thursday}`);
    expect(await loads()).toHaveLength(1);
    expect(studio.last('D9')?.text).toMatch(/Did it take place\? Taught as planned\.?$/);
  });

  test('is answered for by a coach where its instructor is forgotten', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', thursday, 'approved');
    await studio.storage.care.forgetPerson('T1', mira, [], noon);
    await studio.walkTo('2026-10-16T09:00:00.000Z');
    await studio.tap(coach, actions.taughtAsPlanned, `thu:${thursday}`);
    const asked = studio.workspace.posts.find(({ key }) => key === `after:thu:${thursday}`);
    expect(asked).toMatchObject({ channel: 'D9' });
    expect(asked?.text).toMatch(/Did it take place\? Taught as planned\.?$/);
  });
});

test('the list of a day stays right until the day is over, and stands as it is afterwards', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z');
  await studio.givePlan('thu', thursday, 'approved');
  await studio.givePlan('late', thursday, 'draft');
  await studio.walkTo('2026-10-14T18:00:00.000Z');
  const list = () => standing('digest:2026-10-15')[0];
  const evening = list();
  expect(evening).toContain('19:30 *Late Lift*');
  expect(evening).not.toContain('No plan yet');
  for (const instant of [
    '2026-10-15T22:00:00.000Z',
    '2026-10-16T09:00:00.000Z',
    '2026-10-19T09:00:00.000Z',
  ]) {
    await studio.walkTo(instant);
    expect(list(), instant).toBe(evening);
  }
});
