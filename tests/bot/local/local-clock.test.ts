import { describe, expect, test } from 'vitest';
import { createLocalClock } from '../../../bot/local/local-clock.ts';

const startAt = '2026-10-14T08:00:00.000Z';

const follow = (due: readonly string[]) => {
  const clock = createLocalClock({ startAt });
  const seen: string[] = [];
  clock.follow({
    nextDueAt: async (after) => due.find((instant) => instant > after),
    settle: async () => {
      seen.push(clock.now());
    },
  });
  return { clock, seen };
};

describe('the clock', () => {
  test('stands still', async () => {
    const clock = createLocalClock({ startAt });
    await new Promise((resolve) => setTimeout(resolve, 15));
    expect(clock.now()).toBe(startAt);
  });

  test('walks through each due moment and lets the app settle there', async () => {
    const { clock, seen } = follow([
      '2026-10-14T09:00:00.000Z',
      '2026-10-14T09:30:00.000Z',
      '2026-10-15T00:00:00.000Z',
    ]);
    await clock.moveTo('2026-10-14T12:00:00+01:00');
    expect(seen).toEqual([
      startAt,
      '2026-10-14T09:00:00.000Z',
      '2026-10-14T09:30:00.000Z',
      '2026-10-14T11:00:00.000Z',
    ]);
    expect(await clock.nextDueAt()).toBe('2026-10-15T00:00:00.000Z');
  });

  test('stops at moments that only come up on the way', async () => {
    const clock = createLocalClock({ startAt });
    const due = ['2026-10-14T09:00:00.000Z'];
    const seen: string[] = [];
    clock.follow({
      nextDueAt: async (after) => due.find((instant) => instant > after),
      settle: async () => {
        seen.push(clock.now());
        if (clock.now() === due[0]) due.push('2026-10-14T09:15:00.000Z');
      },
    });
    await clock.moveTo('2026-10-14T10:00:00.000Z');
    expect(seen).toContain('2026-10-14T09:15:00.000Z');
  });

  test('two moves at once happen one after the other', async () => {
    const { clock } = follow([]);
    await Promise.all([clock.moveTo('2026-10-14T10:00:00.000Z'), clock.moveTo('2026-10-14T09:00:00.000Z')]);
    expect(clock.now()).toBe('2026-10-14T10:00:00.000Z');
  });

  test('a due moment that is not later is a bug and ends the walk', async () => {
    const clock = createLocalClock({ startAt });
    clock.follow({ nextDueAt: async () => startAt, settle: async () => {} });
    await expect(clock.moveTo('2026-10-14T09:00:00.000Z')).rejects.toThrow('which is not after it');
    clock.follow({ nextDueAt: async () => undefined, settle: async () => {} });
    await clock.moveTo('2026-10-14T09:00:00.000Z');
    expect(clock.now()).toBe('2026-10-14T09:00:00.000Z');
  });

  test('goes back to its start', async () => {
    const { clock } = follow([]);
    await clock.moveTo('2026-10-15T00:00:00.000Z');
    clock.reset();
    expect(clock.now()).toBe(startAt);
  });
});
