import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { canTrace, cutPower, noTraceNotice, traceWrites } from './cut-power.ts';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'evenset-cut-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

if (!canTrace) console.warn(noTraceNotice);

describe.skipIf(!canTrace)('a power cut at any call', () => {
  test('loses no row that was told and damages no image', async () => {
    const cuts = cutPower(await traceWrites(30, 'FULL'), folder);
    console.info(`cut: ${JSON.stringify(cuts)}`);
    expect(cuts).toEqual({ images: cuts.images, losing: 0, corrupt: 0 });
    expect(cuts.images).toBeGreaterThanOrEqual(500);
  }, 60_000);

  test('a twin that syncs at checkpoints only loses rows', async () => {
    const { losing } = cutPower(await traceWrites(8, 'NORMAL'), folder);
    expect(losing).toBeGreaterThan(0);
  }, 60_000);

  test('a twin that never syncs loses rows or is damaged', async () => {
    const { losing, corrupt } = cutPower(await traceWrites(8, 'OFF'), folder);
    expect(losing + corrupt).toBeGreaterThan(0);
  }, 60_000);
});
