import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import type { Letter, LetteredBlock, LineId } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, linesWithMoves, mendWith, swapsForOnesLike } from './mends.ts';
import { isLyingDown } from './move-facts.ts';

export type LyingBesideThrow = FindingBase & {
  readonly code: 'lying-beside-throw';
  readonly throwing: LineId;
  readonly lying: LineId;
};

type Couple = { readonly throwing: LineId; readonly lying: LineId };
type Place = { readonly id: LineId; readonly moves: readonly { readonly id: LineId; readonly move: Move }[] };

/** Someone lies down next to a swing or throw: at neighbouring stations, or with a partner who swaps. */
export function lyingBesideThrow(subject: CheckSubject, context: Context): readonly LyingBesideThrow[] {
  const { plan } = subject;
  return plan.blocks.filter(hasLetters).flatMap((block) => {
    const couple = coupleIn(block, context);
    if (couple === undefined) {
      return [];
    }
    const order = block.kind === 'stations' ? orderThatMends(block, context) : undefined;
    return [
      {
        code: 'lying-beside-throw',
        severity: 'must fix',
        lines: [couple.throwing, couple.lying],
        source: 'common practice',
        ...couple,
        ...mendWith(
          order === undefined
            ? swapThatStands(couple, block, subject, context)
            : `move ${labelOf(plan, order.moved)} ${order.place} ${labelOf(plan, order.beside)}`,
        ),
      },
    ];
  });
}

/** A move like the one lying down, done upright, where nobody lies beside a throw then. */
function swapThatStands(
  { lying }: Couple,
  block: LetteredBlock,
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const left = block.letters.map((letter) => ({
    ...letter,
    moves: letter.moves.filter(({ id }) => id !== lying),
  }));
  if (coupleIn({ ...block, letters: left }, context) !== undefined) return undefined;
  const lines = linesWithMoves([lying], subject.plan, context);
  return swapsForOnesLike(
    lines,
    subject,
    context,
    (one) => !isLyingDown(one) && !one.traits.includes('throw'),
  );
}

function coupleIn(block: LetteredBlock, context: Context): Couple | undefined {
  if (block.kind === 'stations') {
    return coupleAround(block.letters, context);
  }
  if (block.pairs !== 'swap') {
    return undefined;
  }
  return block.letters
    .map((letter) => placeOf(letter, context))
    .flatMap((place) => coupleOf(place, place))[0];
}

/** Stations stand in a ring: the last is next to the first. */
function coupleAround(letters: readonly Letter[], context: Context): Couple | undefined {
  const places = letters.map((letter) => placeOf(letter, context));
  return places.flatMap((place, index) => {
    const next = places[(index + 1) % places.length];
    return next === undefined ? [] : [...coupleOf(place, next), ...coupleOf(next, place)];
  })[0];
}

function placeOf(letter: Letter, context: Context): Place {
  return {
    id: letter.id,
    moves: letter.moves.flatMap((planned) => {
      const move = knownMove(planned, context);
      return move === undefined ? [] : [{ id: planned.id, move }];
    }),
  };
}

function coupleOf(one: Place, other: Place): readonly Couple[] {
  const throwing = one.moves.find(({ move }) => move.traits.includes('throw'));
  const lying = other.moves.find(({ move }) => isLyingDown(move));
  return throwing && lying ? [{ throwing: throwing.id, lying: lying.id }] : [];
}

type Order = { readonly moved: LineId; readonly place: 'before' | 'after'; readonly beside: LineId };

/** The first move of one station that leaves no such neighbours. */
function orderThatMends(block: LetteredBlock, context: Context): Order | undefined {
  const { letters } = block;
  return letters
    .flatMap((moved) => letters.filter((letter) => letter !== moved).map((beside) => ({ moved, beside })))
    .flatMap(({ moved, beside }) =>
      (['after', 'before'] as const).map((place) => ({ moved: moved.id, place, beside: beside.id })),
    )
    .find((order) => coupleAround(reordered(letters, order), context) === undefined);
}

function reordered(letters: readonly Letter[], { moved, place, beside }: Order): readonly Letter[] {
  const own = letters.filter(({ id }) => id === moved);
  const rest = letters.filter(({ id }) => id !== moved);
  const at = rest.findIndex(({ id }) => id === beside) + (place === 'after' ? 1 : 0);
  return [...rest.slice(0, at), ...own, ...rest.slice(at)];
}
