import { expect, test } from 'vitest';
import { openTestStorage } from '../helpers/open-test-storage.ts';

const at = '2026-11-02T09:00:00.000Z';

async function openStudio() {
  const storage = await openTestStorage();
  await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: at });
  const listed = async () => [...(await storage.userGroups.listMembers('T1'))];
  return { storage, listed };
}

test('the people of a group as read last, less those who went', async () => {
  const { storage, listed } = await openStudio();
  await storage.userGroups.saveMembers('T1', 'S1', ['U2', 'U1', 'U2']);
  await storage.userGroups.saveMembers('T1', 'S2', ['U1']);
  await storage.userGroups.saveMembers('T1', 'S1', ['U3', 'U1']);
  await storage.userGroups.removeMembers('T1', 'S1', ['U3', 'U9']);
  await storage.userGroups.removeMembers('T1', 'S2', []);
  expect(await listed()).toEqual([
    ['S1', ['U1']],
    ['S2', ['U1']],
  ]);
  await storage.userGroups.keepOnly('T1', ['S2']);
  expect(await listed()).toEqual([['S2', ['U1']]]);
  await storage.userGroups.keepOnly('T1', []);
  expect(await listed()).toEqual([]);
});

test('who was forgotten is in no group, however often it is read', async () => {
  const { storage, listed } = await openStudio();
  await storage.userGroups.saveMembers('T1', 'S1', ['U1', 'U2']);
  await storage.care.forgetPerson('T1', 'U1', [], at);
  expect(await listed()).toEqual([['S1', ['U2']]]);
  await storage.userGroups.saveMembers('T1', 'S1', ['U1', 'U2']);
  expect(await listed()).toEqual([['S1', ['U2']]]);
});
