import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import type { Notice, PlanVersion } from '../../domain/ports.ts';
import { openStorage, type SqliteStorage } from '../../storage/open-storage.ts';

export const studioId = 'north';
export const otherStudioId = 'south';
export const noon = '2026-11-23T12:00:00.000Z';

/** A folder of its own, gone after the test. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'evenset-storage-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Storage in a real file, with two studios, closed after the test. */
export async function openTestStorage(file = join(temporaryFolder(), 'evenset.db')): Promise<SqliteStorage> {
  const storage = openStorage({ file });
  onTestFinished(() => storage.close());
  await storage.studios.save({ id: studioId, name: 'North Hall', createdAt: noon });
  await storage.studios.save({ id: otherStudioId, name: 'South Hall', createdAt: noon });
  return storage;
}

export const record: PlanRecord = {
  id: 'plan-1',
  authorId: 'mara',
  state: 'draft',
  currentVersion: 1,
  home: { place: 'D1', thread: '100.1' },
  createdAt: noon,
};

export const version: PlanVersion = {
  planId: 'plan-1',
  version: 1,
  text: 'Lift 45 min\nnothing known here',
  problemCount: 1,
  catalogueEdition: '1',
  totalSeconds: 0,
  load: [{ muscle: 'glutes', sets: 4.5, tensionSeconds: 180 }],
  setsByPattern: { squat: 3, hinge: 1.5 },
  findingCodes: ['no-cool-down'],
  madeBy: 'mara',
  madeAt: noon,
  cause: { kind: 'written' },
};

export const notice: Notice = {
  key: 'card:plan-1:v1',
  to: 'D1',
  action: { kind: 'post', thread: { noticeKey: 'text:plan-1' } },
  payload: { text: 'Lift', blocks: [{ type: 'divider' }] },
  causedAt: noon,
};

/** A plan with its first version, as one change. */
export async function savePlan(
  storage: SqliteStorage,
  { studio = studioId, plan = record, first = version } = {},
): Promise<void> {
  await storage.inTransaction(async (stores) => {
    await stores.plans.create(studio, plan);
    await stores.plans.addVersion(studio, { ...first, planId: plan.id });
  });
}
