import type { PlannedMove } from '../plan/plan.ts';
import type { Part } from './part.ts';
import { secondsPerRep } from './seconds-per-rep.ts';
import type { TimingContext } from './timing-context.ts';

/**
 * Work seconds a move asks for by itself: its own time, else the block's, else reps × seconds a rep; 0
 * where nothing says. `each side` is so many seconds a side, `split sides` both sides together.
 */
export function workSecondsOf(
  planned: PlannedMove,
  blockSeconds: number | undefined,
  context: TimingContext,
): number {
  const given = planned.workSeconds ?? blockSeconds;
  return given ?? Math.round((planned.reps ?? 0) * secondsPerRep(planned, context));
}

type Place = { readonly letter: string; readonly round: number };

/** The bout of one move: its sides one after the other, an odd second of a split being the change. */
export function workOfMove(planned: PlannedMove, seconds: number, place: Place): readonly Part[] {
  const work = (workSeconds: number, reps: number | undefined, side?: Part['side']): Part => ({
    kind: 'work',
    seconds: workSeconds,
    letter: place.letter,
    move: planned.id,
    round: place.round,
    ...(side === undefined ? {} : { side }),
    ...(reps === undefined ? {} : { reps }),
  });
  switch (planned.sides) {
    case 'both':
      return [work(seconds, planned.reps)];
    case 'alternating':
    case 'right':
    case 'left':
      return [work(seconds, planned.reps, planned.sides)];
    case 'each side':
      return [work(seconds, planned.reps, 'right'), work(seconds, planned.reps, 'left')];
    case 'split sides': {
      const half = Math.floor(seconds / 2);
      const reps = planned.reps === undefined ? undefined : planned.reps / 2;
      const change: Part = {
        kind: 'change',
        seconds: seconds % 2,
        letter: place.letter,
        move: planned.id,
        round: place.round,
      };
      return [work(half, reps, 'right'), change, work(half, reps, 'left')];
    }
  }
}
