import type { Outcome } from '../calendar/scheduled-class.ts';
import type { FactorMove } from '../settings.ts';

/** Ours, small and bounded on purpose: what a length says has other causes than change-overs. */
const leastClasses = 5;
const step = 0.05;
const leastFactor = 0.8;
const mostFactor = 1.3;
/** So much more of one than of the other, as a share of the classes. */
const leastLean = 0.4;

/**
 * The studio's factor on change-overs after what was said of its classes since the last move, or nothing where
 * they are too few, of two minds, or the bound is reached. Classes that ran over ask for more time.
 */
export function learnFactor(
  said: readonly NonNullable<Outcome['length']>[],
  from: number,
  at: string,
): FactorMove | undefined {
  if (said.length < leastClasses) return undefined;
  const over = said.filter((length) => length === 'over').length;
  const short = said.filter((length) => length === 'short').length;
  const lean = (over - short) / said.length;
  if (Math.abs(lean) < leastLean) return undefined;
  const stepped = Math.round((from + Math.sign(lean) * step) * 100) / 100;
  const isWithin = stepped >= leastFactor && stepped <= mostFactor;
  return isWithin ? { at, from, to: stepped, classes: said.length, over, short } : undefined;
}
