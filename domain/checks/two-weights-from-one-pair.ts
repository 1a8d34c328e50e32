import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { roomOf } from '../plan/class-facts.ts';
import type { LetteredBlock, LineId, PlannedMove, Weight } from '../plan/plan.ts';
import { type MoveInPlan, movesByLine } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith } from './mends.ts';

export type TwoWeightsFromOnePair = FindingBase & {
  readonly code: 'two-weights-from-one-pair';
  readonly first: LineId;
  readonly second: LineId;
  readonly item: KitItem;
};

type Loaded = {
  readonly planned: PlannedMove;
  readonly weight: Weight;
  readonly item: KitItem;
  readonly pieces: number;
};

/**
 * Moves done back to back ask for two different weights of one kind of kit, and the room is not known to
 * have both for everyone.
 */
export function twoWeightsFromOnePair(
  { plan }: CheckSubject,
  context: Context,
): readonly TwoWeightsFromOnePair[] {
  const kitOf = movesByLine(plan, context);
  const couples = plan.blocks
    .filter(hasLetters)
    .flatMap((block) => backToBack(block).flatMap((moves) => coupleIn(moves, kitOf)));
  const short = couples.find(({ one, other }) => {
    const pieces = roomOf(plan, context)?.kit[one.item];
    const { people } = plan.facts;
    return pieces === undefined || people === undefined || pieces < people * (one.pieces + other.pieces);
  });
  if (short === undefined) {
    return [];
  }
  const { one, other } = short;
  return [
    {
      code: 'two-weights-from-one-pair',
      severity: 'look at',
      lines: [one.planned.id, other.planned.id],
      source: 'common practice',
      first: one.planned.id,
      second: other.planned.id,
      item: one.item,
      ...mendWith(
        couples.length === 1
          ? `weight ${labelOf(plan, other.planned.id)} ${weightWords(one.weight)}`
          : undefined,
      ),
    },
  ];
}

/** Moves with no time between them to fetch another weight. */
function backToBack(block: LetteredBlock): readonly (readonly PlannedMove[])[] {
  const isOneStretch = block.kind === 'amrap' || block.kind === 'for time' || block.kind === 'ladder';
  return isOneStretch
    ? [block.letters.flatMap(({ moves }) => moves)]
    : block.letters.filter(({ order }) => order === 'in turn').map(({ moves }) => moves);
}

function coupleIn(
  moves: readonly PlannedMove[],
  kitOf: ReadonlyMap<LineId, MoveInPlan>,
): readonly { readonly one: Loaded; readonly other: Loaded }[] {
  const loaded = moves.flatMap((planned) => loadedLine(planned, kitOf));
  const couples = loaded.flatMap((one, index) =>
    loaded.slice(index + 1).flatMap((other) => ({ one, other })),
  );
  return couples.filter(
    ({ one, other }) => one.item === other.item && weightWords(one.weight) !== weightWords(other.weight),
  );
}

function loadedLine(planned: PlannedMove, kitOf: ReadonlyMap<LineId, MoveInPlan>): readonly Loaded[] {
  const need = kitOf
    .get(planned.id)
    ?.kit.find(({ item }) => item === 'dumbbell' || item === 'kettlebell' || item === 'barbell');
  return need === undefined || planned.weight === undefined
    ? []
    : [{ planned, weight: planned.weight, ...need }];
}

function weightWords(weight: Weight): string {
  return weight.kind === 'feel' ? weight.feel : `${weight.amount}${weight.unit}`;
}
