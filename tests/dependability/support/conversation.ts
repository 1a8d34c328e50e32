import { actions } from '../../../bot/ids.ts';
import type { Storage } from '../../../domain/ports.ts';
import { defaultSettings, type Settings } from '../../../domain/settings.ts';
import type { SqliteStorage } from '../../../storage/open-storage.ts';
import { actionPayload, commandPayload, eventPayload, messagePayload } from '../../helpers/payloads.ts';
import type { createTestApp } from '../../helpers/test-app.ts';

export const studioId = 'T1';
export const instructorId = 'U1';
export const coachId = 'U9';

/** A studio in UTC with a head coach, a review channel and a team channel. */
const studioSettings: Settings = {
  ...defaultSettings,
  zone: 'UTC',
  headCoaches: [coachId],
  reviewChannel: 'C7',
  teamChannel: 'C1',
};

export async function seedStudio(storage: Storage, createdAt: string): Promise<void> {
  await storage.studios.save({ id: studioId, name: 'Morgen', createdAt });
  await storage.settings.save(studioId, studioSettings, 'f', createdAt);
}

export function classText(title: string, when = ''): string {
  return `${title}, 20 min, level 2, 10 people${when}\nwarm-up 5:00: march\ncircuit x3, 40/20\npush-up\nplank\ncool-down to the end`;
}

type TestApp = ReturnType<typeof createTestApp>;

/** One class from its first words to the question how it went, each step left to settle; a Monday. */
export async function holdConversation(app: TestApp, storage: Storage): Promise<void> {
  const { send, settle, clock } = app;
  const say = async (payload: Record<string, unknown>) => {
    await send(payload);
    await settle();
  };
  const stamp = '100.000001';
  await say(messagePayload(classText('Row', ', Mon 18:00'), { ts: stamp }));
  await say(messagePayload('rounds A x2', { ts: '100.000002', thread_ts: stamp }));
  const [record] = await storage.plans.listByAuthor(studioId, instructorId, 1);
  const value = JSON.stringify({ plan: record?.id, version: record?.currentVersion });
  await say(actionPayload(actions.sendForReview, value));
  await say(actionPayload(actions.timeline, value));
  await say(actionPayload(actions.approve, value, { user: { id: coachId, team_id: studioId } }));
  await say(commandPayload(classText('Pull')));
  await say(eventPayload({ type: 'app_home_opened', user: instructorId, tab: 'home' }));
  for (const time of ['17:00', '17:45', '18:00', '18:30']) {
    clock.instant = `2026-11-02T${time}:00.000Z`;
    await settle();
  }
}

/** Ids by the order in which they first stand there, so that runs that drew more of them compare. */
export function withPlainIds(text: string): string {
  const seen = new Map<string, string>();
  return text.replace(/\bid-\d+\b/g, (id) => {
    if (!seen.has(id)) seen.set(id, `#${seen.size + 1}`);
    return seen.get(id) ?? id;
  });
}

/** What the database says, but for how often and when something was sent. */
export function contentOf({ database }: SqliteStorage, options: { readonly notices: boolean }): string {
  const rows = (sql: string) => database.prepare(sql).all();
  return withPlainIds(
    JSON.stringify(
      {
        plans: rows('SELECT * FROM plans ORDER BY created_ms, plan_id'),
        versions: rows('SELECT * FROM plan_versions ORDER BY made_at, plan_id, version'),
        reviews: rows('SELECT * FROM reviews ORDER BY sequence'),
        classes: rows('SELECT * FROM classes ORDER BY starts_ms, title'),
        deliveries: rows('SELECT kind, body, done_at IS NULL AS open FROM deliveries ORDER BY sequence'),
        notices: options.notices
          ? rows('SELECT notice_key, goes_to, action, payload, state FROM notices ORDER BY sequence')
          : [],
      },
      undefined,
      1,
    ),
  );
}
