import { afterEach, describe, expect, test } from 'vitest';
import { isoWeekOf, weekAfter } from '../../../domain/calendar/iso-week.ts';
import { wallTimeOf } from '../../../domain/calendar/wall-time.ts';
import { createTimetableStudio, studioSettings, teamChannel } from './timetable-studio.ts';

type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

type Seen = { readonly wall: string; readonly what: string };

/** Walks a month and notes, at each stop, what was posted or changed there, by local time. */
async function walkMonth(zone: string, from: string, to: string): Promise<readonly Seen[]> {
  studio = await createTimetableStudio(from, { ...studioSettings, zone });
  const seen: Seen[] = [];
  let known = new Map<string, string>();
  await studio.walkTo(to, (now) => {
    const { date, time } = wallTimeOf(now, zone);
    const next = new Map(
      studio.workspace.posts
        .filter(({ channel, thread }) => channel === teamChannel && thread === undefined)
        .map(({ ts, text, key }) => [ts, `${key ?? ''} ${text.split('\n')[0] ?? ''}`]),
    );
    for (const [ts, text] of next)
      if (known.get(ts) !== text) seen.push({ wall: `${date} ${time}`, what: text });
    known = next;
  });
  return seen;
}

const zones = [
  // The clocks go back on 25 October 2026, at two.
  ['Europe/Lisbon', '2026-10-12T05:00:00.000Z', '2026-11-09T12:00:00.000Z', '2026-W42'],
  // They go back on 1 November 2026, and forward on 4 October 2026 in the south, by half an hour.
  ['America/New_York', '2026-10-12T10:00:00.000Z', '2026-11-09T17:00:00.000Z', '2026-W42'],
  ['Australia/Lord_Howe', '2026-09-20T20:00:00.000Z', '2026-10-18T22:30:00.000Z', '2026-W39'],
] as const;

describe.each(zones)('four weeks in %s', (zone, from, to, firstWeek) => {
  test('each countdown, evening list and report once, at its local time', async () => {
    const seen = await walkMonth(zone, from, to);
    const at = (pattern: RegExp) =>
      seen.filter(({ what }) => pattern.test(what)).map(({ wall }) => wall.slice(11));
    const dates = (pattern: RegExp) =>
      seen.filter(({ what }) => pattern.test(what)).map(({ wall }) => wall.slice(0, 10));
    const times = (count: number, time: string) => Array.from({ length: count }, () => time);

    for (const [name, count, ats] of [
      ['Monday Lift', 4, ['17:30', '18:15', '18:25', '18:30']],
      ['Thursday Lift', 4, ['17:30', '18:15', '18:25', '18:30']],
      ['Late Lift', 4, ['18:30', '19:15', '19:25', '19:30']],
    ] as const) {
      const [hour = '', quarter = '', five = '', start = ''] = ats;
      expect(at(new RegExp(`${name}.*in 60 min`)), name).toEqual(times(count, hour));
      expect(at(new RegExp(`${name}.*in 15 min`)), name).toEqual(times(count, quarter));
      expect(at(new RegExp(`${name}.*in 5 min`)), name).toEqual(times(count, five));
      expect(at(new RegExp(`${name}.*on now`)), name).toEqual(times(count, start));
      expect(new Set(dates(new RegExp(`${name}.*in 60 min`))).size).toBe(count);
    }
    // Four Thursdays and the four Mondays after the first, whose evening lies before the walk.
    expect(at(/^digest:/)).toEqual(times(8, '18:00'));
    expect(new Set(dates(/^digest:/)).size).toBe(8);

    const reports = seen.filter(({ what }) => what.startsWith('week:'));
    expect(reports.map(({ wall }) => wall.slice(11))).toEqual(times(5, '07:00'));
    const weeks = reports.map(({ what }) => /^week:(\d{4}-W\d{2}) /.exec(what)?.[1]);
    expect(weeks).toEqual([-1, 0, 1, 2, 3].map((offset) => weekAfter(firstWeek, offset)));
    expect(isoWeekOf(from, zone)).toBe(firstWeek);

    const keys = studio.workspace.posts.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(studio.texts('D9').filter((text) => text.startsWith('I was stopped'))).toEqual([]);
    const questions = studio.workspace.posts.filter(
      ({ channel, key }) => channel === 'D1' && key?.startsWith('in:'),
    );
    expect(questions).toHaveLength(8);
    expect(questions.filter(({ text }) => text.includes('Are you in'))).toEqual([]);
  }, 60_000);
});

test('a clock that jumps a day ahead and back repeats nothing and drops nothing', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z');
  await studio.at('2026-10-15T17:20:00.000Z');
  await studio.at('2026-10-14T11:01:00.000Z');
  await studio.walkTo('2026-10-15T17:30:00.000Z');
  const keys = studio.workspace.posts.filter(({ channel }) => channel === teamChannel).map(({ key }) => key);
  expect(keys.toSorted()).toEqual(
    [
      'countdown:thu:2026-10-15@2026-10-15T17:30:00.000Z',
      'countdown:late:2026-10-15@2026-10-15T18:30:00.000Z',
      'digest:2026-10-15',
    ].toSorted(),
  );
  expect(
    studio.texts(teamChannel).filter((text) => text.includes('Thursday Lift, 18:30, on now')),
  ).toHaveLength(1);
  expect(studio.texts('D1').filter((text) => text.includes('Are you in'))).toHaveLength(1);
});

describe('what was skipped is listed to the coach', () => {
  const listed = () =>
    studio
      .texts('D9')
      .filter((text) => text.startsWith('I was stopped'))
      .flatMap((text) => text.split('\n').slice(1));
  const thursday = ['Thursday Lift*, Thu 15 Oct, 18:30', 'Late Lift*, Thu 15 Oct, 19:30'];

  test('once for each, however a clock jumps a day ahead and back', async () => {
    studio = await createTimetableStudio('2026-10-14T18:00:00.000Z');
    await studio.at('2026-10-14T18:01:00.000Z');
    for (const minute of [2, 3, 4]) {
      await studio.at(`2026-10-15T19:0${minute}:00.000Z`);
      await studio.at(`2026-10-14T18:0${minute}:00.000Z`);
    }
    expect(listed()).toEqual(
      thursday.map((each) => expect.stringContaining(`• *${each}: countdown, I’m in`)),
    );
    // A longer jump adds what was not listed yet, and nothing else.
    await studio.at('2026-10-18T12:00:00.000Z');
    expect(new Set(listed()).size).toBe(listed().length);
    expect(listed().filter((line) => line.includes('countdown'))).toHaveLength(2);
  });

  test('once where the clock goes on after a jump, and the list is of that stop alone', async () => {
    studio = await createTimetableStudio('2026-10-14T18:00:00.000Z');
    await studio.at('2026-10-15T19:02:00.000Z');
    const first = listed();
    await studio.at('2026-10-14T18:01:00.000Z');
    await studio.walkTo('2026-10-16T12:00:00.000Z');
    expect(listed()).toEqual(first);
    await studio.at('2026-10-20T12:00:00.000Z');
    expect(listed().slice(first.length)).toEqual([
      expect.stringContaining('Monday Lift*, Mon 19 Oct, 18:30: countdown'),
      expect.stringContaining('the evening’s list for Mon 19 Oct'),
    ]);
  });

  test('a report that another has followed by then, and more lines than a message holds', async () => {
    const slots = Array.from({ length: 40 }, (_, place) => ({
      id: `slot-${place}`,
      name: `A class with quite a long name, number ${place}`,
      weekday: 'Thu' as const,
      time: `${String(6 + Math.floor(place / 3)).padStart(2, '0')}:00`,
      seconds: 1800,
      instructorId: 'U1',
    }));
    studio = await createTimetableStudio('2026-10-14T18:00:00.000Z', { ...studioSettings, slots });
    await studio.at('2026-10-14T18:01:00.000Z');
    await studio.at('2026-10-26T12:00:00.000Z');
    expect(listed().filter((line) => line.includes('countdown'))).toHaveLength(80);
    expect(listed()).toContain('• the report on week 42: /evenset week 2026-W42 shows it');
    expect(Math.max(...studio.texts('D9').map((text) => text.length))).toBeLessThanOrEqual(4_000);
  });
});
