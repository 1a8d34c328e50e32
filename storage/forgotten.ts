import { createHash } from 'node:crypto';
import { closeSync, existsSync, fsyncSync, openSync, readFileSync, writeSync } from 'node:fs';

/** A deletion of a person: whose is hashed, so that only who has the id can tell. */
export type Deletion = { readonly mark: string; readonly at: string };

/** The deletions of people, beside the database, so that a restore makes them again. */
export type Forgotten = { readonly note: (deletion: Deletion) => void };

export function personMark(studioId: string, personId: string): string {
  return createHash('sha256').update(`person\n${studioId}\n${personId}`).digest('hex');
}

export function forgottenFileOf(databaseFile: string): string {
  return `${databaseFile}.forgotten`;
}

/** The list beside a database file; of a database in memory nothing is ever restored. */
export function openForgotten(databaseFile: string): Forgotten {
  if (databaseFile === ':memory:') return { note: () => {} };
  return {
    note: ({ mark, at }) => {
      const descriptor = openSync(forgottenFileOf(databaseFile), 'a', 0o600);
      try {
        writeSync(descriptor, `${mark} ${at}\n`);
        fsyncSync(descriptor);
      } finally {
        closeSync(descriptor);
      }
    },
  };
}

/** Every deletion noted beside this database file, in order. */
export function readForgotten(databaseFile: string): readonly Deletion[] {
  const file = forgottenFileOf(databaseFile);
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .split('\n')
    .flatMap((line) => {
      const [, mark, at] = /^([0-9a-f]{64}) (\S+)$/.exec(line) ?? [];
      return mark === undefined || at === undefined ? [] : [{ mark, at }];
    });
}
