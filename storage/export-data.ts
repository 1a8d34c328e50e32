import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import type { Storage } from '../domain/ports.ts';

/** Writes all that is kept, by studio and table, as JSON into a new file for its owner alone. */
export async function exportData(storage: Storage, toFile: string): Promise<void> {
  const studios: Record<string, unknown> = {};
  for (const { id } of await storage.studios.list()) studios[id] = await storage.care.exportStudio(id);
  const descriptor = openSync(toFile, 'wx', 0o600);
  try {
    writeSync(descriptor, `${JSON.stringify({ studios }, undefined, 2)}\n`);
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}
