import { boundsOfWeek, type IsoWeek, isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { balanceOfWeek } from '../../domain/week/balance-of-week.ts';
import { type ComingClass, type ComingWeek, comingWeek } from '../../domain/week/coming-week.ts';
import { compareWeeks, type WeekComparison } from '../../domain/week/compare-weeks.ts';
import type { UpcomingClass } from '../../domain/week/mend-of-week.ts';
import { type PlannedAndTaught, plannedAndTaught } from '../../domain/week/planned-and-taught.ts';
import { type RecoveryConflict, recoveryConflicts } from '../../domain/week/recovery-conflicts.ts';
import { sayingsOf } from '../../domain/week/sayings.ts';
import { type StrainOfWeek, strainOfWeek } from '../../domain/week/strain-of-week.ts';
import { type JudgedClass, judge, type WeekClass } from '../../domain/week/week-class.ts';
import type { ToCome, WeekReport } from '../../domain/week/week-report.ts';
import { type WeekTrend, weekTrend } from '../../domain/week/week-trend.ts';
import type { Desk } from '../handling.ts';
import { classesInWeek } from './classes-in-week.ts';
import { type SayingsOfWeek, sayingsOfWeek } from './sayings-of-week.ts';
import { standingVersion } from './standing-version.ts';

/** Everything the product says of a studio's week, as it stands at `desk.now`. */
export type WholeWeek = SayingsOfWeek & {
  readonly report: WeekReport;
  readonly classes: readonly WeekClass[];
  readonly comparison: WeekComparison;
  /** Four weeks, this one last. */
  readonly trend: WeekTrend;
  readonly conflicts: readonly RecoveryConflict[];
  readonly strain?: StrainOfWeek;
  readonly planned: PlannedAndTaught;
  readonly coming: ComingWeek;
  /** Classes of this week that are still to come. */
  readonly toCome: ToCome;
};

/** Weeks of the trend before the week itself. */
const trendWeeks = [-3, -2, -1] as const;

/** The balance of a week by itself, without what stands beside it. */
export async function weekOfStudio(desk: Desk, week: IsoWeek): Promise<WeekReport> {
  const { settings, catalogue, now } = desk;
  return balanceOfWeek(await classesWithLoad(desk, week), { week, settings, catalogue, now });
}

export async function wholeWeekOfStudio(desk: Desk, week: IsoWeek): Promise<WholeWeek> {
  const { settings, catalogue, now } = desk;
  const classes = await classesWithLoad(desk, week);
  const report = balanceOfWeek(classes, {
    week,
    settings,
    catalogue,
    now,
    ...(await upcomingClasses(desk)),
  });
  const earlier: WeekReport[] = [];
  for (const offset of trendWeeks) earlier.push(await weekOfStudio(desk, weekAfter(week, offset)));
  const before = earlier.at(-1);
  const judged = classes.map((one) => judge(one, { week, settings, now }));
  const strain = strainOfWeek(judged);
  return {
    report,
    classes,
    comparison: before === undefined ? { kind: 'unknown' } : compareWeeks(before, report),
    trend: weekTrend([...earlier, report]),
    conflicts: recoveryConflicts(judged, settings),
    ...(strain === undefined ? {} : { strain }),
    planned: plannedAndTaught(judged, settings),
    toCome: toComeOf(judged),
    coming: await comingWeekOf(desk, weekAfter(week)),
    ...(await sayingsOfWeek(desk, week, sayingsOf(report))),
  };
}

function toComeOf(judged: readonly JudgedClass[]): ToCome {
  const toCome = judged.filter(({ held }) => held === 'to come');
  return { classes: toCome.length, withPlan: toCome.filter(({ planned }) => planned !== undefined).length };
}

async function classesWithLoad(desk: Desk, week: IsoWeek): Promise<readonly WeekClass[]> {
  const { from, to } = boundsOfWeek(week, desk.settings.zone);
  const counted = await desk.stores.classes.listLoadBetween(desk.studioId, from, to);
  const byClass = new Map(counted.map((each) => [each.classId, each]));
  const classes: WeekClass[] = [];
  for (const scheduled of await classesInWeek(desk, week)) {
    const known = byClass.get(scheduled.id);
    const version = await standingVersion(desk, scheduled);
    classes.push({
      scheduled,
      ...(known === undefined ? {} : { load: known.load, setsByPattern: known.setsByPattern }),
      ...(version === undefined ? {} : { planned: version.load }),
    });
  }
  return classes;
}

async function comingWeekOf(desk: Desk, week: IsoWeek): Promise<ComingWeek> {
  const classes: ComingClass[] = [];
  for (const scheduled of await classesInWeek(desk, week)) classes.push(await comingClass(desk, scheduled));
  return comingWeek(week, classes, desk.settings);
}

async function comingClass(desk: Desk, scheduled: ScheduledClass): Promise<ComingClass> {
  const { planId } = scheduled;
  const { plans } = desk.stores;
  const record = planId === undefined ? undefined : await plans.find(desk.studioId, planId);
  if (record === undefined) return { scheduled, standing: 'no plan' };
  const { approvedVersion } = record;
  const approved =
    approvedVersion === undefined
      ? undefined
      : await plans.findVersion(desk.studioId, record.id, approvedVersion);
  if (approved !== undefined) return { scheduled, standing: 'approved', approvedLoad: approved.load };
  return { scheduled, standing: record.state === 'in review' ? 'waits' : 'draft' };
}

type Upcoming = {
  readonly upcoming: readonly UpcomingClass[];
  readonly withoutPlan: readonly ScheduledClass[];
};

/** Classes still to come this week and the next: those whose plan can take an edit, and those without one. */
async function upcomingClasses(desk: Desk): Promise<Upcoming> {
  const week = isoWeekOf(desk.now, desk.settings.zone);
  const upcoming: UpcomingClass[] = [];
  const withoutPlan: ScheduledClass[] = [];
  for (const each of [week, weekAfter(week)]) {
    for (const scheduled of await classesInWeek(desk, each)) {
      const { planId } = scheduled;
      if (scheduled.startsAt.instant <= desk.now || scheduled.state === 'cancelled') continue;
      if (planId === undefined) {
        withoutPlan.push(scheduled);
        continue;
      }
      const record = await desk.stores.plans.find(desk.studioId, planId);
      const version =
        record && (await desk.stores.plans.findVersion(desk.studioId, planId, record.currentVersion));
      if (version?.plan === undefined || version.problemCount > 0) continue;
      upcoming.push({ scheduled, plan: version.plan, version: version.version });
    }
  }
  return { upcoming, withoutPlan };
}
