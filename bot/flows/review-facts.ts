import { isoWeekOf } from '../../domain/calendar/iso-week.ts';
import type { MoveId } from '../../domain/catalogue/move.ts';
import { plannedLines } from '../../domain/plan/class-facts.ts';
import type { PlanComment } from '../../domain/plan/plan-life.ts';
import type { PlanVersion } from '../../domain/ports.ts';
import { placeLine } from '../blocks/place-message.ts';
import type { Desk } from '../handling.ts';
import { lastTaught } from './answer-last-time.ts';
import { clashesWith } from './clashes-with.ts';
import { classesInWeek } from './classes-in-week.ts';
import type { OpenPlan } from './open-plan.ts';
import { placeTaken } from './place-taken.ts';

/** What a coach wants to know of a plan beside the plan itself. */
export type ReviewFacts = {
  /** When a class of this plan or title was taught last; absent for a new one. */
  readonly lastTaught?: { readonly date: string; readonly time: string };
  /** Who teaches it where that is not its author. */
  readonly coveredBy?: string;
  /** Moves that this studio has not taught yet; empty while it has taught few. */
  readonly newMoves: readonly MoveId[];
  /** Sets by pattern of this class and all approved ones of its week. */
  readonly weekPatterns: Readonly<Record<string, number>>;
  /** What its class clashes with, or what has its place on the calendar; one line each. */
  readonly clashes: readonly string[];
  /** Not resolved yet. */
  readonly comments: readonly PlanComment[];
};

export async function reviewFacts(desk: Desk, open: OpenPlan): Promise<ReviewFacts> {
  const { stores, studioId } = desk;
  const before = await lastTaught(desk, open);
  const teacher = open.scheduled?.instructorId;
  const comments = await stores.comments.list(studioId, open.record.id);
  return {
    ...(before === undefined ? {} : { lastTaught: before.startsAt }),
    ...(teacher === undefined || teacher === open.record.authorId ? {} : { coveredBy: teacher }),
    newMoves: await newMovesOf(desk, open),
    weekPatterns: await patternsOfWeek(desk, open),
    clashes: await clashesOf(desk, open),
    comments: comments.filter(({ resolved }) => resolved === undefined),
  };
}

/** One line each; empty where the class is free and its time to come. */
export async function clashesOf(desk: Desk, open: OpenPlan): Promise<readonly string[]> {
  const taken = await placeTaken(desk, open);
  if (taken !== undefined) return [placeLine(taken, desk.words)];
  const { scheduled } = open;
  return scheduled === undefined || scheduled.startsAt.instant <= desk.now
    ? []
    : clashesWith(desk, scheduled);
}

async function newMovesOf(desk: Desk, open: OpenPlan): Promise<readonly MoveId[]> {
  const taught = await desk.stores.classes.listMovesTaught(desk.studioId);
  const { plan } = open.version;
  if (plan === undefined || taught.size < desk.settings.checks.knownMovesLeast) return [];
  const ids = plannedLines(plan).flatMap(({ planned: { choice } }) =>
    choice.kind === 'move' ? [choice.moveId] : [],
  );
  return [...new Set(ids)].filter((id) => !taught.has(id));
}

async function patternsOfWeek(desk: Desk, open: OpenPlan): Promise<Readonly<Record<string, number>>> {
  const sums = new Map<string, number>();
  const add = (sets: Readonly<Record<string, number | undefined>>) => {
    for (const [pattern, count] of Object.entries(sets))
      sums.set(pattern, (sums.get(pattern) ?? 0) + (count ?? 0));
  };
  if (open.report.kind === 'report') add(open.report.load.setsByPattern);
  const week = isoWeekOf(open.scheduled?.startsAt.instant ?? desk.now, desk.settings.zone);
  for (const each of await classesInWeek(desk, week)) {
    if (each.planId === undefined || each.planId === open.record.id) continue;
    if (each.state === 'cancelled' || each.state === 'not taught') continue;
    add((await approvedVersionOf(desk, each.planId))?.setsByPattern ?? {});
  }
  return Object.fromEntries(sums);
}

async function approvedVersionOf(desk: Desk, planId: string): Promise<PlanVersion | undefined> {
  const { plans } = desk.stores;
  const version = (await plans.find(desk.studioId, planId))?.approvedVersion;
  return version === undefined ? undefined : plans.findVersion(desk.studioId, planId, version);
}
