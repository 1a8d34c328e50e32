import type { KitItem } from '../catalogue/kit.ts';
import type { Position } from '../catalogue/move.ts';
import type { Plan, Weight } from '../plan/plan.ts';
import type { TransitionSettings } from '../settings.ts';
import { type MoveInPlan, movesByLine } from './planned-moves.ts';
import type { LateStart, Segment } from './timeline.ts';
import type { TimingContext } from './timing-context.ts';

/** One end of a change-over: a move, and the side it is done on. */
export type TransitionEnd = Pick<MoveInPlan, 'planned' | 'known' | 'kit'> & {
  readonly side?: Segment['side'];
};

/** Seconds to get from one bout to the next, in whole seconds; 0 where either move is not known. */
export function transitionSeconds(
  from: TransitionEnd,
  to: TransitionEnd,
  firstRound: boolean,
  settings: TransitionSettings,
): number {
  if (from.known === undefined || to.known === undefined) return 0;
  const seconds =
    kitSeconds(from, to, settings) +
    positionSeconds(from.known.position, to.known.position, settings) +
    (changesSide(from.side, to.side) ? settings.sideSeconds : 0);
  const learning = seconds > 0 && firstRound && from.planned.id !== to.planned.id;
  return Math.round((seconds + (learning ? settings.firstRoundExtraSeconds : 0)) * settings.factor);
}

/** The bouts that a change-over eats into, in the order taught; before the first bout there is no need. */
export function lateStarts(
  plan: Plan,
  segments: readonly Segment[],
  context: TimingContext,
): readonly LateStart[] {
  const moves = movesByLine(plan, context);
  const work = segments.filter(({ kind }) => kind === 'work');
  return work.slice(1).flatMap((bout, index): readonly LateStart[] => {
    const before = work[index];
    const from = moves.get(before?.move ?? before?.sharedBy?.at(-1) ?? '');
    const to = moves.get(bout.move ?? bout.sharedBy?.[0] ?? '');
    if (before === undefined || from === undefined || to === undefined) return [];
    const needSeconds = transitionSeconds(
      endOf(from, before),
      endOf(to, bout),
      (bout.round ?? 1) === 1,
      context.settings.transitions,
    );
    const gapSeconds = bout.startSeconds - before.endSeconds;
    const lateSeconds = Math.min(needSeconds - gapSeconds, bout.endSeconds - bout.startSeconds);
    if (lateSeconds <= 0) return [];
    const place = { letter: to.letter.id, move: to.planned.id, startSeconds: bout.startSeconds };
    return [{ ...place, needSeconds, gapSeconds, lateSeconds }];
  });
}

function endOf({ planned, known, kit }: MoveInPlan, { side }: Segment): TransitionEnd {
  return { planned, kit, ...(known === undefined ? {} : { known }), ...(side === undefined ? {} : { side }) };
}

function changesSide(from: Segment['side'], to: Segment['side']): boolean {
  return (from === 'right' && to === 'left') || (from === 'left' && to === 'right');
}

/** What stays where it is while people move; all else is held. */
const standsOnTheFloor: ReadonlySet<KitItem> = new Set(['mat', 'bench', 'step', 'box', 'chair']);

function heldPieces({ kit }: TransitionEnd): ReadonlyMap<KitItem, number> {
  const held = kit.filter(({ item }) => !standsOnTheFloor.has(item));
  return new Map(held.map(({ item, pieces }) => [item, pieces]));
}

function kitSeconds(from: TransitionEnd, to: TransitionEnd, settings: TransitionSettings): number {
  const had = heldPieces(from);
  const needs = heldPieces(to);
  const otherWeight = had.size > 0 && needs.size > 0 && weightsDiffer(from.planned.weight, to.planned.weight);
  const puts = otherWeight || [...had].some(([item, pieces]) => pieces > (needs.get(item) ?? 0));
  const picks = otherWeight || [...needs].some(([item, pieces]) => pieces > (had.get(item) ?? 0));
  if (puts && picks) return settings.swapSeconds;
  if (puts) return settings.putDownSeconds;
  return picks ? settings.pickUpSeconds : 0;
}

function weightsDiffer(one: Weight | undefined, other: Weight | undefined): boolean {
  if (one === undefined || other === undefined || one.kind !== other.kind) return false;
  return one.kind === 'mass' && other.kind === 'mass'
    ? one.amount !== other.amount || one.unit !== other.unit
    : one.kind === 'feel' && other.kind === 'feel' && one.feel !== other.feel;
}

function positionSeconds(from: Position, to: Position, settings: TransitionSettings): number {
  if (from === to) return 0;
  if (from !== 'standing' && to !== 'standing') return settings.floorTurnSeconds;
  return from === 'kneeling' || to === 'kneeling' ? settings.standKneelSeconds : settings.standFloorSeconds;
}
