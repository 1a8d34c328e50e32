import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, onTestFinished, test } from 'vitest';
import { openStorage } from '../../storage/open-storage.ts';
import { temporaryFolder } from './helpers.ts';

const script = new URL('./write-until-killed.ts', import.meta.url).pathname;

/** Kills a writing process with SIGKILL; gives what it told and what its database holds. */
async function killWhileWriting(afterMilliseconds: number, tells: 'after' | 'early') {
  const file = join(temporaryFolder(), 'evenset.db');
  const child = spawn(process.execPath, ['--import', 'tsx', script, file, tells], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  let told = '';
  child.stdout.on('data', (chunk) => {
    told += String(chunk);
  });
  await once(child.stdout, 'data');
  await wait(afterMilliseconds);
  child.kill('SIGKILL');
  await once(child, 'close');
  const storage = openStorage({ file });
  onTestFinished(() => storage.close());
  const kept = new Set((await storage.deliveries.listUnfinished('north')).map(({ key }) => key));
  return { told: told.split('\n').slice(0, -1), kept, storage };
}

/**
 * A killed process loses nothing that SQLite has handed to the system, whatever `synchronous` says: only a
 * power cut could show that. This shows that an answer comes after the commit, never before it.
 */
test.each([30, 80, 150])('all that was told before a kill after %d ms is there', async (milliseconds) => {
  const { told, kept, storage } = await killWhileWriting(milliseconds, 'after');
  expect(told.length).toBeGreaterThan(0);
  expect(told.filter((key) => !kept.has(key))).toEqual([]);
  expect(storage.database.pragma('integrity_check', { simple: true })).toBe('ok');
});

test('one that tells before the commit is caught', async () => {
  const { told, kept } = await killWhileWriting(30, 'early');
  expect(told.filter((key) => !kept.has(key))).toEqual(['ev-0']);
});
