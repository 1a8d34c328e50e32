import type { WallTime } from '../plan/plan.ts';

export type PersonId = string;
export type PlanId = string;
export type ClassId = string;

/** Wall time, zone and the computed instant (UTC, ISO 8601) are kept together. */
export type ZonedMoment = WallTime & { readonly zone: string; readonly instant: string };

export type ClassState = 'planned' | 'moved' | 'cancelled' | 'taught' | 'not taught';

/** What was said after a class. `effort` is the instructor's estimate for the group, 0–10. */
export type Outcome = {
  readonly how: 'as planned' | 'with changes' | 'not taught' | 'as planned, assumed';
  readonly changes?: string;
  readonly effort?: number;
  readonly length?: 'short' | 'on time' | 'over';
  readonly saidBy?: PersonId;
  readonly saidAt: string;
};

/** One session on the timetable. A class points at a plan; several classes may point at one. */
export type ScheduledClass = {
  readonly id: ClassId;
  /** The weekly slot it comes from; absent for a single class. */
  readonly slotId?: string;
  readonly title?: string;
  readonly startsAt: ZonedMoment;
  readonly slotSeconds: number;
  readonly room?: string;
  readonly instructorId: PersonId;
  readonly people?: number;
  readonly planId?: PlanId;
  readonly state: ClassState;
  readonly outcome?: Outcome;
  /** Its instructor can't teach it, and nobody has taken it yet. No reason is kept. */
  readonly coverOpen?: true;
  /** Who said *I'm in*, and for which start: it holds for no other person and no other time. */
  readonly confirmed?: { readonly by: PersonId; readonly startsAt: string };
  /** How often what a calendar shows of it was changed; counted by storage, absent for never. */
  readonly revision?: number;
};
