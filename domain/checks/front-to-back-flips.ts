import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { mendWith, swapThatMends } from './mends.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, neighboursIn, turnsOf } from './turns-of.ts';

export type FrontToBackFlips = FindingBase & {
  readonly code: 'front-to-back-flips';
  readonly flips: number;
};

type Flip = { readonly before: Turn; readonly after: Turn };

/** A block turns people between their front and their back again and again. */
export function frontToBackFlips(subject: CheckSubject, context: Context): readonly FrontToBackFlips[] {
  const { floorTurnsAMinute, floorChangesLeast } = context.settings.checks;
  const turns = turnsOf(subject, context);
  const isMany = (some: readonly Turn[], block: number): boolean => {
    const time = subject.timeline.blocks.find((one) => one.block === block);
    const seconds = time === undefined ? 0 : time.endSeconds - time.startSeconds;
    const flips = flipsIn(some, block).length;
    return flips >= floorChangesLeast && flips * 60 > seconds * floorTurnsAMinute;
  };
  const blockWithMany = (some: readonly Turn[]): number | undefined =>
    subject.timeline.blocks.find((one) => isMany(some, one.block))?.block;
  const block = blockWithMany(turns);
  if (block === undefined) {
    return [];
  }
  const flips = flipsIn(turns, block);
  const lines = linesOfTurns(flips.flatMap(({ before, after }) => [before, after]));
  return [
    {
      code: 'front-to-back-flips',
      severity: 'look at',
      lines,
      source: 'common practice',
      flips: flips.length,
      ...mendWith(swapThatMends(subject.plan, turns, lines, (some) => blockWithMany(some) === undefined)),
    },
  ];
}

function flipsIn(turns: readonly Turn[], block: number): readonly Flip[] {
  const inside = turns.filter(({ blockIndex }) => blockIndex === block);
  return neighboursIn(inside, Number.POSITIVE_INFINITY).filter(({ before, after }) => {
    const positions = [before.move?.position, after.move?.position];
    return positions.includes('prone') && positions.includes('supine');
  });
}
