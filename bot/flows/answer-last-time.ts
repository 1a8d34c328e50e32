import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import type { Plan } from '../../domain/plan/plan.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import { changesBetween } from '../../domain/shorthand/changes-between.ts';
import { printPlan } from '../../domain/shorthand/print-plan.ts';
import { readPlan } from '../../domain/shorthand/read-plan.ts';
import { inertText } from '../blocks/escape.ts';
import { inSeveral } from '../blocks/in-several.ts';
import type { Desk, Message } from '../handling.ts';
import { contextFor, type OpenPlan } from './open-plan.ts';

/** What changed in this class since it was last taught: this plan, else the last one of the same title. */
export async function answerLastTime(desk: Desk, open: OpenPlan): Promise<readonly Message[]> {
  const { words } = desk;
  const now = open.version.plan;
  if (now === undefined || open.report.kind !== 'report') return [{ text: words.flow.fixLinesFirst }];
  const taught = await lastTaught(desk, open);
  const version = taught && (await versionTaught(desk, taught));
  if (taught === undefined || version?.plan === undefined) return [{ text: words.asks.notTaughtYet }];
  const isSamePlan = taught.planId === open.record.id;
  const comparable = isSamePlan ? now : await onSameLines(desk, version.plan, now);
  const changes = changesBetween(version.plan, comparable, desk.catalogue)
    .filter((change) => change.kind !== 'fact' || change.fact !== 'startsAt')
    .map((change) => inertText(words.change(change)));
  const title = inertText(taught.title ?? words.card.untitled);
  const outcome = taught.outcome === undefined ? '' : inertText(words.after.said(taught.outcome));
  return inSeveral(
    words.asks.lastTaught(title, words.when(taught.startsAt), version.version, outcome),
    changes.length === 0 ? [words.asks.sameAsLast] : [words.asks.changedSinceLast, ...changes],
    words,
  );
}

/** How far back a class of the same title is looked for. */
const lookBackMilliseconds = 180 * 86_400_000;

/** The last class taught of this plan, else of its title. */
export async function lastTaught(desk: Desk, open: OpenPlan): Promise<ScheduledClass | undefined> {
  const { classes } = desk.stores;
  const isTaught = (each: ScheduledClass) => each.state === 'taught' && each.planId !== undefined;
  const own = (await classes.findByPlan(desk.studioId, open.record.id)).filter(isTaught);
  if (own.length > 0) return own.at(-1);
  const title = open.version.plan?.facts.title?.toLowerCase();
  if (title === undefined) return undefined;
  const from = new Date(Date.parse(desk.now) - lookBackMilliseconds).toISOString();
  const before = await classes.listBetween(desk.studioId, from, desk.now);
  return before.findLast((each) => isTaught(each) && each.title?.toLowerCase() === title);
}

/** The version that was approved when the class began, else the one the plan stood at. */
async function versionTaught(desk: Desk, taught: ScheduledClass): Promise<PlanVersion | undefined> {
  const { planId, startsAt } = taught;
  if (planId === undefined) return undefined;
  const { plans, reviews } = desk.stores;
  const steps = await reviews.list(desk.studioId, planId);
  const approved = steps.findLast(({ kind, at }) => kind === 'approved' && at <= startsAt.instant);
  if (approved !== undefined) return plans.findVersion(desk.studioId, planId, approved.version);
  const versions = await plans.listVersions(desk.studioId, planId);
  return versions.findLast(({ madeAt }) => madeAt <= startsAt.instant) ?? versions[0];
}

/** The plan with the line ids of an earlier one where its lines stand again, so that the two compare. */
async function onSameLines(desk: Desk, before: Plan, now: Plan): Promise<Plan> {
  const context = await contextFor(desk);
  const read = readPlan(printPlan(now, desk.catalogue), { ...context, previousPlan: before });
  return read.problems.length === 0 && read.plan !== undefined ? read.plan : now;
}
