import { expect, test } from 'vitest';
import { noon, openTestStorage, record, studioId, version } from './helpers.ts';

test('a comment is kept once, listed in order, and resolved by the first who does', async () => {
  const storage = await openTestStorage();
  await storage.inTransaction(async ({ plans }) => {
    await plans.create(studioId, record);
    await plans.addVersion(studioId, version);
  });
  const comment = { id: 'c1', planId: 'plan-1', line: 'm1', version: 1, text: 'slower', by: 'ina', at: noon };
  const later = { ...comment, id: 'c0', line: 'm2' };
  await storage.comments.add(studioId, comment);
  await storage.comments.add(studioId, { ...comment, text: 'other' });
  await storage.comments.add(studioId, later);
  expect(await storage.comments.list(studioId, 'plan-1')).toEqual([comment, later]);
  await storage.comments.resolve(studioId, 'c1', 'mara', noon);
  await storage.comments.resolve(studioId, 'c1', 'ina', '2026-12-01T00:00:00.000Z');
  expect(await storage.comments.find(studioId, 'c1')).toEqual({
    ...comment,
    resolved: { by: 'mara', at: noon },
  });
  expect(await storage.comments.find(studioId, 'c9')).toBeUndefined();
});
