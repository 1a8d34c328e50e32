import { weekdays } from '../calendar/iso-week.ts';
import type { Settings, SlotHabit, WeeklySlot } from '../settings.ts';
import { doseRange, groupsUnderTwoDays } from './dose-range.ts';
import { hasLoad, type JudgedClass, setsByDay, setsIn, wasHeld } from './week-class.ts';
import type { HabitRange, HabitWeek } from './week-report.ts';

/** The studio's habits, else every pair and triple of weekly slots that one person can come to. */
export function slotHabitsOf({ slotHabits, slots }: Settings): readonly SlotHabit[] {
  if (slotHabits.length > 0) return slotHabits;
  const pairs = slots.flatMap((a, place) =>
    slots.slice(place + 1).flatMap((b) => (meet(a, b) ? [] : [[a, b] as const])),
  );
  const triples = pairs.flatMap(([a, b]) =>
    slots.slice(slots.indexOf(b) + 1).flatMap((c) => (meet(a, c) || meet(b, c) ? [] : [[a, b, c] as const])),
  );
  return [...pairs, ...triples].map((each) => ({
    name: each.map(({ name }) => name).join(' + '),
    slotIds: each.map(({ id }) => id),
  }));
}

/**
 * What members were left short of, by slot habit. A habit with a class whose load is not known can't be
 * judged and is left out; undefined where none can.
 */
export function habitRange(classes: readonly JudgedClass[], settings: Settings): HabitRange | undefined {
  const judged = slotHabitsOf(settings)
    .flatMap((habit) => habitWeek(habit, classes, settings) ?? [])
    .toSorted(
      (a, b) => b.missingSets - a.missingSets || b.groupsUnderTwoDays.length - a.groupsUnderTwoDays.length,
    );
  const [worst, median, best] = [judged[0], judged[Math.floor((judged.length - 1) / 2)], judged.at(-1)];
  return worst === undefined || median === undefined || best === undefined
    ? undefined
    : { counted: judged.length, worst, median, best };
}

function habitWeek(
  { name, slotIds }: SlotHabit,
  classes: readonly JudgedClass[],
  { dose, firstPriority }: Settings,
): HabitWeek | undefined {
  const attended = classes.filter(({ scheduled: { slotId = '' } }) => slotIds.includes(slotId));
  const held = attended.filter(wasHeld);
  const isOpen = attended.some((one) => one.held === 'to come' || one.held === 'not known');
  if (isOpen || held.length === 0 || !held.every(hasLoad)) return undefined;
  const doses = firstPriority.map((muscle) => ({ muscle, sets: setsIn(held, muscle) }));
  const short = doses
    .map(({ muscle, sets }) => ({ muscle, sets, missingSets: Math.max(0, dose.low - sets) }))
    .filter(({ missingSets }) => missingSets > 0)
    .toSorted((a, b) => b.missingSets - a.missingSets);
  return {
    name,
    slotIds,
    short,
    missingSets: short.reduce((missing, each) => missing + each.missingSets, 0),
    groupsUnderTwoDays: groupsUnderTwoDays((muscle) => setsByDay(held, muscle)).map(({ group }) => group),
    veryHigh: doses.filter(({ sets }) => doseRange(sets, dose) === 'very high').map(({ muscle }) => muscle),
  };
}

/** Whether two weekly slots overlap, so that nobody comes to both. */
function meet(a: WeeklySlot, b: WeeklySlot): boolean {
  const [first, second] = [startOf(a), startOf(b)];
  return first < second ? first + a.seconds > second : second + b.seconds > first;
}

/** Seconds from Monday 00:00 by the clock on the wall. */
function startOf({ weekday, time }: WeeklySlot): number {
  const [hours = '0', minutes = '0'] = time.split(':');
  return (weekdays.indexOf(weekday) * 24 + Number(hours)) * 3600 + Number(minutes) * 60;
}
