import { type Clash, clashesOf, type PlannedClass } from '../../domain/calendar/clashes.ts';
import type { ClassToCome } from '../../domain/calendar/facts-of-class.ts';
import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { inertText } from '../blocks/escape.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';
import { standingVersion } from './standing-version.ts';

/** What a class clashes with as it stands, in words that name the other classes; one line a clash. `reader`: whom it is said to. */
export async function clashesWith(
  desk: Desk,
  scheduled: ScheduledClass,
  reader?: string,
): Promise<readonly string[]> {
  const week = isoWeekOf(scheduled.startsAt.instant, desk.settings.zone);
  const others: PlannedClass[] = [];
  for (const each of await classesInWeek(desk, week)) {
    const distance = Date.parse(each.startsAt.instant) - Date.parse(scheduled.startsAt.instant);
    if (each.id !== scheduled.id && Math.abs(distance) < 86_400_000) others.push(await planned(desk, each));
  }
  return clashLines(desk, clashesOf(await planned(desk, scheduled), others, desk), others, reader);
}

/** The same among classes that are at hand with their plans. */
export function clashesAmong(
  desk: Desk,
  { scheduled, plan }: ClassToCome,
  classes: readonly ClassToCome[],
): readonly string[] {
  const withPlan = (one: ClassToCome): PlannedClass => ({
    scheduled: one.scheduled,
    ...(one.plan.approved === undefined ? {} : { plan: one.plan.approved }),
  });
  const others = classes.map(withPlan);
  return clashLines(desk, clashesOf(withPlan({ scheduled, plan }), others, desk), others);
}

function clashLines(
  desk: Desk,
  clashes: readonly Clash[],
  others: readonly PlannedClass[],
  reader?: string,
): readonly string[] {
  const nameOf = (id: string) => {
    const other = others.find(({ scheduled }) => scheduled.id === id)?.scheduled;
    return other === undefined ? desk.words.classes.untitled : desk.words.classes.named(other, inertText);
  };
  return clashes.map((clash) =>
    desk.words.classes.clash(
      clash,
      (typeof clash.with === 'string' ? [clash.with] : clash.with).map(nameOf),
      reader,
    ),
  );
}

async function planned(desk: Desk, scheduled: ScheduledClass): Promise<PlannedClass> {
  const plan = (await standingVersion(desk, scheduled))?.plan;
  return { scheduled, ...(plan === undefined ? {} : { plan }) };
}
