import { describe, expect, test } from 'vitest';
import { type Kill, runUnderKills, seededKills } from './studio-under-kills.ts';

/** `npm run kill-test` makes the long run. */
const kills = Number(process.env.EVENSET_KILLS ?? 15);
const seed = Number(process.env.EVENSET_SEED ?? 20261125);

describe('a process that is killed at any moment', () => {
  test(
    `loses nothing acknowledged, leaves no post out and makes none twice (${kills} kills)`,
    async () => {
      const { lost, missing, duplicates, unsound, ...flow } = await runUnderKills({
        kills: seededKills(kills, seed),
      });
      console.info(`killed: ${JSON.stringify(flow)}`);
      expect({ lost, missing, duplicates, unsound }).toEqual({
        lost: [],
        missing: [],
        duplicates: [],
        unsound: [],
      });
      expect(flow.kills).toBe(kills);
      // The run means something only where all of it flowed.
      const { approved, countdowns, messageEdits, forms } = flow;
      const flowed = Object.entries({ approved, countdowns, messageEdits, forms });
      expect(flowed.filter(([, count]) => count === 0)).toEqual([]);
    },
    120_000 + kills * 4_000,
  );

  const atPosts: readonly Kill[] = [1, 2, 1, 2].map((nth) => ({ kind: 'post arrived', nth }));
  const atPoint = (point: Extract<Kill, { kind: 'point' }>['point'], nths: readonly number[]) =>
    nths.map((nth): Kill => ({ kind: 'point', point, nth }));

  test('a twin that notes a post only after making it posts twice', async () => {
    const { duplicates } = await runUnderKills({ kills: atPosts, twin: 'marks after the post' });
    expect(duplicates.length).toBeGreaterThan(0);
  }, 60_000);

  test('a twin that counts a post as sent before making it leaves posts out', async () => {
    const { missing } = await runUnderKills({
      kills: atPoint('marked sending', [1, 2, 1, 2]),
      twin: 'marks before the post',
    });
    expect(missing.length).toBeGreaterThan(0);
  }, 60_000);

  test('a twin that acknowledges an event before writing it loses messages', async () => {
    const { lost } = await runUnderKills({
      kills: atPoint('before commit', [2, 2, 4, 4]),
      twin: 'acks before the write',
    });
    expect(lost.length).toBeGreaterThan(0);
  }, 60_000);
});
