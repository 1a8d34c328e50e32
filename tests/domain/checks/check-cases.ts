import type { Context } from '../../../domain/context.ts';
import type { Check } from './subject-of.ts';

/** A class that must trigger a check, whole finding included, and near ones that must not. */
export type CheckCase = {
  readonly check: Check;
  readonly bad: string;
  readonly finding: Readonly<Record<string, unknown>>;
  readonly near: readonly string[];
  readonly facts?: Partial<Context>;
  /** The near ones are judged with these. */
  readonly nearFacts?: Partial<Context>;
};

/** Thirty minutes with a warm-up of 5:00 and a cool-down that takes what is left. */
export const half = (facts: string, ...lines: readonly string[]): string =>
  [`Half hour, 30 min, ${facts}`, 'warm-up 5:00: march', ...lines, 'cool-down to the end'].join('\n');

/** The same with all of its time given: 5:00, the lines, 5:00. */
export const fixed = (minutes: number, facts: string, ...lines: readonly string[]): string =>
  [`Fixed, ${minutes} min, ${facts}`, 'warm-up 5:00: march', ...lines, 'cool-down 5:00'].join('\n');

/** A studio that has taught many moves, none of them those named. */
export const taughtAllBut = (context: Context, ...ids: readonly string[]): ReadonlySet<string> =>
  new Set(context.catalogue.moves.map(({ id }) => id).filter((id) => !ids.includes(id)));
