import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createLog } from '../../../bot/log.ts';
import { applySettings, readSettings } from '../../../bot/settings-file.ts';
import type { Storage } from '../../../domain/ports.ts';
import { defaultSettings } from '../../../domain/settings.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';

const studio = {
  zone: 'Europe/Berlin',
  reviewChannel: 'C0REVIEW',
  teamChannel: 'C0TEAM',
  headCoaches: ['U0COACH'],
  rooms: [{ name: 'Hall', kit: { kettlebell: 12, mat: 20 }, capacity: 18 }],
  slots: [
    { id: 'tue', name: 'Tuesday', weekday: 'Tue', time: '18:30', seconds: 2700, room: 'Hall', people: 14 },
  ],
  countdownMinutes: [60, 5],
  reportAt: { weekday: 'Mon', time: '07:00' },
  transitions: { swapSeconds: 8 },
};

describe('a settings file', () => {
  test('keeps the default of whatever it leaves out', () => {
    const read = readSettings(JSON.stringify(studio));
    expect(read.kind === 'read' && read.settings).toEqual({
      ...defaultSettings,
      ...studio,
      rooms: [{ ...studio.rooms[0], doorSeconds: 0, clearUpSeconds: 0 }],
      transitions: { ...defaultSettings.transitions, swapSeconds: 8 },
    });
  });

  test.each([
    [
      'not JSON',
      '{\n  "zone": "UTC"\n  "rooms": []\n}',
      'not JSON at line 3: look for a missing comma or quote there',
    ],
    ['an unknown name', { zonne: 'UTC' }, 'the file: “zonne” is no setting here'],
    ['a zone that is none', { zone: 'Berlin' }, 'zone: write a time zone such as "Europe/Berlin"'],
    [
      'a name for an id',
      { headCoaches: ['Tomas'] },
      'headCoaches[0]: write a member id such as "U012ABCDEF"',
    ],
    ['a channel by name', { teamChannel: '#team' }, 'teamChannel: write a channel id such as "C012ABCDEF"'],
    [
      'a time that is none',
      { reportAt: { weekday: 'Mon', time: '7' } },
      'reportAt.time: write a time of day such as "18:30"',
    ],
    [
      'a day that is none',
      { reportAt: { weekday: 'Monday', time: '07:00' } },
      'reportAt.weekday: write one of Mon, Tue, Wed, Thu, Fri, Sat, Sun',
    ],
    [
      'a slot in no room',
      { slots: [{ id: 'a', name: 'A', weekday: 'Mon', time: '10:00', room: 'Attic' }], rooms: studio.rooms },
      'slots[0].room: “Attic” is none of the rooms: Hall',
    ],
    [
      'one id twice',
      { slots: [0, 1].map(() => ({ id: 'a', name: 'A', weekday: 'Mon', time: '10:00' })) },
      'slots: the id “a” stands there twice',
    ],
  ])('%s is named with its place and what would work', (_name, content, problem) => {
    const text = typeof content === 'string' ? content : JSON.stringify(content);
    expect(readSettings(text)).toEqual({ kind: 'unusable', problems: [problem] });
  });
});

describe('applying it', () => {
  let storage: Storage;
  beforeEach(async () => {
    storage = await openTestStorage();
    await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: '2026-11-02T09:00:00.000Z' });
  });
  afterEach(() => storage.close());

  const lines: string[] = [];
  const log = createLog({
    secrets: [],
    destination: {
      write: (line) => {
        lines.push(line);
      },
    },
  });
  const apply = (content: unknown) => {
    const read = readSettings(JSON.stringify(content));
    if (read.kind !== 'read') throw new Error(read.problems.join());
    return applySettings(storage, 'T1', read, '2026-11-02T09:00:00.000Z', log);
  };

  test('happens where the content differs from the one last applied, and is logged', async () => {
    expect(await apply(studio)).toBe(true);
    expect(await apply(studio)).toBe(false);
    expect(await apply({ ...studio, countdownMinutes: [30] })).toBe(true);
    expect((await storage.settings.find('T1'))?.settings.countdownMinutes).toEqual([30]);
    expect(lines.map((line) => JSON.parse(line).changed).at(-1)).toEqual(['countdownMinutes']);
    expect(lines.length).toBe(2);
  });

  test('what was set in the workspace stays where the file does not change or leaves it out', async () => {
    await apply(studio);
    const stored = await storage.settings.find('T1');
    if (stored === undefined) throw new Error('No settings.');
    const set = { ...stored.settings, energyOn: true, countdownMinutes: [20] };
    await storage.settings.save('T1', set, stored.fingerprint, '2026-11-02T09:00:00.000Z');
    expect(await apply(studio)).toBe(false);
    expect((await storage.settings.find('T1'))?.settings).toEqual(set);
    expect(await apply({ ...studio, countdownMinutes: [30] })).toBe(true);
    expect((await storage.settings.find('T1'))?.settings).toEqual({ ...set, countdownMinutes: [30] });
  });
});
