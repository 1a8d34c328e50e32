import { afterEach, expect, test } from 'vitest';
import { createTimetableStudio, ines, mira, studioSettings, teamChannel } from './timetable-studio.ts';

type Studio = Awaited<ReturnType<typeof createTimetableStudio>>;
let studio: Studio;
afterEach(() => studio.end());

const room = { doorSeconds: 0, clearUpSeconds: 0, kit: { dumbbell: 10, mat: 20 } } as const;

/** Two classes at the same time in two rooms, which lend each other twenty dumbbells. */
const settings = {
  ...studioSettings,
  rooms: [
    { ...room, name: 'Hall' },
    { ...room, name: 'Loft' },
  ],
  sharedKit: [{ item: 'dumbbell' as const, pieces: 20, rooms: ['Hall', 'Loft'] }],
  slots: studioSettings.slots.map((slot) =>
    slot.id === 'late' ? { ...slot, time: '18:30', room: 'Loft' } : slot,
  ),
};

// Two dumbbells a person: 14 people need 28, of which the Hall has 10; 10 need 20, of which the Loft has 10.
const kitClash = (other: string, needed: number) =>
  `Clash: ${needed} dumbbell pieces are needed of the 20 shared ones, together with *${other}*, Thu 15 Oct, 18:30.`;

test('kit that rooms share is told in the list of the evening before, and when a head count brings it', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z', settings);
  await studio.givePlan('thu', '2026-10-15', 'approved');
  await studio.givePlan('late', '2026-10-15', 'approved');
  await studio.walkTo('2026-10-14T17:00:00.000Z');
  const list = studio
    .last(teamChannel)
    ?.text.split('\n')
    .map((line) => line.trim());
  expect(list).toContain(kitClash('Late Lift', 28));
  expect(list).toContain(kitClash('Thursday Lift', 28));
  await studio.walkTo('2026-10-15T17:00:00.000Z');
  await studio.say(ines, '5 now');
  expect(studio.last('D2')?.text).not.toContain('Clash');
  await studio.say(mira, '18 now');
  expect(studio.last('D1')?.text).not.toContain('Clash');
  await studio.say(ines, '12 now');
  expect(studio.last('D2')?.text).toContain(kitClash('Thursday Lift', 26 + 14));
});

test('and in the thread of a plan that needs it, with what it clashes with', async () => {
  studio = await createTimetableStudio('2026-10-14T11:00:00.000Z', settings);
  await studio.givePlan('late', '2026-10-15', 'approved');
  await studio.say(
    mira,
    'Press, 45 min, Thu 18:30, Hall, 14 people\nwarm-up 6:00: march\ncircuit x5, 40/20\ndumbbell shoulder press\nplank\ncool-down to the end',
    { ts: '900.1' },
  );
  const clashes = studio.workspace.posts.filter(({ text }) => text.startsWith('Clash'));
  expect(clashes).toMatchObject([{ thread: '900.1', text: kitClash('Late Lift', 28) }]);
});
