import { hasLetters } from '../plan/blocks-of.ts';
import type { BlockKind, MoveChoice, Plan } from '../plan/plan.ts';
import type { PlanRecord } from '../plan/plan-life.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { type KitShortage, kitShortages } from './kit-shortages.ts';
import { type LaidOut, layOut } from './lay-out.ts';
import type { ClassId, PersonId, ScheduledClass, ZonedMoment } from './scheduled-class.ts';
import { instantAfter } from './wall-time.ts';

/** How a class's plan stands: what the team may see of it. */
export type PlanStanding = 'none' | 'not approved' | 'change waits' | 'approved';

/** The plan of a class as the countdown shows it: the last approved version, where there is one. */
export type CountdownPlan = { readonly standing: PlanStanding; readonly approved?: Plan };

export type ClassToCome = { readonly scheduled: ScheduledClass; readonly plan: CountdownPlan };

/** `next`: the class that follows in the same room, where one does soon. */
export type CountdownContext = TimingContext & { readonly plan: CountdownPlan; readonly next?: ClassToCome };

/** The block that people start with after the warm-up; each letter with its moves by name. */
export type FirstBlock = {
  readonly kind: BlockKind;
  readonly name?: string;
  readonly letters: readonly (readonly string[])[];
};

/** What is told of a class. Lay-out, first block and kit are of the approved version. */
export type ClassFacts = {
  readonly classId: ClassId;
  readonly title?: string;
  readonly startsAt: ZonedMoment;
  readonly endsAt: string;
  readonly room?: string;
  readonly instructorId: PersonId;
  readonly people?: number;
  readonly plan: PlanStanding;
  readonly coverOpen: boolean;
  /** Empty without an approved plan, without a head count, or where nothing is needed. */
  readonly layOut: readonly LaidOut[];
  readonly kitShort: readonly KitShortage[];
  /** Pieces that the next class in the room needs too, so that they need not be put away. */
  readonly mayStay: readonly LaidOut[];
  readonly nextInRoom?: { readonly title?: string; readonly time: string };
  readonly firstBlock?: FirstBlock;
  /** In the studio's own words. */
  readonly emergencyCard?: string;
};

/** How the plan of a class stands; `record` is absent where the class has no plan. */
export function standingOf(
  record: Pick<PlanRecord, 'state' | 'approvedVersion' | 'currentVersion'> | undefined,
): PlanStanding {
  if (record === undefined) return 'none';
  if (record.approvedVersion === undefined) return 'not approved';
  return record.state === 'approved' ? 'approved' : 'change waits';
}

export function endOf({ startsAt, slotSeconds }: Pick<ScheduledClass, 'startsAt' | 'slotSeconds'>): string {
  return instantAfter(startsAt.instant, slotSeconds);
}

/** A class that is held, as far as anyone has said. */
export function isOn({ state }: Pick<ScheduledClass, 'state'>): boolean {
  return state !== 'cancelled' && state !== 'not taught';
}

export function factsOfClass(scheduled: ScheduledClass, context: CountdownContext): ClassFacts {
  const { id: classId, startsAt, instructorId, room } = scheduled;
  const { approved, standing } = context.plan;
  const title = scheduled.title ?? approved?.facts.title;
  const people = headCount(scheduled, context.plan);
  const firstBlock = approved === undefined ? undefined : firstBlockOf(approved, context);
  const emergencyCard = context.settings.rooms.find(({ name }) => name === room)?.emergencyCard;
  return {
    classId,
    ...(title === undefined ? {} : { title }),
    startsAt,
    endsAt: endOf(scheduled),
    ...(room === undefined ? {} : { room }),
    instructorId,
    ...(people === undefined ? {} : { people }),
    plan: standing,
    coverOpen: scheduled.coverOpen === true,
    layOut: laidOutFor(scheduled, context.plan, context),
    kitShort:
      approved === undefined || people === undefined ? [] : kitShortages(approved, people, room, context),
    ...nextFacts(scheduled, context),
    ...(firstBlock === undefined ? {} : { firstBlock }),
    ...(emergencyCard === undefined ? {} : { emergencyCard }),
  };
}

function headCount({ people }: ScheduledClass, { approved }: CountdownPlan): number | undefined {
  return people ?? approved?.facts.people;
}

function laidOutFor(
  scheduled: ScheduledClass,
  plan: CountdownPlan,
  context: TimingContext,
): readonly LaidOut[] {
  const people = headCount(scheduled, plan);
  return plan.approved === undefined || people === undefined ? [] : layOut(plan.approved, people, context);
}

function nextFacts(
  scheduled: ScheduledClass,
  context: CountdownContext,
): Pick<ClassFacts, 'mayStay' | 'nextInRoom'> {
  const { next } = context;
  if (next === undefined) return { mayStay: [] };
  const needed = new Map(
    laidOutFor(next.scheduled, next.plan, context).map(({ item, pieces }) => [item, pieces]),
  );
  const mayStay = laidOutFor(scheduled, context.plan, context)
    .map(({ item, pieces }) => ({ item, pieces: Math.min(pieces, needed.get(item) ?? 0) }))
    .filter(({ pieces }) => pieces > 0);
  const { title, startsAt } = next.scheduled;
  return { mayStay, nextInRoom: { ...(title === undefined ? {} : { title }), time: startsAt.time } };
}

function firstBlockOf(plan: Plan, context: TimingContext): FirstBlock | undefined {
  const first = plan.blocks.find(hasLetters);
  if (first === undefined) return undefined;
  const { kind, name } = first;
  const letters = first.letters.map(({ moves }) => moves.map(({ choice }) => nameOf(choice, context)));
  return { kind, ...(name === undefined ? {} : { name }), letters };
}

function nameOf(choice: MoveChoice, { catalogue, settings }: TimingContext): string {
  switch (choice.kind) {
    case 'move': {
      const { moveId } = choice;
      const known = catalogue.byId.get(moveId) ?? settings.ownMoves.find(({ id }) => id === moveId);
      return known?.name ?? moveId;
    }
    case 'open':
      return `? ${choice.wish.words}`.trim();
    case 'words':
      return choice.text;
  }
}
