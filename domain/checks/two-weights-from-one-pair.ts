import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import { hasLetters } from '../plan/blocks-of.ts';
import { roomOf } from '../plan/class-facts.ts';
import type { LetteredBlock, LineId, Plan, PlannedMove, Weight } from '../plan/plan.ts';
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

type Couple = { readonly one: Loaded; readonly other: Loaded };

/**
 * Moves done back to back ask for two different weights of one kind of kit, and the room is not known to
 * have both for everyone.
 */
export function twoWeightsFromOnePair(
  { plan }: CheckSubject,
  context: Context,
): readonly TwoWeightsFromOnePair[] {
  const kitOf = movesByLine(plan, context);
  const places = plan.blocks
    .filter(hasLetters)
    .flatMap((block) => backToBack(block).map((moves) => coupleIn(moves, kitOf)))
    .filter((found) => found.length > 0);
  const couples = places.flat();
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
      ...mendWith(places.length === 1 ? oneWeight(couples, plan) : undefined),
    },
  ];
}

/** Everyone keeps what they hold: the lightest weight for all of them, where it is one kind of kit. */
function oneWeight(couples: readonly Couple[], plan: Plan): string | undefined {
  const [first] = couples;
  if (first === undefined || couples.some(({ one }) => one.item !== first.one.item)) return undefined;
  const lines = couples.flatMap(({ one, other }) => [one, other]);
  const wanted = weightWords(lines.map(({ weight }) => weight).reduce(lighterOf));
  const others = lines.filter(
    ({ planned, weight }, at) =>
      weightWords(weight) !== wanted && lines.findIndex((line) => line.planned.id === planned.id) === at,
  );
  return others.map(({ planned }) => `weight ${labelOf(plan, planned.id)} ${wanted}`).join('\n');
}

const feels = ['light', 'medium', 'heavy'] as const;

/** The lighter of two; the first where they can't be compared. */
function lighterOf(one: Weight, other: Weight): Weight {
  const isLighter =
    one.kind === 'feel' && other.kind === 'feel'
      ? feels.indexOf(other.feel) < feels.indexOf(one.feel)
      : one.kind === 'mass' && other.kind === 'mass' && one.unit === other.unit && other.amount < one.amount;
  return isLighter ? other : one;
}

/** Moves with no time between them to fetch another weight. */
function backToBack(block: LetteredBlock): readonly (readonly PlannedMove[])[] {
  const isOneStretch = block.kind === 'amrap' || block.kind === 'for time' || block.kind === 'ladder';
  return isOneStretch
    ? [block.letters.flatMap(({ moves }) => moves)]
    : block.letters.filter(({ order }) => order === 'in turn').map(({ moves }) => moves);
}

function coupleIn(moves: readonly PlannedMove[], kitOf: ReadonlyMap<LineId, MoveInPlan>): readonly Couple[] {
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
