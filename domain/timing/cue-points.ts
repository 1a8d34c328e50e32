import type { LineId } from '../plan/plan.ts';
import type { Settings } from '../settings.ts';
import type { Segment, Timeline } from './timeline.ts';

/** A moment on the timeline at which something is called. */
export type CuePoint = {
  readonly kind: 'next' | 'half-way' | 'ten-seconds' | 'change';
  readonly atSeconds: number;
  readonly letter?: LineId;
  readonly move?: LineId;
};

/** How early things are called. Common practice, no published source. */
const cueTiming = {
  leastBoutForHalfWaySeconds: 30,
  lastCallSeconds: 10,
} as const;

/**
 * The moments of a class in order: *next* before each bout that brings another move, *half-way* and *ten
 * seconds* in bouts long enough for them, *change* where the side changes.
 */
export function cuePoints(
  timeline: Timeline,
  { nextCueSeconds }: Pick<Settings, 'nextCueSeconds'>,
): readonly CuePoint[] {
  const work = timeline.segments.filter(({ kind }) => kind === 'work');
  return work
    .flatMap((bout, index) => cuesOfBout(bout, work[index - 1], work[index + 1], nextCueSeconds))
    .sort((one, other) => one.atSeconds - other.atSeconds);
}

function cuesOfBout(
  bout: Segment,
  before: Segment | undefined,
  after: Segment | undefined,
  nextCueSeconds: number,
): readonly CuePoint[] {
  const { startSeconds, endSeconds } = bout;
  const seconds = endSeconds - startSeconds;
  const cue = (kind: CuePoint['kind'], atSeconds: number): CuePoint => ({ kind, atSeconds, ...lineOf(bout) });
  const isSecondSide = before !== undefined && isOtherSideOf(before, bout);
  const hasSecondSide = after !== undefined && isOtherSideOf(bout, after);
  const earliest = before?.startSeconds ?? 0;
  return [
    isSecondSide
      ? cue('change', before.endSeconds)
      : cue('next', Math.max(earliest, startSeconds - nextCueSeconds)),
    ...(seconds >= cueTiming.leastBoutForHalfWaySeconds && !hasSecondSide && !isSecondSide
      ? [cue('half-way', startSeconds + Math.floor(seconds / 2))]
      : []),
    ...(seconds > cueTiming.lastCallSeconds && !hasSecondSide
      ? [cue('ten-seconds', endSeconds - cueTiming.lastCallSeconds)]
      : []),
  ];
}

/** The left after the right of the same move, in the same bout. */
function isOtherSideOf(first: Segment, second: Segment): boolean {
  return (
    first.move === second.move &&
    first.round === second.round &&
    first.side === 'right' &&
    second.side === 'left'
  );
}

function lineOf({ letter, move }: Segment): Pick<CuePoint, 'letter' | 'move'> {
  return { ...(letter === undefined ? {} : { letter }), ...(move === undefined ? {} : { move }) };
}
