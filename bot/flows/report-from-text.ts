import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { zonedMoment } from '../../domain/calendar/wall-time.ts';
import {
  type ClassProblems,
  type ClassReport,
  reportOnClass,
  reportOnPlan,
} from '../../domain/class-report.ts';
import type { Context } from '../../domain/context.ts';
import { factsFromClass } from '../../domain/plan/facts-from-class.ts';
import type { Desk } from '../handling.ts';
import { freeClassAt } from './schedule-class.ts';

/**
 * The report on a class as written. Room, people and length that its title line leaves out are taken from
 * the class it is for: the planned one, else the author's class at that moment in the timetable.
 */
export async function reportFromText(
  desk: Desk,
  text: string,
  context: Context,
  authorId: string,
  planned?: ScheduledClass,
): Promise<ClassReport | ClassProblems> {
  const report = reportOnClass(text, context);
  const { plan } = report;
  if (plan === undefined) return report;
  const { startsAt } = plan.facts;
  const scheduled =
    planned ??
    (startsAt === undefined
      ? undefined
      : await freeClassAt(desk, authorId, zonedMoment(startsAt, desk.settings.zone).instant));
  if (scheduled === undefined) return report;
  const slotAssumed = report.notes.some(({ code }) => code === 'slot-assumed');
  const taken = factsFromClass(plan.facts, scheduled, slotAssumed);
  if (Object.keys(taken).length === 0) return report;
  const whole = { ...plan, facts: { ...plan.facts, ...taken } };
  const notes = [
    ...report.notes.filter(({ code }) => taken.slotSeconds === undefined || code !== 'slot-assumed'),
    { code: 'from-timetable', ...taken } as const,
  ];
  return report.kind === 'problems'
    ? { ...report, plan: whole, notes }
    : { ...reportOnPlan(whole, context), notes };
}
