import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { type PlannedLine, plannedLines } from '../plan/class-facts.ts';
import type { LetteredBlock, LineId, PlannedMove, RoundsBlock } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith, secondsToGrow } from './mends.ts';
import { publishedRules } from './published-rules.ts';

export type ShortRestForHeavyWork = FindingBase & {
  readonly code: 'short-rest-for-heavy-work';
  readonly line: LineId;
  /** From the end of one bout to the start of the same move's next. */
  readonly restSeconds: number;
  readonly leastSeconds: number;
};

type Short = PlannedLine & { readonly restSeconds: number };

/** Heavy compound work comes back sooner than the evidence for core lifts supports. */
export function shortRestForHeavyWork(
  subject: CheckSubject,
  context: Context,
): readonly ShortRestForHeavyWork[] {
  const leastSeconds = context.settings.checks.heavyCompoundRestSeconds;
  const short = plannedLines(subject.plan)
    .filter(({ planned }) => isHeavyCompound(planned, knownMove(planned, context), context))
    .map((line) => ({ ...line, restSeconds: shortestReturn(line.planned, subject) }))
    .filter(({ restSeconds }) => restSeconds < leastSeconds)
    .toSorted((one, other) => one.restSeconds - other.restSeconds);
  const worst = short[0];
  if (worst === undefined) {
    return [];
  }
  return [
    {
      code: 'short-rest-for-heavy-work',
      severity: 'look at',
      lines: short.map(({ planned }) => planned.id),
      source: publishedRules.restBetweenSets,
      line: worst.planned.id,
      restSeconds: worst.restSeconds,
      leastSeconds,
      ...mendWith(longerRest(short, subject, context) ?? lighter(short, subject)),
    },
  ];
}

/** Where one line is meant and the class has the time for it: a long enough rest after its letter. */
function longerRest(
  [only, ...others]: readonly Short[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  if (only === undefined || others.length > 0 || !takesOwnRest(only.block)) {
    return undefined;
  }
  const { block, letter, restSeconds } = only;
  const missing = context.settings.checks.heavyCompoundRestSeconds - restSeconds;
  const rest = (letter.restSeconds ?? block.intervals[0]?.restSeconds ?? 0) + missing;
  return missing * (letter.rounds ?? block.rounds) <= secondsToGrow(subject, context)
    ? `rest ${labelOf(subject.plan, letter.id)} ${rest}`
    : undefined;
}

/** Blocks in which a letter's rest stands after each of its bouts, the same in every round. */
function takesOwnRest(block: LetteredBlock): block is RoundsBlock {
  return (
    (block.kind === 'circuit' || block.kind === 'straight') &&
    block.intervals.length <= 1 &&
    block.betweenRoundsSeconds === undefined
  );
}

function lighter(short: readonly Short[], { plan }: CheckSubject): string | undefined {
  return short.every(({ planned }) => planned.weight !== undefined && planned.rpe === undefined)
    ? short.map(({ planned }) => `weight ${labelOf(plan, planned.id)} medium`).join('\n')
    : undefined;
}

function isHeavyCompound(planned: PlannedMove, move: Move | undefined, context: Context): boolean {
  const saidHeavy = planned.weight?.kind === 'feel' && planned.weight.feel === 'heavy';
  const ratedHeavy = (planned.rpe ?? 0) >= context.settings.checks.heavyRpe;
  return (saidHeavy || ratedHeavy) && move?.traits.includes('compound') === true;
}

/** Infinite where the move has one bout. The two sides of a bout are one. */
function shortestReturn(planned: PlannedMove, { timeline }: CheckSubject): number {
  const bouts = timeline.segments.filter(({ kind, move }) => kind === 'work' && move === planned.id);
  const returns = bouts.slice(1).flatMap((bout, index) => {
    const before = bouts[index];
    return before === undefined || before.round === bout.round ? [] : [bout.startSeconds - before.endSeconds];
  });
  return Math.min(Number.POSITIVE_INFINITY, ...returns);
}
