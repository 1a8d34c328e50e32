import type { Move, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { knownMove } from '../timing/planned-moves.ts';
import { labelledLetters } from './labels.ts';
import { moveInPlaceOf } from './move-in-place.ts';
import type { LineId, Plan, PlannedMove } from './plan.ts';

/** What someone does without today; nobody is named and no reason is asked. */
export const optionLimits = [
  'no jumps',
  'no floor',
  'no wrists',
  'nothing overhead',
  'not on the back',
] as const;
export type Limit = (typeof optionLimits)[number];

/** One line of the sheet: the move as planned where it fits, else what is done in its place. */
export type OptionLine = {
  readonly label: string;
  readonly line: LineId;
  readonly moveId: MoveId;
  readonly does:
    | { readonly kind: 'as planned' }
    | { readonly kind: 'instead'; readonly moveId: MoveId; readonly from: 'the plan' | 'the catalogue' }
    /** Nothing at hand fits: the instructor decides. */
    | { readonly kind: 'none' };
};

const fitsLimit: Readonly<Record<Limit, (move: Move) => boolean>> = {
  'no jumps': ({ traits }) => !traits.includes('impact'),
  'no floor': staysOffTheFloor,
  'no wrists': ({ traits }) => !traits.includes('wrists'),
  'nothing overhead': ({ traits }) => !traits.includes('overhead'),
  'not on the back': ({ position }) => position !== 'supine',
};

/** Standing all through, or on a seat; a standing start that goes down to the hands is no help. */
function staysOffTheFloor({ position, kit, traits }: Move): boolean {
  const isSeat = kit.some(({ item }) => item === 'chair' || item === 'bench');
  const goesDown = traits.includes('head below heart') || kit.some(({ item }) => item === 'mat');
  return (position === 'standing' && !goesDown) || (position === 'seated' && isSeat);
}

/**
 * Each line of a class that names a move, with the option that fits all the limits: one named on the line
 * first, then the catalogue's easier ones, then the likest move with the kit at hand.
 */
export function optionsSheet(plan: Plan, wanted: readonly Limit[], context: Context): readonly OptionLine[] {
  const fits = (move: Move): boolean => wanted.every((limit) => fitsLimit[limit](move));
  return labelledLetters(plan)
    .flatMap(({ moves }) => moves)
    .flatMap(({ label, move: planned }) => {
      const move = knownMove(planned, context);
      return move === undefined
        ? []
        : [{ label, line: planned.id, moveId: move.id, does: whatFits(planned, move, plan, context, fits) }];
    });
}

function whatFits(
  planned: PlannedMove,
  move: Move,
  plan: Plan,
  context: Context,
  fits: (move: Move) => boolean,
): OptionLine['does'] {
  if (fits(move)) {
    return { kind: 'as planned' };
  }
  const named = planned.options
    .flatMap(({ moveId }) => (moveId === undefined ? [] : (context.catalogue.byId.get(moveId) ?? [])))
    .find(fits);
  if (named !== undefined) {
    return { kind: 'instead', moveId: named.id, from: 'the plan' };
  }
  const other = easierThatFits(move, context, fits) ?? moveInPlaceOf(move, plan, context, fits);
  return other === undefined
    ? { kind: 'none' }
    : { kind: 'instead', moveId: other.id, from: 'the catalogue' };
}

/** Down the chain of easier options, which has no cycle. */
function easierThatFits(move: Move, context: Context, fits: (move: Move) => boolean): Move | undefined {
  const easier = move.easier === undefined ? undefined : context.catalogue.byId.get(move.easier);
  return easier === undefined || fits(easier) ? easier : easierThatFits(easier, context, fits);
}
