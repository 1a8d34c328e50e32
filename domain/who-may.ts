import type { PersonId, ScheduledClass } from './calendar/scheduled-class.ts';
import type { PlanRecord } from './plan/plan-life.ts';
import type { Settings } from './settings.ts';

/** Head coaches alone approve, comment, close days and decide what the report goes on saying. */
export function isHeadCoach({ headCoaches }: Pick<Settings, 'headCoaches'>, by: PersonId): boolean {
  return headCoaches.includes(by);
}

/** A plan is its author's, and a head coach's. */
export function mayChangePlan(settings: Settings, { authorId }: PlanRecord, by: PersonId): boolean {
  return by === authorId || isHeadCoach(settings, by);
}

/** A class is its instructor's, and a head coach's: to move, cancel, hand on and mark. */
export function mayRunClass(settings: Settings, { instructorId }: ScheduledClass, by: PersonId): boolean {
  return by === instructorId || isHeadCoach(settings, by);
}

/** Someone else is forgotten by a head coach or admin who is named; setting a studio up is not enough. */
export function mayForgetOthers(settings: Settings, by: PersonId): boolean {
  return isHeadCoach(settings, by) || settings.admins?.includes(by) === true;
}

/** Head coaches and admins change settings; until one is named, whoever sets the studio up. */
export function maySet({ headCoaches, admins = [], roleGroups = {} }: Settings, by: PersonId): boolean {
  const named = [...headCoaches, ...admins];
  const isOpen =
    named.length === 0 && roleGroups.headCoaches === undefined && roleGroups.admins === undefined;
  return isOpen || named.includes(by);
}
