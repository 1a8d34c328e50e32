import { afterEach, describe, expect, test } from 'vitest';
import { actions } from '../../../bot/ids.ts';
import { coach, createTimetableStudio, ines, mira, studioSettings, teamChannel } from './timetable-studio.ts';

const noon = '2026-10-15T11:00:00.000Z';
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const classOf = (id: string) => studio.storage.classes.find('T1', id);

/** Says it and confirms it with the button of the newest question. */
async function offer(by: string, words: string): Promise<void> {
  await studio.say(by, words);
  await studio.tap(by, actions.cannotTeach, studio.valueOf(`D${by.slice(1)}`, actions.cannotTeach));
}

describe('cover', () => {
  const tom = 'U3';

  test('is asked about first, and offered by a tap; taken back, the team reads who teaches', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, 'can’t teach Thu 18:30');
    expect(studio.last('D1')?.text).toBe(
      'Offer *Thursday Lift*, Thu 15 Oct, 18:30, to the team? <#C1> then reads that <@U1> can’t teach it, and no reason.',
    );
    expect(studio.texts(teamChannel)).toEqual([]);
    await studio.tap(mira, actions.cannotTeach, studio.valueOf('D1', actions.cannotTeach));
    expect(studio.texts(teamChannel)).toEqual([
      '<@U1> can’t teach *Thursday Lift*, Thu 15 Oct, 18:30. Who takes it?\nHall, 14 people, no plan yet, three house classes are ready',
    ]);
    const value = JSON.stringify(['thu:2026-10-15', '2026-10-15T17:30:00.000Z']);
    await studio.tap(tom, actions.takeBackOffer, value);
    expect(studio.workspace.told.at(-1)?.text).toContain('Only the instructor');
    await studio.tap(mira, actions.takeBackOffer, value);
    expect(await classOf('thu:2026-10-15')).not.toHaveProperty('coverOpen');
    expect(studio.last(teamChannel)).toMatchObject({
      text: '<@U1> teaches *Thursday Lift*, Thu 15 Oct, 18:30, after all.',
    });
    expect(JSON.stringify(studio.last(teamChannel)?.blocks)).not.toContain(actions.takeClass);
    expect(studio.last('D9')?.text).toBe('<@U1> teaches *Thursday Lift*, Thu 15 Oct, 18:30, after all.');
    await studio.tap(tom, actions.takeClass, value);
    expect(await classOf('thu:2026-10-15')).toMatchObject({ instructorId: mira });
  });

  test('of a day that may be two is asked with a button for each, and offers none of them by itself', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, 'can’t teach Thu');
    expect(studio.last('D1')?.text).toContain('Which class can’t you teach?');
    const asked = JSON.stringify(studio.last('D1')?.blocks);
    expect(asked).toContain('Thu 15 Oct, 18:30 Thursday Lift');
    expect(asked).toContain('Thu 22 Oct, 18:30 Thursday Lift');
    expect(studio.texts(teamChannel)).toEqual([]);
    await studio.say(mira, 'can’t teach next Thu');
    expect(studio.last('D1')?.text).toContain('Offer *Thursday Lift*, Thu 22 Oct, 18:30, to the team?');
    await studio.say(mira, 'can’t teach Mon 19 Oct, 18:30');
    expect(studio.last('D1')?.text).toContain('Offer *Monday Lift*, Mon 19 Oct, 18:30, to the team?');
  });

  test('is offered to the team without a reason; the first to take it gets plan, timeline and countdown', async () => {
    studio = await createTimetableStudio(noon);
    await studio.givePlan('thu', '2026-10-15', 'approved');
    await studio.walkTo('2026-10-15T16:35:00.000Z');
    await offer(mira, 'I can’t teach Thursday 18:30');
    expect(studio.last(teamChannel)?.text).toBe(
      '<@U1> can’t teach *Thursday Lift*, Thu 15 Oct, 18:30. Who takes it?\nHall, 14 people, its plan comes with it',
    );
    expect(studio.texts(teamChannel)[0]).toContain('cover open');
    expect(studio.texts('D9')).toEqual([
      '<@U1> can’t teach *Thursday Lift*, Thu 15 Oct, 18:30. It is offered to the team.',
    ]);
    const value = studio.valueOf(teamChannel, actions.takeClass);
    await studio.tap(tom, actions.takeClass, value);
    await studio.tap(ines, actions.takeClass, value);
    expect(studio.last(teamChannel)?.text).toBe(
      '<@U3> takes *Thursday Lift*, Thu 15 Oct, 18:30, from <@U1>.',
    );
    expect(await classOf('thu:2026-10-15')).toMatchObject({ instructorId: tom });
    expect(await classOf('thu:2026-10-15')).not.toHaveProperty('coverOpen');
    expect(studio.texts('D9').at(-1)).toBe('<@U3> teaches *Thursday Lift*, Thu 15 Oct, 18:30.');
    const [handedOver, timeline] = studio.workspace.posts.filter(({ channel }) => channel === 'D3');
    expect(handedOver?.text).toContain('Lay out for 14: 28 dumbbells, 14 mats');
    expect(handedOver?.text).toContain('dumbbell shoulder press');
    expect(timeline).toMatchObject({ thread: handedOver?.ts });
    expect(studio.texts(teamChannel)[0]).toContain('<@U3>, Hall');
    await studio.walkTo('2026-10-15T17:10:00.000Z');
    expect(studio.last('D3')?.text).toContain('Are you in?');
    expect(studio.texts('D1').join()).not.toContain('Are you in?');
  });

  test('taken back in the last minutes asks its instructor again whether they are in', async () => {
    studio = await createTimetableStudio(noon);
    await studio.walkTo('2026-10-15T17:11:00.000Z');
    const asked = () => studio.workspace.posts.find(({ key }) => key?.startsWith('in:thu'));
    const buttons = () => JSON.stringify(asked()?.blocks);
    await studio.tap(mira, actions.cannotTeach, studio.valueOf('D1', actions.imIn));
    expect(buttons()).not.toContain(actions.imIn);
    await studio.say(mira, 'can’t teach Thu 18:30');
    await studio.tap(mira, actions.takeBackOffer, studio.valueOf('D1', actions.takeBackOffer));
    expect(asked()?.text).toContain('Are you in?');
    await studio.tap(mira, actions.imIn, studio.valueOf('D1', actions.imIn));
    expect(await classOf('thu:2026-10-15')).toMatchObject({ confirmed: { by: mira } });
  });

  test('taken once more by who had it brings their message up to date', async () => {
    studio = await createTimetableStudio(noon);
    for (const by of [tom, mira]) {
      await studio.say('U9', `give Thu 18:30 to <@${by}>`);
    }
    await studio.givePlan('thu', '2026-10-15', 'approved');
    await studio.say('U9', `give Thu 18:30 to <@${tom}>`);
    const handedOver = studio.workspace.posts.filter(({ key }) => key?.startsWith('taken:thu'));
    expect(handedOver.find(({ channel }) => channel === 'D3')?.text).toContain('dumbbell shoulder press');
  });

  test('of a class without a plan comes with three house classes, each one tap from being the draft', async () => {
    studio = await createTimetableStudio(noon);
    await offer(mira, 'can’t teach today');
    await studio.tap(tom, actions.takeClass, studio.valueOf(teamChannel, actions.takeClass));
    expect(studio.last('D3')?.text).toContain('These are ready');
    await studio.tap(tom, actions.houseClass, studio.valueOf('D3', actions.houseClass));
    const handedOver = studio.workspace.posts.find(({ channel }) => channel === 'D3');
    expect(handedOver?.text).not.toContain('These are ready');
    expect(JSON.stringify(handedOver?.blocks)).not.toContain(actions.houseClass);
    expect(studio.texts('D3').join('\n')).toContain('House');
    const taken = await classOf('thu:2026-10-15');
    expect(taken).toMatchObject({ instructorId: tom, planId: expect.any(String), people: 14, room: 'Hall' });
    expect(await studio.storage.plans.find('T1', taken?.planId ?? '')).toMatchObject({
      authorId: tom,
      state: 'draft',
    });
  });

  test('taken by someone who teaches then tells the clash; one who is nobody’s instructor cannot offer', async () => {
    const slots = studioSettings.slots.map((slot) =>
      slot.id === 'late' ? { ...slot, time: '19:00' } : slot,
    );
    studio = await createTimetableStudio(noon, { ...studioSettings, slots });
    await studio.say(ines, 'can’t teach Thu 18:30');
    expect(studio.last('D2')?.text).toContain('I found no class');
    await offer(mira, 'can’t teach today');
    await studio.tap(ines, actions.takeClass, studio.valueOf(teamChannel, actions.takeClass));
    expect(studio.workspace.told.at(-1)?.text).toContain(
      'Clash: you also teach *Late Lift*, Thu 15 Oct, 19:00.',
    );
  });

  test('may be given to one person by the coach, who is not asked for a reason either', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(ines, 'give Thu 18:30 to <@U3>');
    expect(studio.last('D2')?.text).toContain('I found no class');
    await studio.say(coach, 'give Thu 18:30 to <@U3>');
    expect(await classOf('thu:2026-10-15')).toMatchObject({ instructorId: tom });
    expect(studio.last('D9')?.text).toBe('<@U3> teaches *Thursday Lift*, Thu 15 Oct, 18:30.');
    expect(studio.last('D1')?.text).toBe('<@U3> teaches *Thursday Lift*, Thu 15 Oct, 18:30.');
    expect(studio.texts('D3')).toEqual([expect.stringContaining('You teach *Thursday Lift*')]);
    expect(studio.texts(teamChannel)).toEqual([]);
  });

  test('is closed when the class is cancelled, and offered anew at the time it moves to', async () => {
    studio = await createTimetableStudio(noon);
    await offer(mira, 'can’t teach today');
    await studio.say(coach, 'move Thu 18:30 to Fri 10:00');
    expect(studio.texts(teamChannel).map((text) => text.split('\n')[0])).toEqual([
      '*Thursday Lift*, Thu 15 Oct, 18:30, is at another time now: Fri 16 Oct, 10:00.',
      '<@U1> can’t teach *Thursday Lift*, Fri 16 Oct, 10:00. Who takes it?',
    ]);
    await studio.say(coach, 'cancel Fri 10:00');
    expect(studio.texts(teamChannel).at(-1)).toBe('*Thursday Lift*, Fri 16 Oct, 10:00, is cancelled.');
  });
});

describe('cancel and move', () => {
  test('tell what the new time clashes with, and the coach who did it', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, 'move Thu 18:30 to 19:30');
    expect(studio.last('D1')?.text).toBe(
      '*Thursday Lift*, Thu 15 Oct, 18:30, moves to Thu 15 Oct, 19:30.\nClash: the room is taken by *Late Lift*, Thu 15 Oct, 19:30.',
    );
    expect(studio.texts('D9')).toEqual([
      '<@U1> moved *Thursday Lift*, Thu 15 Oct, 18:30, to Thu 15 Oct, 19:30.',
    ]);
  });

  test('are for the instructor and head coaches', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(coach, 'cancel Thu');
    expect(studio.last('D9')?.text).toBe('Several classes fit. Which one?');
    const value = studio.valueOf('D9', actions.chooseClass);
    await studio.tap('U4', actions.chooseClass, value);
    expect(studio.workspace.told.at(-1)?.text).toContain('Only the instructor');
    await studio.tap(coach, actions.chooseClass, value);
    expect(studio.workspace.told.at(-1)?.text).toMatch(/is cancelled\.$/);
  });

  test('a plan’s later edit leaves a moved class where it is; a new day on its title line moves it', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(
      mira,
      'Push, 45 min, Thu 18:30\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end',
      { ts: '900.1' },
    );
    await studio.say(mira, 'move Thu 18:30 to Fri 10:00');
    await studio.say(mira, 'rounds A x4', { thread_ts: '900.1' });
    expect((await classOf('thu:2026-10-15'))?.startsAt).toMatchObject({ date: '2026-10-16', time: '10:00' });
    expect(studio.texts('D1').join('\n')).not.toContain('Clash');
  });

  test('a class drafted onto a taken room says so in its thread, once', async () => {
    studio = await createTimetableStudio(noon);
    const text =
      'Push, 45 min, Thu 19:30, Hall, 10 people\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end';
    await studio.say(mira, text, { ts: '900.1' });
    await studio.say(mira, 'rounds A x4', { thread_ts: '900.1' });
    const clashes = studio.workspace.posts.filter(({ text: said }) => said.startsWith('Clash'));
    expect(clashes).toMatchObject([
      { thread: '900.1', text: 'Clash: the room is taken by *Late Lift*, Thu 15 Oct, 19:30.' },
    ]);
  });

  test('a holiday week cancels each class in it and no other; a head coach’s word alone', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, 'holiday 2026-12-21 to 2026-12-27');
    expect(studio.last('D1')?.text).toBe('Only a head coach can do that.');
    await studio.say(coach, 'holiday 2026-12-21 to 2026-12-27');
    expect(studio.last('D9')?.text.split('\n')).toEqual([
      'Cancelled from Mon 21 Dec to Sun 27 Dec:',
      '• *Monday Lift*, Mon 21 Dec, 18:30',
      '• *Thursday Lift*, Thu 24 Dec, 18:30',
      '• *Late Lift*, Thu 24 Dec, 19:30',
    ]);
    expect((await classOf('thu:2026-12-24'))?.state).toBe('cancelled');
    expect(await classOf('mon:2026-12-28')).toBeUndefined();
  });
});

describe('forged and outdated buttons', () => {
  const instant = '2026-10-15T17:30:00.000Z';

  test.each([
    ['no JSON', 'thu:2026-10-15'],
    ['no class', JSON.stringify(['nowhere', instant])],
    ['an impossible date', JSON.stringify(['thu:2026-02-30', instant])],
    ['another start', JSON.stringify(['thu:2026-10-15', '2026-10-15T18:30:00.000Z'])],
    ['a class that is not offered', JSON.stringify(['thu:2026-10-15', instant])],
    ['words that are no request', JSON.stringify(['thu:2026-10-15', instant, 'drop table'])],
  ])('%s changes nothing and is told', async (_, value) => {
    studio = await createTimetableStudio(noon);
    for (const action of [actions.takeClass, actions.chooseClass, actions.houseClass, actions.imIn]) {
      const told = studio.workspace.told.length;
      await studio.tap('U4', action, value);
      expect(studio.workspace.told.length, action).toBe(told + 1);
    }
    expect(await classOf('thu:2026-10-15')).toBeUndefined();
    expect(studio.workspace.told.map(({ text }) => text).join()).not.toContain('went wrong');
  });
});

describe('a plan whose class was cancelled', () => {
  const text =
    'Push, 45 min, Thu 18:30, Hall, 14 people\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end';
  const card = () =>
    JSON.stringify(studio.workspace.posts.find(({ key }) => key?.startsWith('card:'))?.blocks);
  const classes = async () => {
    const [plan] = await studio.storage.plans.listByAuthor('T1', mira, 1);
    return (await studio.storage.classes.findByPlan('T1', plan?.id ?? '')).map(
      ({ startsAt, state }) => `${startsAt.date} ${startsAt.time} ${state}`,
    );
  };

  test('is edited without a class coming back; a new day on its title line is a new class', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, text, { ts: '900.1' });
    const planned = card();
    await studio.say(mira, 'cancel Thu 18:30');
    expect(card()).not.toBe(planned);
    await studio.say(mira, 'rounds A x4', { thread_ts: '900.1' });
    await studio.say(mira, '18 now', { thread_ts: '900.1' });
    expect(await classes()).toEqual(['2026-10-15 18:30 cancelled']);
    await studio.say(mira, text.replace('Thu 18:30', 'Fri 10:00'), { thread_ts: '900.1' });
    expect(await classes()).toEqual(['2026-10-15 18:30 cancelled', '2026-10-16 10:00 planned']);
  });

  test('after it was moved, neither', async () => {
    studio = await createTimetableStudio(noon);
    await studio.say(mira, text, { ts: '900.1' });
    await studio.say(mira, 'move Thu 18:30 to Fri 10:00');
    await studio.say(mira, 'cancel Fri 10:00');
    await studio.say(mira, 'rounds A x4', { thread_ts: '900.1' });
    expect(await classes()).toEqual(['2026-10-16 10:00 cancelled']);
  });
});
