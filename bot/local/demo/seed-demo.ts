import { occurrencesOfWeek } from '../../../domain/calendar/classes-of-week.ts';
import { isoWeekOf } from '../../../domain/calendar/iso-week.ts';
import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import type { Catalogue } from '../../../domain/catalogue/catalogue.ts';
import { reportOnClass } from '../../../domain/class-report.ts';
import type { PlanRecord } from '../../../domain/plan/plan-life.ts';
import type { Storage, Stores } from '../../../domain/ports.ts';
import { keepOutcome } from '../../flows/mark-class.ts';
import { saveVersion } from '../../flows/save-version.ts';
import type { Desk } from '../../handling.ts';
import type { Words } from '../../words/words.ts';
import { demoClasses } from './demo-classes.ts';
import { demoPeople, demoSettings, demoStart, demoTeam } from './demo-studio.ts';

const dayMilliseconds = 86_400_000;

export type DemoParts = {
  readonly catalogue: Catalogue;
  readonly words: Words;
  readonly newId: () => string;
};

/** Fills an empty store with the demo studio and three weeks of taught classes; a filled one stays as it is. */
export async function seedDemo(storage: Storage, parts: DemoParts): Promise<void> {
  await storage.inTransaction(async (stores) => {
    if ((await stores.studios.find(demoTeam.id)) !== undefined) return;
    await stores.studios.save({ id: demoTeam.id, name: demoTeam.name, createdAt: demoStart });
    await stores.settings.save(demoTeam.id, demoSettings, 'demo', demoStart);
    await stores.people.save(demoTeam.id, { id: demoPeople.instructor.id, roles: ['instructor'] });
    await stores.people.save(demoTeam.id, { id: demoPeople.coach.id, roles: ['head coach', 'admin'] });
    await stores.people.save(demoTeam.id, { id: demoPeople.member.id, roles: ['instructor'] });
    for (const [weeksAgo, week] of [
      [3, 0],
      [2, 1],
      [1, 2],
      [0, 0],
      [-1, 1],
    ] as const) {
      await seedWeek(deskAt(stores, parts), weeksAgo, week);
    }
  });
}

function deskAt(stores: Stores, parts: DemoParts): Desk {
  return { studioId: demoTeam.id, stores, settings: demoSettings, now: demoStart, ...parts };
}

/** The classes of one week; those before the start of the demo are taught. */
async function seedWeek(desk: Desk, weeksAgo: number, text: number): Promise<void> {
  const instant = new Date(Date.parse(demoStart) - weeksAgo * 7 * dayMilliseconds).toISOString();
  const week = isoWeekOf(instant, desk.settings.zone);
  for (const scheduled of occurrencesOfWeek(week, desk.settings)) await seedClass(desk, scheduled, text);
}

/** Classes to come that have an approved plan when the demo starts; the others wait for one. */
const plannedAhead: ReadonlySet<string> = new Set(['wed-noon:2026-10-14', 'mon-evening:2026-10-19']);

async function seedClass(desk: Desk, scheduled: ScheduledClass, week: number): Promise<void> {
  const past = scheduled.startsAt.instant < desk.now;
  const text = demoClasses[scheduled.slotId ?? '']?.[week];
  if (text === undefined || (!past && !plannedAhead.has(scheduled.id))) return;
  const planned = await seedPlan(desk, scheduled, text);
  const title = planned.title ?? scheduled.title;
  const kept = {
    ...scheduled,
    ...(title === undefined ? {} : { title }),
    planId: planned.planId,
  };
  await desk.stores.classes.save(desk.studioId, kept);
  if (past) {
    await keepOutcome(desk, kept, {
      how: 'as planned',
      effort: 6,
      length: 'on time',
      saidBy: scheduled.instructorId,
      saidAt: scheduled.startsAt.instant,
    });
  }
}

/** An approved plan by the class's instructor. */
async function seedPlan(
  desk: Desk,
  scheduled: ScheduledClass,
  text: string,
): Promise<{ readonly planId: string; readonly title?: string }> {
  const { catalogue, settings, now } = desk;
  const report = reportOnClass(text, { catalogue, settings, now });
  const writtenAt = aDayBefore(Math.min(Date.parse(scheduled.startsAt.instant), Date.parse(now)));
  const record: PlanRecord = {
    id: desk.newId(),
    authorId: scheduled.instructorId,
    state: 'approved',
    currentVersion: 1,
    approvedVersion: 1,
    createdAt: writtenAt,
  };
  await desk.stores.plans.create(desk.studioId, record);
  await saveVersion({ ...desk, now: writtenAt }, record, {
    text,
    report,
    cause: { kind: 'written' },
    by: record.authorId,
  });
  for (const kind of ['sent', 'approved'] as const) {
    const by = kind === 'sent' ? record.authorId : demoPeople.coach.id;
    await desk.stores.reviews.add(desk.studioId, record.id, { kind, version: 1, by, at: record.createdAt });
  }
  const title = report.plan?.facts.title;
  return { planId: record.id, ...(title === undefined ? {} : { title }) };
}

function aDayBefore(milliseconds: number): string {
  return new Date(milliseconds - dayMilliseconds).toISOString();
}
