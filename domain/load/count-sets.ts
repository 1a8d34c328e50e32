import type { Move } from '../catalogue/move.ts';

/** Common practice, no published source: the research counted hard sets, these are interval sets. */
export const setRules = {
  fullBoutSeconds: 30,
  halfBoutSeconds: 15,
  fullReps: 6,
  repsASet: 10,
  sharedSecondsASet: 45,
  mostShortSetsABlock: 4,
} as const;

/** One effort of a move, both sides together. */
export type Bout = {
  readonly seconds: number;
  /** Reps as typed: a side for `each side`, else in all. */
  readonly reps?: number;
  /** EMOM and work that reps alone give: reps count before seconds. */
  readonly byReps: boolean;
  /** Right or left only: half of what both sides would count. */
  readonly oneSide: boolean;
};

/** Sets of a bout for its prime movers, before any cap. */
export function setsOfBout(bout: Bout, move: Move): number {
  const share = bout.oneSide ? 1 / 2 : 1;
  const seconds = bout.seconds / share;
  const enoughReps = bout.byReps && (bout.reps ?? 0) >= setRules.fullReps && move.effort !== 'hold';
  return share * weightOfMove(move) * (enoughReps ? 1 : setsOfSeconds(seconds, move));
}

function setsOfSeconds(seconds: number, move: Move): number {
  if (seconds >= setRules.fullBoutSeconds) return 1;
  return seconds >= setRules.halfBoutSeconds && move.effort !== 'hold' ? 1 / 2 : 0;
}

/** Sets of a move's part in work that several share: at least ½, in halves. */
export function setsOfShare(
  share: { readonly reps: number } | { readonly seconds: number },
  move: Move,
): number {
  const weight = weightOfMove(move);
  if (weight === 0) return 0;
  const sets = 'reps' in share ? share.reps / setRules.repsASet : share.seconds / setRules.sharedSecondsASet;
  return Math.max(1 / 2, Math.round(sets * weight * 2) / 2);
}

/** A bout too short to count whole. */
export function isShort(bout: Bout): boolean {
  return bout.seconds < setRules.fullBoutSeconds;
}

/** Holds and ballistic moves count half, conditioning and mobility nothing. */
function weightOfMove(move: Move): number {
  switch (move.effort) {
    case 'conditioning':
    case 'mobility':
      return 0;
    case 'hold':
      return 1 / 2;
    case 'reps':
      return isBallistic(move) ? 1 / 2 : 1;
  }
}

function isBallistic({ traits, pattern }: Move): boolean {
  return traits.includes('ballistic') || pattern === 'jump';
}
