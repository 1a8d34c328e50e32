import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, bench, describe } from 'vitest';
import { muscles } from '../../domain/catalogue/muscles.ts';
import { openStorage } from '../../storage/open-storage.ts';

const classCount = 1000;
const classesAWeek = 22;
const weekMilliseconds = 7 * 24 * 3_600_000;
const firstMonday = Date.parse('2026-01-05T00:00:00.000Z');
const instant = (milliseconds: number) => new Date(milliseconds).toISOString();

const folder = mkdtempSync(join(tmpdir(), 'evenset-bench-'));
const storage = openStorage({ file: join(folder, 'evenset.db') });
await storage.studios.save({ id: 'north', name: 'North Hall', createdAt: instant(firstMonday) });
await storage.inTransaction(async ({ classes }) => {
  for (let n = 0; n < classCount; n += 1) {
    const id = `class-${n}`;
    const start = instant(firstMonday + Math.floor((n * weekMilliseconds) / classesAWeek));
    await classes.save('north', {
      id,
      startsAt: { date: start.slice(0, 10), time: start.slice(11, 16), zone: 'UTC', instant: start },
      slotSeconds: 2700,
      instructorId: 'mara',
      state: 'taught',
    });
    const load = muscles.map((muscle, place) => ({
      muscle,
      sets: 1 + place / 2,
      tensionSeconds: 40 * place,
    }));
    await classes.saveLoad('north', id, load, { squat: 6, hinge: 4.5, 'anti-extension': 3 });
  }
  storage.database.exec(`
    INSERT INTO class_moves
    WITH RECURSIVE place (n) AS (SELECT 0 UNION ALL SELECT n + 1 FROM place WHERE n < 14)
    SELECT studio_id, class_id, 'move-' || ((substr(class_id, 7) * 7 + n) % 90) FROM class_counts, place
  `);
});
const from = instant(firstMonday + 20 * weekMilliseconds);
const to = instant(firstMonday + 21 * weekMilliseconds);
let key = 0;

afterAll(async () => {
  await storage.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('storage at 1,000 taught classes', () => {
  bench('load of a week', async () => {
    await storage.classes.listLoadBetween('north', from, to);
  });

  bench('the same rows, counted by SQLite alone', () => {
    storage.database
      .prepare(
        `SELECT muscle, sum(sets) FROM classes JOIN class_load USING (studio_id, class_id)
         WHERE studio_id = 'north' AND starts_ms >= ? AND starts_ms < ? AND state = 'taught' GROUP BY muscle`,
      )
      .all(Date.parse(from), Date.parse(to));
  });

  bench('moves taught, 15 a class of 90', async () => {
    await storage.classes.listMovesTaught('north');
  });

  bench('a delivery received and done, durable', async () => {
    key += 1;
    await storage.inTransaction(async ({ deliveries }) => {
      const receivedAt = from;
      await deliveries.receive('north', { key: `ev-${key}`, kind: 'event', body: '{}', receivedAt });
      await deliveries.markDone('north', `ev-${key}`, from);
    });
  });
});
