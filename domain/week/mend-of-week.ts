import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import { kitForMove } from '../catalogue/kit-for-move.ts';
import type { Move } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Context } from '../context.ts';
import { measureLoad } from '../load/measure-load.ts';
import { classLevel, kitAtHand, type PlannedLine, plannedLines } from '../plan/class-facts.ts';
import { labelsByLine } from '../plan/labels.ts';
import type { Plan } from '../plan/plan.ts';
import { editPlan } from '../shorthand/edit-plan.ts';
import { buildTimeline } from '../timing/build-timeline.ts';
import { knownMove } from '../timing/planned-moves.ts';
import { slotNameOf } from './week-class.ts';
import type { WeekMend } from './week-report.ts';

/** A class to come, with the plan it will be taught from. */
export type UpcomingClass = {
  readonly scheduled: ScheduledClass;
  readonly plan: Plan;
  readonly version: number;
};

/** Sets of the week by muscle. */
export type SetsOf = (muscle: Muscle) => number;

/**
 * One swap in the first class to come that can take it: a move for the muscle in the place of one whose
 * prime movers had the most. A swap keeps the class's time. The new move is not above the class's level,
 * needs only kit at hand, is not in the class yet, and does not put two moves for one muscle in a letter.
 */
export function mendOfWeek(
  missing: readonly Muscle[],
  upcoming: readonly UpcomingClass[],
  setsOf: SetsOf,
  context: Context,
): WeekMend | undefined {
  const found = missing.flatMap((muscle) =>
    upcoming.flatMap((one) => {
      const swap = swapFor(muscle, one.plan, setsOf, context);
      return swap === undefined ? [] : (mendOf(one, swap, muscle, context) ?? []);
    }),
  );
  return found[0];
}

function mendOf(
  { scheduled, plan, version }: UpcomingClass,
  { edit, replaces }: Swap,
  muscle: Muscle,
  context: Context,
): WeekMend | undefined {
  const { id: classId, planId, startsAt } = scheduled;
  const { plan: mended } = editPlan(plan, edit, context);
  const gainedSets =
    mended === undefined ? 0 : setsIn(mended, muscle, context) - setsIn(plan, muscle, context);
  return planId === undefined || gainedSets <= 0
    ? undefined
    : {
        classId,
        slotName: slotNameOf(scheduled, context.settings),
        startsAt,
        edit,
        replaces,
        muscle,
        planId,
        version,
        gainedSets,
      };
}

function setsIn(plan: Plan, muscle: Muscle, context: Context): number {
  return measureLoad(plan, buildTimeline(plan, context), context).setsByMuscle[muscle] ?? 0;
}

type Swap = Pick<WeekMend, 'edit' | 'replaces'>;

type Place = { readonly line: PlannedLine; readonly move: Move; readonly sets: number };

function swapFor(muscle: Muscle, plan: Plan, setsOf: SetsOf, context: Context): Swap | undefined {
  const labels = labelsByLine(plan);
  const places = plannedLines(plan)
    .flatMap((line): readonly Place[] => {
      const move = knownMove(line.planned, context);
      const spare = move === undefined ? 0 : Math.min(...move.primeMovers.map(setsOf));
      return move === undefined || !countsSets(move) || move.primeMovers.includes(muscle)
        ? []
        : [{ line, move, sets: spare }];
    })
    .filter(({ sets }) => sets > setsOf(muscle))
    .toSorted((a, b) => b.sets - a.sets);
  for (const { line, move } of places) {
    const candidate = moveFor(muscle, line, move, plan, context);
    const label = labels.get(line.planned.id);
    if (candidate !== undefined && label !== undefined)
      return { edit: `swap ${label} ${candidate.name}`, replaces: move.name };
  }
  return undefined;
}

function moveFor(
  muscle: Muscle,
  { letter, planned }: PlannedLine,
  replaced: Move,
  plan: Plan,
  context: Context,
): Move | undefined {
  const atHand = kitAtHand(plan, context);
  const level = classLevel(plan) ?? replaced.level;
  const used = new Set(plannedLines(plan).flatMap((line) => knownMove(line.planned, context)?.id ?? []));
  const besideIt = letter.moves
    .filter(({ id }) => id !== planned.id)
    .flatMap((other) => knownMove(other, context)?.primeMovers ?? []);
  if (besideIt.includes(muscle)) return undefined;
  return context.catalogue.moves
    .filter(
      (move) =>
        move.primeMovers[0] === muscle &&
        countsSets(move) &&
        !used.has(move.id) &&
        move.level <= level &&
        move.sides === replaced.sides &&
        !move.traits.includes('ballistic') &&
        !move.traits.includes('technical') &&
        kitForMove(move, (item) => atHand.has(item)) !== undefined,
    )
    .toSorted((a, b) => likeness(b, replaced) - likeness(a, replaced))[0];
}

/** Compound moves first, then those that keep people in the same position. */
function likeness(move: Move, replaced: Move): number {
  return (move.traits.includes('compound') ? 2 : 0) + (move.position === replaced.position ? 1 : 0);
}

function countsSets({ effort }: Move): boolean {
  return effort === 'reps';
}
