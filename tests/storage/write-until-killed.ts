import { openStorage } from '../../storage/open-storage.ts';

/**
 * Receives deliveries and tells each on standard output once storage has answered; `early` tells it
 * inside the transaction and dwells there.
 */
const [file = '', tells = 'after'] = process.argv.slice(2);
const storage = openStorage({ file });
const receivedAt = '2026-11-23T12:00:00.000Z';
await storage.studios.save({ id: 'north', name: 'North Hall', createdAt: receivedAt });

for (let n = 0; ; n += 1) {
  const key = `ev-${n}`;
  await storage.inTransaction(async (stores) => {
    await stores.deliveries.receive('north', { key, kind: 'event', body: '{}', receivedAt });
    if (tells === 'early') {
      tell(key);
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0);
    }
  });
  tell(key);
  if (n % 20 === 19) await new Promise((resolve) => setImmediate(resolve));
}

function tell(key: string): void {
  process.stdout.write(`${key}\n`);
}
