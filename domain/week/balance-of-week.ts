import type { ScheduledClass } from '../calendar/scheduled-class.ts';
import type { Catalogue } from '../catalogue/catalogue.ts';
import { type Muscle, muscles } from '../catalogue/muscles.ts';
import { patterns } from '../catalogue/patterns.ts';
import { doseRange, groupsUnderTwoDays, trainedDays } from './dose-range.ts';
import { exceptionsOfWeek } from './exceptions-of-week.ts';
import { mendOfWeek, type UpcomingClass } from './mend-of-week.ts';
import { planWish } from './plan-wish.ts';
import { habitRange } from './slot-habits.ts';
import {
  type Held,
  hasLoad,
  type JudgedClass,
  judge,
  setsByDay,
  setsIn,
  slotNameOf,
  type WeekClass,
  type WeekContext,
  wasHeld,
} from './week-class.ts';
import type { MuscleWeek, SlotSets, SlotWeek, Trust, UnderTrained, WeekReport } from './week-report.ts';

/** `upcoming`: classes to come with plans, soonest first, in which the report may propose an edit.
 * `withoutPlan`: classes to come that have none yet. */
export type BalanceContext = WeekContext & {
  readonly catalogue: Catalogue;
  readonly upcoming?: readonly UpcomingClass[];
  readonly withoutPlan?: readonly ScheduledClass[];
};

/**
 * The balance of one ISO week from its classes, as far as they are held at `context.now`: sets are interval
 * sets, days those of the studio's zone. `classes` are those that start in the week.
 */
export function balanceOfWeek(classes: readonly WeekClass[], context: BalanceContext): WeekReport {
  const judged = classes.map((one) => judge(one, context));
  const held = judged.filter(wasHeld);
  const known = held.filter(hasLoad);
  const balance = muscles.map((muscle) => muscleWeek(muscle, known, context));
  const underTrained = known.length === 0 ? [] : underTrainedOf(balance, known, context);
  const missing = underTrained.flatMap((each) => (each.kind === 'muscle' ? [each.muscle] : []));
  const sets = (muscle: Muscle) => balance.find((each) => each.muscle === muscle)?.sets ?? 0;
  const mend = mendOfWeek(missing, context.upcoming ?? [], sets, context);
  const wish = mend === undefined ? planWish(missing, context.withoutPlan ?? [], context) : undefined;
  const habits = habitRange(judged, context.settings);
  return {
    week: context.week,
    trust: trustOf(judged),
    muscles: balance,
    classesByPattern: classesByPattern(held),
    underTrained,
    slots: slotWeeks(held, context),
    exceptions: exceptionsOfWeek(judged, context.settings),
    ...(mend === undefined ? {} : { mend }),
    ...(wish === undefined ? {} : { wish }),
    ...(habits === undefined ? {} : { habits }),
  };
}

function trustOf(judged: readonly JudgedClass[]): Trust {
  const held = judged.filter(wasHeld);
  const count = (wanted: Held) => judged.filter((one) => one.held === wanted).length;
  return {
    classes: held.length,
    withPlan: held.filter(hasLoad).length,
    assumed: count('assumed'),
    patternsOnly: held.filter((one) => !hasLoad(one) && Object.keys(one.setsByPattern ?? {}).length > 0)
      .length,
    cancelled: count('cancelled'),
    notTaught: count('not taught'),
  };
}

function muscleWeek(muscle: Muscle, known: readonly JudgedClass[], { settings }: WeekContext): MuscleWeek {
  const byDay = setsByDay(known, muscle);
  const sets = byDay.reduce((sum, day) => sum + day, 0);
  const rows = known.flatMap(({ load = [] }) => load).filter((row) => row.muscle === muscle);
  return {
    muscle,
    sets,
    tensionSeconds: rows.reduce((sum, row) => sum + row.tensionSeconds, 0),
    days: trainedDays(byDay).length,
    setsByDay: byDay,
    range: doseRange(sets, settings.dose),
    priority: settings.firstPriority.includes(muscle) ? 'first' : 'second',
  };
}

function underTrainedOf(
  balance: readonly MuscleWeek[],
  known: readonly JudgedClass[],
  context: WeekContext,
): readonly UnderTrained[] {
  const { dose, firstPriority } = context.settings;
  const short = balance
    .flatMap(({ muscle, sets, range, priority }): readonly Extract<UnderTrained, { kind: 'muscle' }>[] =>
      priority === 'first' && (range === 'none' || range === 'low')
        ? [
            {
              kind: 'muscle',
              muscle,
              sets,
              missingSets: dose.low - sets,
              range,
              from: slotsThatGave(muscle, known, context),
            },
          ]
        : [],
    )
    .toSorted(
      (a, b) =>
        b.missingSets - a.missingSets || firstPriority.indexOf(a.muscle) - firstPriority.indexOf(b.muscle),
    );
  const byDay = (muscle: Muscle) => balance.find((each) => each.muscle === muscle)?.setsByDay ?? [];
  const groups = groupsUnderTwoDays(byDay).map((each) => ({ kind: 'group', ...each }) as const);
  return [...short, ...groups];
}

function slotsThatGave(
  muscle: Muscle,
  known: readonly JudgedClass[],
  context: WeekContext,
): readonly SlotSets[] {
  return slotNames(known, context)
    .map((slotName) => ({
      slotName,
      sets: setsIn(inSlot(known, slotName, context), muscle),
    }))
    .filter(({ sets }) => sets > 0)
    .toSorted((a, b) => b.sets - a.sets);
}

function slotWeeks(held: readonly JudgedClass[], context: WeekContext): readonly SlotWeek[] {
  return slotNames(held, context).map((slotName) => {
    const classes = inSlot(held, slotName, context);
    const rows = classes.flatMap(({ load = [] }) => load);
    return { slotName, classes: classes.length, sets: rows.reduce((sum, { sets }) => sum + sets, 0) };
  });
}

function slotNames(classes: readonly JudgedClass[], { settings }: WeekContext): readonly string[] {
  return [...new Set(classes.map(({ scheduled }) => slotNameOf(scheduled, settings)))];
}

function inSlot(
  classes: readonly JudgedClass[],
  slotName: string,
  { settings }: WeekContext,
): readonly JudgedClass[] {
  return classes.filter(({ scheduled }) => slotNameOf(scheduled, settings) === slotName);
}

function classesByPattern(held: readonly JudgedClass[]): WeekReport['classesByPattern'] {
  return Object.fromEntries(
    patterns
      .map(
        (pattern) =>
          [
            pattern,
            held.filter(({ setsByPattern = {} }) => (setsByPattern[pattern] ?? 0) > 0).length,
          ] as const,
      )
      .filter(([, classes]) => classes > 0),
  );
}
