import { createServer } from 'node:http';
import ICAL from 'ical.js';
import { afterEach, expect, test } from 'vitest';
import { calendarRoute } from '../../../bot/calendar-route.ts';
import { actions } from '../../../bot/ids.ts';
import { createLog } from '../../../bot/log.ts';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import { coach, createTimetableStudio, mira } from './timetable-studio.ts';

type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

/** The feed over HTTP as a calendar program asks for it. */
async function fetchFeed(path: string): Promise<{ readonly status: number; readonly text: string }> {
  const route = calendarRoute({
    storage: studio.storage,
    makeDesk: createMakeDesk({
      clock: { now: () => studio.clock.instant },
      newId: () => 'unused',
      words: english,
      catalogue,
    }),
    log: createLog({ secrets: [], destination: { write: () => {} } }),
  });
  const server = createServer(route.handler);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = server.address();
  const port = typeof address === 'object' ? address?.port : 0;
  const answer = await fetch(`http://127.0.0.1:${port}${path}`);
  const text = await answer.text();
  await new Promise((resolve) => server.close(resolve));
  return { status: answer.status, text };
}

/** Parsed back by another library than the one that prints. */
function eventsOf(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((each) => {
    const event = new ICAL.Event(each);
    return {
      uid: event.uid,
      sequence: event.sequence,
      start: event.startDate.toJSDate().toISOString(),
      end: event.endDate.toJSDate().toISOString(),
      summary: event.summary,
      location: event.location,
      description: event.description,
      status: String(each.getFirstPropertyValue('status')),
    };
  });
}

async function feedPath(by = mira, words = 'calendar'): Promise<string> {
  await studio.say(by, words);
  const said = studio.texts(`D${by.slice(1)}`).join('\n');
  return [...said.matchAll(/\/calendar\/[\w-]{43}\.ics/g)].at(-1)?.[0] ?? '';
}

test('each class with its state and cues; UIDs stay, SEQUENCE rises, a cancellation says so', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z');
  await studio.givePlan('thu', '2026-10-15', 'approved');
  const path = await feedPath();
  const event = async (uid: string) =>
    eventsOf((await fetchFeed(path)).text).find((each) => each.uid === `${uid}@T1.evenset`);
  expect(await event('thu:2026-10-15')).toEqual({
    uid: 'thu:2026-10-15@T1.evenset',
    sequence: 1,
    start: '2026-10-15T17:30:00.000Z',
    end: '2026-10-15T18:15:00.000Z',
    summary: 'Thursday Lift',
    location: 'Hall',
    description:
      'Lay out for 14: 28 dumbbells, 14 mats\nFirst: circuit, push-up → dumbbell shoulder press → goblet squat → dead bug',
    status: 'CONFIRMED',
  });
  // Wall time is kept through the clock change of 25 October 2026.
  expect(await event('thu:2026-10-29')).toMatchObject({
    sequence: 0,
    start: '2026-10-29T18:30:00.000Z',
    summary: 'Thursday Lift (no plan yet)',
  });
  await studio.say(mira, 'move Thu 18:30 to Fri 12:00');
  expect(await event('thu:2026-10-15')).toMatchObject({ sequence: 2, start: '2026-10-16T11:00:00.000Z' });
  await studio.say(mira, 'can’t teach Fri');
  await studio.tap(mira, actions.cannotTeach, studio.valueOf('D1', actions.cannotTeach));
  expect(await event('thu:2026-10-15')).toMatchObject({
    sequence: 3,
    status: 'TENTATIVE',
    summary: 'Thursday Lift (cover open)',
  });
  await studio.say(mira, 'cancel Fri');
  expect(await event('thu:2026-10-15')).toMatchObject({
    sequence: 4,
    status: 'CANCELLED',
    summary: 'Thursday Lift (cancelled)',
  });
});

test('is met at its own address only; a new one, a head coach’s word, ends the one before', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z');
  const path = await feedPath();
  expect(path).toMatch(/^\/calendar\/[\w-]{43}\.ics$/);
  expect((await fetchFeed(path)).status).toBe(200);
  const other = path.replace(/.\.ics$/, (end) => (end.startsWith('A') ? 'B.ics' : 'A.ics'));
  for (const wrong of [other, '/calendar/.ics', '/calendar/T1.ics', `${path}?x`, '/calendar/%2e%2e.ics'])
    expect([wrong, (await fetchFeed(wrong)).status]).toEqual([wrong, 404]);
  await studio.say(mira, 'calendar new');
  expect(studio.last('D1')?.text).toBe('Only a head coach can do that.');
  expect((await fetchFeed(path)).status).toBe(200);
  const renewed = await feedPath(coach, 'calendar new');
  expect(renewed).not.toBe(path);
  expect([(await fetchFeed(path)).status, (await fetchFeed(renewed)).status]).toEqual([404, 200]);
});
