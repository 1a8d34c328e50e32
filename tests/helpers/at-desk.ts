import type { Desk } from '../../bot/handling.ts';
import { demoSettings, demoStart, demoTeam } from '../../bot/local/demo/demo-studio.ts';
import { seedDemo } from '../../bot/local/demo/seed-demo.ts';
import { english } from '../../bot/words/en.ts';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import type { Storage } from '../../domain/ports.ts';
import type { Settings } from '../../domain/settings.ts';
import { openStorage } from '../../storage/open-storage.ts';

/** A desk in the demo studio at its start, on a database of its own; ids count up. */
export const atDesk = <Result>(work: (desk: Desk) => Promise<Result>): Promise<Result> =>
  atDeskWith(demoSettings, (storage, newId) => seedDemo(storage, { catalogue, words: english, newId }), work);

/** The same in a studio that has these settings and nothing else. */
export const atBareDesk = <Result>(
  work: (desk: Desk) => Promise<Result>,
  settings: Settings = demoSettings,
): Promise<Result> =>
  atDeskWith(
    settings,
    async (storage) => {
      await storage.studios.save({ id: demoTeam.id, name: demoTeam.name, createdAt: demoStart });
      await storage.settings.save(demoTeam.id, settings, 'demo', demoStart);
    },
    work,
  );

async function atDeskWith<Result>(
  settings: Settings,
  fill: (storage: Storage, newId: () => string) => Promise<void>,
  work: (desk: Desk) => Promise<Result>,
): Promise<Result> {
  const storage = openStorage({ file: ':memory:' });
  let ids = 0;
  const newId = () => {
    ids += 1;
    return `id-${ids}`;
  };
  await fill(storage, newId);
  try {
    return await storage.inTransaction((stores) =>
      work({
        studioId: demoTeam.id,
        stores,
        settings,
        catalogue,
        words: english,
        now: demoStart,
        newId,
      }),
    );
  } finally {
    await storage.close();
  }
}
