import { AsyncLocalStorage } from 'node:async_hooks';
import type { Database } from 'better-sqlite3';
import type { Kysely } from 'kysely';
import type { Tables } from './tables.ts';

/** How a store reaches the tables: from outside any transaction, or from inside one. */
export type Access = {
  /** For one statement. */
  tables(): Kysely<Tables>;
  /** For statements that belong together: joins the transaction that is open, or makes one. */
  together<Result>(work: (tables: Kysely<Tables>) => Promise<Result>): Promise<Result>;
};

export type RootAccess = Access & {
  transaction<Result>(work: (access: Access) => Promise<Result>): Promise<Result>;
};

type Turn = { state: 'open' | 'ended' | 'waited' };

/**
 * SQLite has one connection, so the outer handle would wait for ever for the transaction it is used in: it
 * throws there instead. Storage answers within one turn of the event loop; a transaction still open in the
 * next turn waits for something else, a network call or a timer, while it holds the write lock. It is
 * rolled back and throws.
 */
export function createAccess(tables: Kysely<Tables>, database: Database): RootAccess {
  const turns = new AsyncLocalStorage<Turn>();

  function outer(): Kysely<Tables> {
    if (turns.getStore()?.state === 'open')
      throw new Error('Inside a transaction only the stores handed to its work may be used.');
    return tables;
  }

  async function inOneTurn<Result>(
    run: (inner: Kysely<Tables>, turn: Turn) => Promise<Result>,
  ): Promise<Result> {
    return outer()
      .transaction()
      .execute((inner) => {
        const turn: Turn = { state: 'open' };
        const watch = setImmediate(() => {
          turn.state = 'waited';
        });
        return turns.run(turn, async () => {
          try {
            const result = await run(inner, turn);
            assertOpen(turn, database);
            return result;
          } finally {
            clearImmediate(watch);
            turn.state = 'ended';
          }
        });
      });
  }

  return {
    tables: outer,
    together: (work) => inOneTurn(work),
    transaction: (work) =>
      inOneTurn((inner, turn) => {
        const open = () => {
          assertOpen(turn, database);
          return inner;
        };
        return work({ tables: open, together: async (part) => part(open()) });
      }),
  };
}

function assertOpen(turn: Turn, database: Database): void {
  if (turn.state === 'ended') throw new Error('This transaction has ended; its stores may not be used.');
  if (turn.state === 'waited')
    throw new Error('A transaction may wait for nothing but its stores: no network call, no timer.');
  if (!database.inTransaction) throw new Error('SQLite has rolled this transaction back.');
}
