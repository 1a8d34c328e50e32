import { afterEach, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { actions, views } from '../../../bot/ids.ts';
import { acceptHome, acceptMessageBlocks, acceptModal } from '../../../bot/local/accepted-blocks.ts';
import { actionPayload, eventPayload, viewPayload } from '../../helpers/payloads.ts';
import { unshownKinds } from '../../helpers/unshown-kinds.ts';
import { coach, createTimetableStudio, ines, mira, studioSettings, teamChannel } from './timetable-studio.ts';

const noon = '2026-10-15T11:00:00.000Z';
const settings = {
  ...studioSettings,
  rooms: [...studioSettings.rooms, { name: 'Loft', kit: {}, doorSeconds: 0, clearUpSeconds: 0 }],
};
type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const shownView = z.object({
  callback_id: z.string().default(''),
  private_metadata: z.string().default(''),
  blocks: z.array(z.looseObject({ type: z.string() })),
});
const classOf = (id: string) => studio.storage.classes.find('T1', id);
/** What someone was told directly, without the words that come with the first look at a home. */
const toldTo = (place: string) => studio.texts(place).filter((text) => !text.includes('*What Evenset keeps'));
const by = (personId: string) => ({ user: { id: personId, team_id: 'T1' } });

/** The newest view that was opened or put on a home. */
function viewBy(method: 'views.open' | 'views.publish') {
  const json: unknown = JSON.parse(
    studio.workspace.calls.findLast((call) => call.method === method)?.args.view ?? '{"blocks":[]}',
  );
  const accepted = method === 'views.open' ? acceptModal(json) : acceptHome(json);
  expect(accepted).toMatchObject({ kind: 'accepted' });
  expect(unshownKinds(json)).toEqual([]);
  return shownView.parse(json);
}

/** What can be read in blocks, a line each. */
const linesIn = (blocks: readonly unknown[]) =>
  [...JSON.stringify(blocks).matchAll(/"type":"(?:mrkdwn|plain_text)","text":"((?:[^"\\]|\\.)*)"/g)].flatMap(
    ([, text]) => (text ?? '').split('\\n'),
  );

async function openHome(personId: string) {
  await studio.send(eventPayload({ type: 'app_home_opened', user: personId, tab: 'home' }));
  await studio.settle();
  return viewBy('views.publish');
}

/** Values of the elements of an action, in their order. */
const valuesOf = (blocks: readonly unknown[], actionId: string): readonly string[] => {
  const found: string[] = [];
  JSON.stringify(blocks, (_, value) => {
    if (typeof value?.action_id === 'string' && value.action_id.split(':')[0] === actionId)
      found.push(...(value.options?.map((each: { value: string }) => each.value) ?? [value.value]));
    return value;
  });
  return found;
};

async function tapAtHome(personId: string, actionId: string, value: string) {
  const noMessage = {
    channel: undefined,
    message: undefined,
    response_url: undefined,
    container: { type: 'view', view_id: 'VH' },
  };
  await studio.send(actionPayload(actionId, value, { ...by(personId), ...noMessage }));
  await studio.settle();
}

type Filled = { what?: string; date?: string; time?: string; room?: string };
type Ack = {
  readonly response_action?: string;
  readonly errors?: Readonly<Record<string, string>>;
  readonly view?: unknown;
};

/** Hands in a form; the ack says what stands in its place. */
async function submit(personId: string, callbackId: string, metadata: string, filled: Filled = {}) {
  const { what, date, time, room } = filled;
  const option = (value: string) => ({ selected_option: { value } });
  const values = {
    ...(what === undefined ? {} : { what: { what: option(what) } }),
    ...(date === undefined ? {} : { date: { date: { selected_date: date } } }),
    ...(time === undefined ? {} : { time: { time: { selected_time: time } } }),
    ...(room === undefined ? {} : { room: { room: option(room) } }),
  };
  const view = {
    id: 'V1',
    hash: 'h',
    callback_id: callbackId,
    private_metadata: metadata,
    state: { values },
    app_installed_team_id: 'T1',
  };
  const { acks } = await studio.send(viewPayload(callbackId, {}, { ...by(personId), view }));
  await studio.settle();
  const ack: Ack = z
    .object({
      response_action: z.string(),
      errors: z.record(z.string(), z.string()).exactOptional(),
      view: z.unknown().exactOptional(),
    })
    .parse(acks[0]);
  if (ack.view === undefined) return { errors: ack.errors ?? {}, lines: [], metadata: '' };
  expect(acceptModal(ack.view)).toMatchObject({ kind: 'accepted' });
  const next = shownView.parse(ack.view);
  return { errors: {}, lines: linesIn(next.blocks), metadata: next.private_metadata };
}

/** From the person's own home to the filled-in form's answer. */
async function fill(personId: string, filled: Filled, place = 0) {
  const { blocks } = await openHome(personId);
  await tapAtHome(personId, actions.openChangeClass, valuesOf(blocks, actions.openChangeClass)[place] ?? '');
  return submit(personId, views.changeClass, viewBy('views.open').private_metadata, filled);
}

const confirm = (personId: string, metadata: string) => submit(personId, views.confirmChange, metadata);

describe('a class moved or cancelled by form', () => {
  test('from its line on the home: what is said to whom comes first, then it is done', async () => {
    studio = await createTimetableStudio(noon, settings);
    await studio.walkTo('2026-10-15T16:35:00.000Z');
    const shown = await fill(mira, { what: 'move', date: '2026-10-16', time: '10:00', room: 'Loft' });
    expect(shown.lines.filter((line) => /^[*•]/.test(line))).toEqual([
      '*Thursday Lift*, Thu 15 Oct, 18:30, moves to Fri 16 Oct, 10:00, in Loft.',
      '• <#C1>: its countdown says where it went; a new one comes before it.',
      '• <@U9>: a message that you moved it.',
    ]);
    expect(await classOf('thu:2026-10-15')).toBeUndefined();
    const done = await confirm(mira, shown.metadata);
    expect(done.lines).toContain('*Thursday Lift*, Thu 15 Oct, 18:30, moves to Fri 16 Oct, 10:00, in Loft.');
    expect(await classOf('thu:2026-10-15')).toMatchObject({
      state: 'moved',
      room: 'Loft',
      startsAt: { date: '2026-10-16', time: '10:00' },
    });
    expect(studio.texts(teamChannel)[0]).toContain('Fri 16 Oct, 10:00');
    expect(toldTo('D9')).toEqual([
      '<@U1> moved *Thursday Lift*, Thu 15 Oct, 18:30, to Fri 16 Oct, 10:00, in Loft.',
    ]);
    expect(linesIn(viewBy('views.publish').blocks).join('\n')).toContain('Fri 16 Oct, 10:00');
  });

  test('to another room at the same time', async () => {
    studio = await createTimetableStudio(noon, settings);
    const shown = await fill(mira, { what: 'move', date: '2026-10-15', time: '18:30', room: 'Loft' });
    const done = await confirm(mira, shown.metadata);
    expect(done.lines).toContain('*Thursday Lift*, Thu 15 Oct, 18:30, is in Loft from now on.');
    expect(await classOf('thu:2026-10-15')).toMatchObject({ state: 'planned', room: 'Loft' });
    expect(toldTo('D9')).toEqual(['<@U1> moved *Thursday Lift*, Thu 15 Oct, 18:30, to Loft.']);
    await studio.walkTo('2026-10-15T16:35:00.000Z');
    expect(studio.texts(teamChannel)[0]).toContain('Loft');
  });

  test('tells the clash of the new time before and after', async () => {
    studio = await createTimetableStudio(noon, settings);
    const clash = 'Clash: the room is taken by *Late Lift*, Thu 15 Oct, 19:30.';
    const shown = await fill(mira, { what: 'move', date: '2026-10-15', time: '19:30' });
    expect(shown.lines).toContain(clash);
    expect((await confirm(mira, shown.metadata)).lines).toContain(clash);
  });

  test('cancelled once however often it is confirmed, then put on again from the same place', async () => {
    studio = await createTimetableStudio(noon, settings);
    await studio.walkTo('2026-10-15T16:35:00.000Z');
    const shown = await fill(mira, { what: 'cancel' });
    expect(shown.lines).toContain('• <#C1>: its countdown says that it is cancelled.');
    await confirm(mira, shown.metadata);
    await confirm(mira, shown.metadata);
    expect(await classOf('thu:2026-10-15')).toMatchObject({ state: 'cancelled' });
    expect(toldTo('D9')).toEqual(['<@U1> cancelled *Thursday Lift*, Thu 15 Oct, 18:30.']);
    const { blocks } = await openHome(mira);
    await tapAtHome(mira, actions.openChangeClass, valuesOf(blocks, actions.openChangeClass)[0] ?? '');
    const again = viewBy('views.open');
    expect(again.callback_id).toBe(views.confirmChange);
    expect(linesIn(again.blocks)).toContain('• <#C1>: its countdown goes on.');
    await confirm(mira, again.private_metadata);
    expect(await classOf('thu:2026-10-15')).toMatchObject({ state: 'planned' });
  });

  test('a head coach chooses any class; its instructor is told', async () => {
    studio = await createTimetableStudio(noon, settings);
    const { blocks } = await openHome(coach);
    const others = valuesOf(blocks, actions.chooseOtherClass);
    expect(others.slice(0, 3)).toEqual(['thu:2026-10-15', 'late:2026-10-15', 'mon:2026-10-19']);
    await tapAtHome(coach, actions.chooseOtherClass, 'late:2026-10-15');
    const { private_metadata } = viewBy('views.open');
    const shown = await submit(coach, views.changeClass, private_metadata, { what: 'cancel' });
    expect(shown.lines).toContain('• <@U2>: a message that you cancelled it.');
    await confirm(coach, shown.metadata);
    expect(toldTo('D2')).toEqual(['<@U9> cancelled *Late Lift*, Thu 15 Oct, 19:30.']);
    expect(toldTo('D9')).toEqual([]);
    expect(valuesOf((await openHome(mira)).blocks, actions.chooseOtherClass)).toEqual([]);
  });

  test('what can’t be is said at its field and changes nothing', async () => {
    studio = await createTimetableStudio(noon, settings);
    const wrong = async (filled: Filled) => (await fill(mira, { what: 'move', ...filled })).errors;
    expect(await wrong({ time: '10:00' })).toEqual({ date: 'Pick a day.' });
    expect(await wrong({ date: '2026-10-16' })).toEqual({ time: 'Pick a start time.' });
    expect(await wrong({ date: '2026-10-14', time: '10:00' })).toEqual({
      date: 'That moment has passed. Pick a later day or time.',
    });
    expect(await wrong({ date: '2026-10-15', time: '18:30', room: 'Hall' })).toEqual({
      date: 'It is at that time and in that room already.',
    });
    expect(await classOf('thu:2026-10-15')).toBeUndefined();
  });

  test('only by its instructor and head coaches, and only as it stood when the form was made', async () => {
    studio = await createTimetableStudio(noon, settings);
    const { blocks } = await openHome(mira);
    const value = valuesOf(blocks, actions.openChangeClass)[0] ?? '';
    await tapAtHome(ines, actions.openChangeClass, value);
    expect(toldTo('D2')).toEqual(['Only the instructor of the class or a head coach can do that.']);
    await tapAtHome(ines, actions.chooseOtherClass, 'thu:2026-10-15');
    expect(toldTo('D2')).toHaveLength(2);
    expect((await submit(ines, views.changeClass, value, { what: 'cancel' })).errors).toEqual({
      what: 'Only the instructor of the class or a head coach can do that.',
    });
    const shown = await fill(mira, { what: 'cancel' });
    const theirs = await confirm(ines, shown.metadata);
    expect(theirs.lines).toContain('Only the instructor of the class or a head coach can do that.');
    await studio.say(mira, 'move Thu 18:30 to Fri 10:00');
    const late = await confirm(mira, shown.metadata);
    expect(late.lines).toContain('That class is over or stands otherwise by now. Nothing was changed.');
    expect(await classOf('thu:2026-10-15')).toMatchObject({ state: 'moved' });
  });

  test.each([
    '',
    '{}',
    '["thu:2026-10-15"]',
    JSON.stringify({ classId: 'nowhere', startsAt: '2026-10-15T17:30:00.000Z', change: { kind: 'cancel' } }),
    JSON.stringify({
      classId: 'thu:2026-10-15',
      startsAt: '2026-10-15T17:30:00.000Z',
      change: { kind: 'drop' },
    }),
    JSON.stringify({
      classId: 'thu:2026-10-15',
      startsAt: '2026-10-15T17:30:00.000Z',
      change: { kind: 'move', startsAt: { date: '2026-02-30', time: '10:00' } },
    }),
  ])('forged forms change nothing and are told: %s', async (metadata) => {
    studio = await createTimetableStudio(noon, settings);
    expect((await confirm(mira, metadata)).lines.join()).toContain('out of date');
    expect((await submit(mira, views.changeClass, metadata, { what: 'cancel' })).errors).toMatchObject({
      what: expect.stringContaining('out of date'),
    });
    await tapAtHome(mira, actions.chooseOtherClass, 'nowhere');
    expect(toldTo('D1').at(-1)).toContain('out of date');
    expect(await classOf('thu:2026-10-15')).toBeUndefined();
  });

  test('move without a time offers the form, and so does a class that was taken over', async () => {
    studio = await createTimetableStudio(noon, settings);
    await studio.say(mira, 'move Thu 18:30');
    expect(acceptMessageBlocks(studio.last('D1')?.blocks)).toMatchObject({ kind: 'accepted' });
    await studio.tap(mira, actions.openChangeClass, studio.valueOf('D1', actions.openChangeClass));
    expect(viewBy('views.open').callback_id).toBe(views.changeClass);
    await studio.say(coach, 'give Thu 18:30 to <@U3>');
    await studio.tap('U3', actions.openChangeClass, studio.valueOf('D3', actions.openChangeClass));
    expect(studio.workspace.calls.filter(({ method }) => method === 'views.open')).toHaveLength(2);
  });
});

test('a holiday tells each instructor of their own classes', async () => {
  studio = await createTimetableStudio(noon, settings);
  await studio.say(coach, 'holiday 2026-12-24');
  expect(toldTo('D1')).toEqual([
    'Cancelled from Thu 24 Dec to Thu 24 Dec:\n• *Thursday Lift*, Thu 24 Dec, 18:30',
  ]);
  expect(toldTo('D2')).toEqual([
    'Cancelled from Thu 24 Dec to Thu 24 Dec:\n• *Late Lift*, Thu 24 Dec, 19:30',
  ]);
});
