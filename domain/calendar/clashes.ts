import type { KitItem } from '../catalogue/kit.ts';
import type { Plan } from '../plan/plan.ts';
import type { Settings, SharedKit } from '../settings.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { layOut } from './lay-out.ts';
import type { ClassId, PersonId, ScheduledClass } from './scheduled-class.ts';
import { instantAfter } from './wall-time.ts';

/** A class with the plan it will be taught from, where there is one. */
export type PlannedClass = { readonly scheduled: ScheduledClass; readonly plan?: Plan };

/** What a class clashes with. Kit clashes concern kit that several rooms share. */
export type Clash =
  | { readonly kind: 'room'; readonly room: string; readonly with: ClassId }
  | { readonly kind: 'instructor'; readonly instructorId: PersonId; readonly with: ClassId }
  | {
      readonly kind: 'kit';
      readonly item: KitItem;
      readonly needPieces: number;
      readonly havePieces: number;
      readonly with: readonly ClassId[];
    };

/** The clashes of one class with the others of its time; cancelled classes clash with nothing. */
export function clashesOf(
  { scheduled, plan }: PlannedClass,
  others: readonly PlannedClass[],
  context: TimingContext,
): readonly Clash[] {
  if (!isOn(scheduled)) return [];
  const sameTime = others.filter(
    (other) =>
      other.scheduled.id !== scheduled.id && isOn(other.scheduled) && overlap(other.scheduled, scheduled),
  );
  return [
    ...sameTime.flatMap(({ scheduled: other }) => personAndPlaceClashes(scheduled, other)),
    ...kitClashes({ scheduled, ...(plan === undefined ? {} : { plan }) }, sameTime, context),
  ];
}

function personAndPlaceClashes(scheduled: ScheduledClass, other: ScheduledClass): readonly Clash[] {
  const { room, instructorId } = scheduled;
  return [
    ...(room !== undefined && room === other.room ? [{ kind: 'room', room, with: other.id } as const] : []),
    ...(instructorId === other.instructorId
      ? [{ kind: 'instructor', instructorId, with: other.id } as const]
      : []),
  ];
}

function isOn({ state }: ScheduledClass): boolean {
  return state !== 'cancelled' && state !== 'not taught';
}

/** Half-open: a class that starts as another ends is no clash. */
function overlap(a: ScheduledClass, b: ScheduledClass): boolean {
  const from = [a, b].map(({ startsAt }) => Date.parse(startsAt.instant));
  const to = [a, b].map(({ startsAt, slotSeconds }) =>
    Date.parse(instantAfter(startsAt.instant, slotSeconds)),
  );
  return Math.max(...from) < Math.min(...to);
}

function kitClashes(
  one: PlannedClass,
  sameTime: readonly PlannedClass[],
  context: TimingContext,
): readonly Clash[] {
  return (context.settings.sharedKit ?? []).flatMap((shared) =>
    clashesOfShared(shared, one, sameTime, context),
  );
}

function clashesOfShared(
  { item, pieces: havePieces, rooms }: SharedKit,
  one: PlannedClass,
  sameTime: readonly PlannedClass[],
  context: TimingContext,
): readonly Clash[] {
  const borrowed = (planned: PlannedClass) =>
    rooms.includes(planned.scheduled.room ?? '') ? beyondOwnKit(planned, item, context) : 0;
  const own = borrowed(one);
  const users = sameTime.filter((other) => borrowed(other) > 0);
  const needPieces = users.reduce((sum, other) => sum + borrowed(other), own);
  return own === 0 || users.length === 0 || needPieces <= havePieces
    ? []
    : [{ kind: 'kit', item, needPieces, havePieces, with: users.map(({ scheduled }) => scheduled.id) }];
}

/** Pieces a class needs that its room does not have of its own. */
function beyondOwnKit({ scheduled, plan }: PlannedClass, item: KitItem, context: TimingContext): number {
  const people = scheduled.people ?? plan?.facts.people;
  if (plan === undefined || people === undefined) return 0;
  const needed = layOut(plan, people, context).find((laidOut) => laidOut.item === item)?.pieces ?? 0;
  return Math.max(0, needed - piecesOf(item, scheduled.room, context.settings));
}

function piecesOf(item: KitItem, room: string | undefined, { rooms }: Settings): number {
  return rooms.find(({ name }) => name === room)?.kit[item] ?? 0;
}
