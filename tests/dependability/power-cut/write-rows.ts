import { writeSync } from 'node:fs';
import { openStorage } from '../../../storage/open-storage.ts';

/**
 * Receives deliveries and tells each on standard output once storage has answered, then ends without
 * closing. Checkpoints come often, so that cuts fall into them too.
 */
const [file = '', rows = '0', synchronous = 'FULL'] = process.argv.slice(2);
const storage = openStorage({ file });
storage.database.pragma(`synchronous = ${synchronous}`);
storage.database.pragma('wal_autocheckpoint = 12');
const receivedAt = '2026-11-23T12:00:00.000Z';
await storage.studios.save({ id: 'T1', name: 'Morgen', createdAt: receivedAt });
writeSync(1, 'begun\n');
for (let n = 0; n < Number(rows); n += 1) {
  const body = `{"text":"${'row '.repeat(20 + ((n * 37) % 200))}"}`;
  await storage.inTransaction(async (stores) => {
    await stores.deliveries.receive('T1', { key: `ev-${n}`, kind: 'event', body, receivedAt });
    if (n % 3 === 2) await stores.deliveries.markDone('T1', `ev-${n - 2}`, receivedAt);
  });
  writeSync(1, `ev-${n}\n`);
}
process.kill(process.pid, 'SIGKILL');
