import { randomUUID } from 'node:crypto';
import { onTestFinished } from 'vitest';
import type { Desk } from '../../../bot/handling.ts';
import { demoTeam } from '../../../bot/local/demo/demo-studio.ts';
import { seedDemo } from '../../../bot/local/demo/seed-demo.ts';
import { createMakeDesk } from '../../../bot/make-desk.ts';
import { enqueueDue } from '../../../bot/notices/due-in-studio.ts';
import { english } from '../../../bot/words/en.ts';
import { catalogue } from '../../../domain/catalogue/catalogue.ts';
import type { StoredNotice } from '../../../domain/ports.ts';
import type { Settings } from '../../../domain/settings.ts';
import { openTestStorage } from '../../helpers/open-test-storage.ts';

/** The demo studio on real storage, at any time: its clock is what `at` is given. */
export async function openWeekStudio() {
  const storage = await openTestStorage();
  onTestFinished(() => storage.close());
  await seedDemo(storage, { catalogue, words: english, newId: randomUUID });
  const clock = { instant: '' };
  const makeDesk = createMakeDesk({
    clock: { now: () => clock.instant },
    newId: randomUUID,
    words: english,
    catalogue,
  });
  const studioId = demoTeam.id;
  const at = <Result>(instant: string, work: (desk: Desk) => Promise<Result>): Promise<Result> => {
    clock.instant = new Date(instant).toISOString();
    return storage.inTransaction(async (stores) => work(await makeDesk(studioId, stores)));
  };
  let sent = 0;
  return {
    storage,
    studioId,
    at,
    tick: (instant: string) => at(instant, enqueueDue),
    /** Notices whose key matches, in the order enqueued. */
    notices: async (key: RegExp): Promise<readonly StoredNotice[]> =>
      (await storage.notices.listUnfinished(studioId, 5_000)).filter((notice) => key.test(notice.key)),
    /** As the sender would: the place is the channel. */
    markSent: async (key: string): Promise<{ readonly place: string; readonly stamp: string }> => {
      sent += 1;
      const notice = await storage.notices.find(studioId, key);
      const sentTo = { place: notice?.to ?? '', stamp: `1790000000.${String(sent).padStart(6, '0')}` };
      await storage.notices.markSending(studioId, key, clock.instant);
      await storage.notices.markSent(studioId, key, sentTo, clock.instant);
      return sentTo;
    },
    changeSettings: (change: Partial<Settings>) =>
      at(clock.instant, async (desk) =>
        desk.stores.settings.save(studioId, { ...desk.settings, ...change }, randomUUID(), desk.now),
      ),
  };
}
