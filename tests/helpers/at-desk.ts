import type { Desk } from '../../bot/handling.ts';
import { demoSettings, demoStart, demoTeam } from '../../bot/local/demo/demo-studio.ts';
import { seedDemo } from '../../bot/local/demo/seed-demo.ts';
import { english } from '../../bot/words/en.ts';
import { catalogue } from '../../domain/catalogue/catalogue.ts';
import type { Settings } from '../../domain/settings.ts';
import { openStorage } from '../../storage/open-storage.ts';

/** A desk in the demo studio at its start, on a database of its own; ids count up. */
export async function atDesk<Result>(
  work: (desk: Desk) => Promise<Result>,
  settings: Settings = demoSettings,
): Promise<Result> {
  const storage = openStorage({ file: ':memory:' });
  let ids = 0;
  const newId = () => {
    ids += 1;
    return `id-${ids}`;
  };
  await seedDemo(storage, { catalogue, words: english, newId });
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
