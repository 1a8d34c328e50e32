import type { PlanId, ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import {
  type ClassProblems,
  type ClassReport,
  reportOnClass,
  reportOnPlan,
} from '../../domain/class-report.ts';
import type { Context } from '../../domain/context.ts';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import type { Desk } from '../handling.ts';
import { classesNearby } from './classes-nearby.ts';

/** A plan as it stands: its record, one version of it, the report on that, and its next class. */
export type OpenPlan = {
  readonly record: PlanRecord;
  readonly version: PlanVersion;
  readonly report: ClassReport | ClassProblems;
  readonly scheduled?: ScheduledClass;
};

/** What every stage of the domain may know, for this studio and, where given, this plan. */
export async function contextFor(desk: Desk, planId?: PlanId): Promise<Context> {
  const { studioId, stores, catalogue, settings, now } = desk;
  const dismissed = planId === undefined ? [] : await stores.plans.listDismissed(studioId, planId);
  const nearby = planId === undefined ? {} : await classesNearby(desk, await classOfPlan(desk, planId));
  return {
    catalogue,
    settings,
    now,
    movesTaught: await stores.classes.listMovesTaught(studioId),
    dismissed: new Set(dismissed),
    ...nearby,
  };
}

/** The class a plan is for: the next one, else the last. */
async function classOfPlan(desk: Desk, planId: PlanId): Promise<ScheduledClass | undefined> {
  const classes = await desk.stores.classes.findByPlan(desk.studioId, planId);
  const live = classes.filter(({ state }) => state !== 'cancelled');
  return live.find(({ startsAt }) => startsAt.instant >= desk.now) ?? live.at(-1);
}

/** The current version of a plan, or the one asked for; undefined where there is none. */
export async function openPlan(desk: Desk, planId: PlanId, version?: number): Promise<OpenPlan | undefined> {
  const record = await desk.stores.plans.find(desk.studioId, planId);
  if (record === undefined) return undefined;
  const stored = await desk.stores.plans.findVersion(desk.studioId, planId, version ?? record.currentVersion);
  if (stored === undefined) return undefined;
  const context = await contextFor(desk, planId);
  return withClass(desk, { record, version: stored, report: reportOnVersion(stored, context) });
}

/** The plan whose draft lives in this thread, however the thread came about. */
export async function findPlanInThread(
  desk: Desk,
  place: string,
  thread: string,
): Promise<PlanId | undefined> {
  const { plans, notices } = desk.stores;
  const byHome = await plans.findByHome(desk.studioId, { place, thread });
  if (byHome !== undefined) return byHome.id;
  const notice = await notices.findBySentTo(desk.studioId, place, thread);
  return notice === undefined ? undefined : planOfNoticeKey(notice.key);
}

/** Keys of notices about a plan read `kind:plan:…`. */
function planOfNoticeKey(key: string): PlanId | undefined {
  const [kind, planId] = key.split(':');
  return kind === 'text' || kind === 'card' || kind === 'review' || kind === 'answer' ? planId : undefined;
}

export async function withClass(desk: Desk, open: Omit<OpenPlan, 'scheduled'>): Promise<OpenPlan> {
  const next = await classOfPlan(desk, open.record.id);
  return next === undefined ? open : { ...open, scheduled: next };
}

/** A stored version is told again from its data; one with unread lines from its text. */
export function reportOnVersion(version: PlanVersion, context: Context): ClassReport | ClassProblems {
  return version.problemCount === 0 && version.plan !== undefined
    ? reportOnPlan(version.plan, context)
    : reportOnClass(version.text, context);
}
