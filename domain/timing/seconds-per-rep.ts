import type { Tempo } from '../catalogue/move.ts';
import type { PlannedMove } from '../plan/plan.ts';
import { knownMove } from './planned-moves.ts';
import type { TimingContext } from './timing-context.ts';

/** For a line that is open or kept as words; 3 s a rep: Gettman LR et al., Med Sci Sports 1978;10:171–6. */
const assumedSecondsPerRep = 3;

function tempoSeconds(tempo: Tempo): number {
  return tempo.lowerSeconds + tempo.bottomPauseSeconds + tempo.liftSeconds + tempo.topPauseSeconds;
}

/** Seconds of one repetition: the typed tempo, else the move's own; at least 1. */
export function secondsPerRep(planned: PlannedMove, context: TimingContext): number {
  const tempo = planned.tempo ?? knownMove(planned, context)?.tempo;
  return tempo === undefined ? assumedSecondsPerRep : Math.max(1, tempoSeconds(tempo));
}
