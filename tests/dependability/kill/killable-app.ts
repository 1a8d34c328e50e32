import { readEnv } from '../../../bot/env.ts';
import { createLog } from '../../../bot/log.ts';
import { startReal } from '../../../bot/start-real.ts';
import type { Storage, Stores } from '../../../domain/ports.ts';
import { openStorage } from '../../../storage/open-storage.ts';

/**
 * The whole app as its own process. It can be told to kill itself at a chosen passage of a chosen point, and
 * to run as a twin that keeps its promises in the wrong order. Its first line on standard output is its port.
 */
const [file = '', pointName = '', passage = '0', twin = ''] = process.argv.slice(2);
const dieAt = Number(passage);
let passages = 0;

const pass = (name: string): void => {
  if (name !== pointName) return;
  passages += 1;
  if (passages === dieAt) process.kill(process.pid, 'SIGKILL');
};

function watched(stores: Stores): Stores {
  const { notices, deliveries } = stores;
  const promises: Stores = {
    ...stores,
    notices: {
      ...notices,
      markSending: async (studioId, key, at) => {
        if (twin !== 'marks after the post') await notices.markSending(studioId, key, at);
        if (twin === 'marks before the post')
          await notices.markSent(studioId, key, { place: 'C0TEAM', stamp: '1.1' }, at);
        pass('marked sending');
      },
      markSent: async (studioId, key, sentTo, at) => {
        await notices.markSent(studioId, key, sentTo, at);
        pass('marked sent');
      },
    },
    deliveries: {
      ...deliveries,
      receive: async (studioId, delivery) =>
        twin === 'acks before the write' && delivery.kind === 'event'
          ? true
          : deliveries.receive(studioId, delivery),
    },
  };
  return promises;
}

/** Counts the transactions that write a delivery or its change, just before and just after their commit. */
function watchedStorage(storage: Storage): Storage {
  return {
    ...storage,
    ...watched(storage),
    inTransaction: async (work) => {
      let isDelivery = false;
      const result = await storage.inTransaction(async (stores) => {
        const seen = watched(stores);
        const done = await work({
          ...seen,
          deliveries: {
            ...seen.deliveries,
            receive: (studioId, delivery) => {
              isDelivery = true;
              return seen.deliveries.receive(studioId, delivery);
            },
            markDone: (studioId, key, at) => {
              isDelivery = true;
              return seen.deliveries.markDone(studioId, key, at);
            },
          },
        });
        if (isDelivery) pass('before commit');
        return done;
      });
      if (isDelivery) pass('after commit');
      return result;
    },
  };
}

const read = readEnv(process.env);
if (read.kind !== 'read' || read.env.access === undefined) throw new Error('The environment is not set.');
const running = await startReal({
  env: read.env,
  access: read.env.access,
  storage: watchedStorage(openStorage({ file })),
  log: createLog({ secrets: [], destination: { write: () => {} } }),
  pacingMs: 10,
});
process.stdout.write(`${running.lines.join('\n')}\n`);
