import type { Move } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import { labelsByLine } from '../plan/labels.ts';
import { moveInPlaceOf } from '../plan/move-in-place.ts';
import type { LineId, Plan } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import { secondsToTheEnd } from './edges-of-class.ts';
import type { Turn } from './turn.ts';

/** A finding's `mend`, or nothing to spread where no single edit mends it. */
export function mendWith(edit: string | undefined): { readonly mend?: string } {
  return edit === undefined ? {} : { mend: edit };
}

/** What a line is called in an edit: `B`, `B2`. */
export function labelOf(plan: Plan, line: LineId): string {
  return labelsByLine(plan).get(line) ?? '';
}

/**
 * The first exchange of two moves of one block, one of them among `concerned`, that mends: `swap B with D`.
 * `isMended` judges the turns as they would be.
 */
export function swapThatMends(
  plan: Plan,
  turns: readonly Turn[],
  concerned: readonly LineId[],
  isMended: (turns: readonly Turn[]) => boolean,
): string | undefined {
  const places = turns.filter(
    (turn, index) => turns.findIndex(({ planned }) => planned.id === turn.planned.id) === index,
  );
  const pairs = places
    .filter(({ planned }) => concerned.includes(planned.id))
    .flatMap((one) =>
      places
        .filter((other) => other.blockIndex === one.blockIndex && other.move?.id !== one.move?.id)
        .map((other) => ({ one, other })),
    );
  const found = pairs.find(({ one, other }) => isMended(turns.map((turn) => exchanged(turn, one, other))));
  return found && `swap ${labelOf(plan, found.one.planned.id)} with ${labelOf(plan, found.other.planned.id)}`;
}

/** The bout and its kit go along with the move: half the time where that move's sides share it. */
function exchanged(turn: Turn, one: Turn, other: Turn): Turn {
  const source =
    turn.planned.id === one.planned.id ? other : turn.planned.id === other.planned.id ? one : turn;
  const { move: _own, ...rest } = turn;
  const { move, kit, boutSeconds } = source;
  return { ...rest, kit, boutSeconds, ...(move === undefined ? {} : { move }) };
}

/** An edit that puts a fitting move, done on the same sides, in a line's place; nothing where there is none. */
export function swapForOneLike(
  move: Move,
  line: LineId,
  { plan }: CheckSubject,
  context: Context,
  fits: (candidate: Move) => boolean,
): string | undefined {
  const other = moveInPlaceOf(move, plan, context, (one) => one.sides === move.sides && fits(one));
  return swapFor(plan, line, other);
}

/** More swaps than this at once are another class. */
const mostSwaps = 3;

/** The same for several lines, a line of the edit each and no move twice; nothing where one of them has none. */
export function swapsForOnesLike(
  lines: readonly { readonly line: LineId; readonly move: Move }[],
  { plan }: CheckSubject,
  context: Context,
  fits: (candidate: Move) => boolean,
): string | undefined {
  if (lines.length > mostSwaps) return undefined;
  const picked: Move[] = [];
  for (const { move } of lines) {
    const isFree = (one: Move) => one.sides === move.sides && !picked.includes(one) && fits(one);
    const other = moveInPlaceOf(move, plan, context, isFree);
    if (other === undefined) return undefined;
    picked.push(other);
  }
  return lines.map(({ line }, place) => swapFor(plan, line, picked[place])).join('\n');
}

/** A line with the move on it, where that is known. */
export function linesWithMoves(
  lines: readonly LineId[],
  plan: Plan,
  context: Context,
): readonly { readonly line: LineId; readonly move: Move }[] {
  return plannedLines(plan).flatMap(({ planned }) => {
    const move = lines.includes(planned.id) ? knownMove(planned, context) : undefined;
    return move === undefined ? [] : [{ line: planned.id, move }];
  });
}

/** `swap B1 front squat`, or nothing where no move fits. */
export function swapFor(plan: Plan, line: LineId, move: Move | undefined): string | undefined {
  return move && `swap ${labelOf(plan, line)} ${move.name}`;
}

/** Seconds the class may grow by: what is spare, and what a cool-down *to the end* has above the least. */
export function secondsToGrow(subject: CheckSubject, context: Context): number {
  const { leastCoolDownSeconds } = context.settings.floors;
  const above = secondsToTheEnd(subject) - leastCoolDownSeconds;
  return subject.fit.spareSeconds + Math.max(0, above);
}
