import { limits } from '../limits.ts';

/** From turn to turn by `step`; each turn itself stands once. One rung past the limit is enough to tell it. */
export function rungsBetween(turns: readonly number[], step: number): readonly number[] {
  const rungs: number[] = turns.slice(0, 1);
  for (const [index, target] of turns.slice(1).entries()) {
    const direction = target < (turns[index] ?? target) ? -Math.max(1, step) : Math.max(1, step);
    for (
      let reps = (rungs.at(-1) ?? target) + direction;
      direction < 0 ? reps >= target : reps <= target;
      reps += direction
    ) {
      if (rungs.length > limits.rounds.most) return rungs;
      rungs.push(reps);
    }
  }
  return rungs;
}
