import type { Move } from '../catalogue/move.ts';
import type { Block } from '../plan/plan.ts';
import type { MoveInPlan } from '../timing/planned-moves.ts';
import { secondsPerRep } from '../timing/seconds-per-rep.ts';
import type { Segment, Timeline } from '../timing/timeline.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { type Bout, isShort, setRules, setsOfBout } from './count-sets.ts';
import type { LoadRow } from './load.ts';
import { repsIn } from './reps-in.ts';
import { isUnderTension, sideShare } from './tension.ts';

/** The row of a move that has bouts of its own; `work` are its segments in order. */
export function rowOfBouts(
  { planned, letter, block, known }: MoveInPlan & { readonly known: Move },
  work: readonly Segment[],
  planBlock: Block | undefined,
  timeline: Timeline,
  context: TimingContext,
): LoadRow {
  const late = new Map(
    timeline.lateStarts.map(({ startSeconds, lateSeconds }) => [startSeconds, lateSeconds]),
  );
  const byReps = planBlock?.kind === 'emom' || isUntimed(planBlock, planned.workSeconds);
  const bouts = boutsOf(work).map((sides): Bout => {
    const oneSide = sides.length === 1 && (sides[0]?.side === 'right' || sides[0]?.side === 'left');
    return {
      seconds: sum(sides.map(lengthOf)),
      byReps,
      oneSide,
      ...(planned.reps === undefined ? {} : { reps: planned.reps }),
    };
  });
  const countOf = (counted: readonly Bout[]) => sum(counted.map((bout) => setsOfBout(bout, known)));
  const repLength = secondsPerRep(planned, context);
  return {
    block,
    letter: letter.id,
    move: planned.id,
    sets:
      countOf(bouts.filter((bout) => !isShort(bout))) +
      Math.min(setRules.mostShortSetsABlock, countOf(bouts.filter(isShort))),
    tensionSeconds: isUnderTension(known)
      ? sum(
          work.map(
            (bout) => sideShare(bout.side, known) * (lengthOf(bout) - (late.get(bout.startSeconds) ?? 0)),
          ),
        )
      : 0,
    conditioningSeconds: known.effort === 'conditioning' ? sum(work.map(lengthOf)) : 0,
    ...(known.effort === 'reps'
      ? { reps: sum(work.map((bout) => bout.reps ?? repsIn(lengthOf(bout), repLength))) }
      : {}),
    about: false,
  };
}

/** Straight sets whose work is given by reps alone. */
function isUntimed(block: Block | undefined, ownSeconds: number | undefined): boolean {
  if (block?.kind !== 'straight' || ownSeconds !== undefined) return false;
  return block.intervals.every(({ workSeconds }) => workSeconds === 0);
}

/** Segments of a move as bouts: in a round, the n-th on the right and the n-th on the left are one. */
function boutsOf(work: readonly Segment[]): readonly (readonly Segment[])[] {
  const rounds = [...new Set(work.map(({ round }) => round))];
  return rounds.flatMap((each) => {
    const inRound = work.filter(({ round }) => round === each);
    const right = inRound.filter(({ side }) => side === 'right');
    const left = inRound.filter(({ side }) => side === 'left');
    const whole = inRound.filter(({ side }) => side !== 'right' && side !== 'left');
    const pairs = Array.from({ length: Math.max(right.length, left.length) }, (_, index) =>
      [right[index], left[index]].filter((segment) => segment !== undefined),
    );
    return [...whole.map((segment) => [segment]), ...pairs];
  });
}

function lengthOf({ startSeconds, endSeconds }: Segment): number {
  return endSeconds - startSeconds;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
