import { expect, test } from 'vitest';
import { demoPeople, demoStart } from '../../../../bot/local/demo/demo-studio.ts';
import { atDesk } from '../../../helpers/at-desk.ts';

test('every plan of the demo is written before the demo starts, so that the newest draft is the newest plan', () =>
  atDesk(async ({ studioId, stores }) => {
    const written = [];
    for (const { id } of Object.values(demoPeople)) {
      for (const record of await stores.plans.listByAuthor(studioId, id, 100)) {
        const version = await stores.plans.findVersion(studioId, record.id, 1);
        written.push({ createdAt: record.createdAt, madeAt: version?.madeAt });
      }
    }
    expect(written.length).toBeGreaterThan(10);
    expect(written.filter(({ createdAt, madeAt }) => createdAt >= demoStart || madeAt !== createdAt)).toEqual(
      [],
    );
  }));
