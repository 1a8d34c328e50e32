import { boundsOfWeek, type IsoWeek, isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import { balanceOfWeek } from '../../domain/week/balance-of-week.ts';
import type { UpcomingClass } from '../../domain/week/mend-of-week.ts';
import type { WeekClass } from '../../domain/week/week-class.ts';
import type { WeekReport } from '../../domain/week/week-report.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';

/** The balance of a studio's week as it stands at `desk.now`. */
export async function weekOfStudio(desk: Desk, week: IsoWeek): Promise<WeekReport> {
  const { settings, catalogue, now } = desk;
  return balanceOfWeek(await classesWithLoad(desk, week), {
    week,
    settings,
    catalogue,
    now,
    upcoming: await upcomingClasses(desk),
  });
}

async function classesWithLoad(desk: Desk, week: IsoWeek): Promise<readonly WeekClass[]> {
  const { from, to } = boundsOfWeek(week, desk.settings.zone);
  const counted = await desk.stores.classes.listLoadBetween(desk.studioId, from, to);
  const byClass = new Map(counted.map((each) => [each.classId, each]));
  return (await classesInWeek(desk, week)).map((scheduled) => {
    const known = byClass.get(scheduled.id);
    return known === undefined
      ? { scheduled }
      : { scheduled, load: known.load, setsByPattern: known.setsByPattern };
  });
}

/** Classes still to come this week and the next whose plan can take an edit. */
async function upcomingClasses(desk: Desk): Promise<readonly UpcomingClass[]> {
  const week = isoWeekOf(desk.now, desk.settings.zone);
  const upcoming: UpcomingClass[] = [];
  for (const each of [week, weekAfter(week)]) {
    for (const scheduled of await classesInWeek(desk, each)) {
      const { planId } = scheduled;
      if (scheduled.startsAt.instant <= desk.now || planId === undefined || scheduled.state === 'cancelled')
        continue;
      const record = await desk.stores.plans.find(desk.studioId, planId);
      const version =
        record && (await desk.stores.plans.findVersion(desk.studioId, planId, record.currentVersion));
      if (version?.plan === undefined || version.problemCount > 0) continue;
      upcoming.push({ scheduled, plan: version.plan, version: version.version });
    }
  }
  return upcoming;
}
