import type { Move } from '../catalogue/move.ts';
import { groupOfMuscle } from '../catalogue/muscles.ts';
import type { Plan } from '../plan/plan.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import type { Load } from './load.ts';

type Region = 'upper' | 'lower' | 'trunk';

/** Sets of the two pairs of opposites a coach looks at. */
export type LoadSplit = {
  readonly push: number;
  readonly pull: number;
  readonly upper: number;
  readonly lower: number;
  readonly trunk: number;
};

/** Push : pull and upper : lower : trunk, in sets of the moves, not of their muscles. */
export function splitOfLoad(plan: Plan, load: Load, context: TimingContext): LoadSplit {
  const moves = movesByLine(plan, context);
  const setsWhere = (holds: (move: Move) => boolean): number =>
    load.rows.reduce((sum, { move, sets }) => {
      const known = moves.get(move)?.known;
      return known !== undefined && holds(known) ? sum + sets : sum;
    }, 0);
  return {
    push: setsWhere(({ pattern }) => pattern === 'horizontal push' || pattern === 'vertical push'),
    pull: setsWhere(({ pattern }) => pattern === 'horizontal pull' || pattern === 'vertical pull'),
    upper: setsWhere((move) => regionOfMove(move) === 'upper'),
    lower: setsWhere((move) => regionOfMove(move) === 'lower'),
    trunk: setsWhere((move) => regionOfMove(move) === 'trunk'),
  };
}

/** Where a move works; an isolation move by its first prime mover, a mobility move nowhere. */
function regionOfMove({ pattern, primeMovers }: Move): Region | undefined {
  switch (pattern) {
    case 'squat':
    case 'hinge':
    case 'lunge':
    case 'jump':
    case 'locomotion':
      return 'lower';
    case 'horizontal push':
    case 'vertical push':
    case 'horizontal pull':
    case 'vertical pull':
    case 'carry':
      return 'upper';
    case 'trunk flexion':
    case 'anti-extension':
    case 'anti-rotation':
    case 'rotation':
    case 'lateral flexion':
      return 'trunk';
    case 'isolation': {
      const [first] = primeMovers;
      const group = first === undefined ? undefined : groupOfMuscle[first];
      if (group === 'legs' || group === 'hips') return 'lower';
      return group === 'abdomen' ? 'trunk' : 'upper';
    }
    case 'mobility':
      return undefined;
  }
}
