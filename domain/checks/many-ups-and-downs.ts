import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { classLevel } from '../plan/class-facts.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapThatMends } from './mends.ts';
import { isLyingDown } from './move-facts.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, neighboursIn, turnsOf } from './turns-of.ts';

export type ManyUpsAndDowns = FindingBase & {
  readonly code: 'many-ups-and-downs';
  readonly aMinute: number;
};

/** A block sends people up and down between floor and standing more often than their level should. */
export function manyUpsAndDowns(subject: CheckSubject, context: Context): readonly ManyUpsAndDowns[] {
  const { floorChangesAMinute, floorChangesLeast } = context.settings.checks;
  const level = subject.plan.facts.olderAdults ? 1 : (classLevel(subject.plan) ?? 2);
  const turns = turnsOf(subject, context);
  const manyIn = (some: readonly Turn[]): readonly { readonly block: number; readonly aMinute: number }[] =>
    subject.timeline.blocks
      .map(({ block }) => ({ block, aMinute: changesAMinute(some, block, subject, floorChangesLeast) }))
      .filter(({ aMinute }) => aMinute > floorChangesAMinute[level]);
  const worst = manyIn(turns).toSorted((one, other) => other.aMinute - one.aMinute)[0];
  if (worst === undefined) {
    return [];
  }
  const lines = linesOfTurns(turns.filter(({ blockIndex }) => blockIndex === worst.block));
  return [
    {
      code: 'many-ups-and-downs',
      severity: 'look at',
      lines,
      source: 'common practice',
      aMinute: Math.round(worst.aMinute * 10) / 10,
      ...mendWith(swapThatMends(subject.plan, turns, lines, (some) => manyIn(some).length === 0)),
    },
  ];
}

function changesAMinute(
  turns: readonly Turn[],
  block: number,
  { timeline }: CheckSubject,
  least: number,
): number {
  const inside = turns.filter(({ blockIndex }) => blockIndex === block);
  const changes = neighboursIn(inside, Number.POSITIVE_INFINITY).filter(({ before, after }) =>
    changesFloor(before.move, after.move),
  ).length;
  const time = timeline.blocks.find((one) => one.block === block);
  const seconds = time === undefined ? 0 : time.endSeconds - time.startSeconds;
  return changes < least || seconds === 0 ? 0 : (changes * 60) / seconds;
}

function changesFloor(before: Move | undefined, after: Move | undefined): boolean {
  return (
    before !== undefined &&
    after !== undefined &&
    ((before.position === 'standing' && isLyingDown(after)) ||
      (after.position === 'standing' && isLyingDown(before)))
  );
}
