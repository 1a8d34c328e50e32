import { afterAll, bench, describe } from 'vitest';
import { weekOfStudio } from '../../bot/flows/week-of-studio.ts';
import type { Desk } from '../../bot/handling.ts';
import { demoSettings, demoStart, demoTeam } from '../../bot/local/demo/demo-studio.ts';
import { seedDemo } from '../../bot/local/demo/seed-demo.ts';
import { english } from '../../bot/words/en.ts';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import type { Stores } from '../../domain/ports.ts';
import { openStorage } from '../../storage/open-storage.ts';

const storage = openStorage({ file: ':memory:' });
const newId = () => crypto.randomUUID();
await seedDemo(storage, { catalogue, words: english, newId });

/** Taught classes of earlier years, so that the week is found among a thousand. */
await storage.inTransaction(async ({ classes }) => {
  for (let n = 0; n < 1_000; n += 1) {
    const id = `earlier-${n}`;
    const instant = new Date(Date.parse('2023-01-02T09:00:00.000Z') + n * 86_400_000).toISOString();
    await classes.save(demoTeam.id, {
      id,
      startsAt: { date: instant.slice(0, 10), time: '09:00', zone: 'UTC', instant },
      slotSeconds: 2_700,
      instructorId: 'U0MIRA',
      state: 'taught',
    });
    await classes.saveLoad(
      demoTeam.id,
      id,
      muscles.map((muscle) => ({ muscle, sets: 3, tensionSeconds: 120 })),
      { squat: 3 },
    );
  }
});

const deskOn = (stores: Stores): Desk => ({
  studioId: demoTeam.id,
  stores,
  settings: demoSettings,
  catalogue,
  words: english,
  now: demoStart,
  newId,
});

afterAll(() => storage.close());

describe('a week among a thousand classes', () => {
  bench('the whole report', async () => {
    await storage.inTransaction((stores) => weekOfStudio(deskOn(stores), '2026-W41'));
  });

  bench('its load rows alone', async () => {
    await storage.classes.listLoadBetween(
      demoTeam.id,
      '2026-10-05T00:00:00.000Z',
      '2026-10-12T00:00:00.000Z',
    );
  });
});
