import { hasLetters } from '../plan/blocks-of.ts';
import type { BlockKind, MoveChoice, Plan } from '../plan/plan.ts';
import type { PlanRecord } from '../plan/plan-life.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { type LaidOut, layOut } from './lay-out.ts';
import type { ClassId, PersonId, ScheduledClass, ZonedMoment } from './scheduled-class.ts';
import { instantAfter } from './wall-time.ts';

/** How long after its end a class nobody spoke of counts as taught as planned: our own rule. */
export const assumedAfterSeconds = 3 * 3600;

/** How long the question how a class went is still worth asking: common practice, no published source. */
const askedWithinSeconds = 24 * 3600;

/** How a class's plan stands: what the team may see of it. */
export type PlanStanding = 'none' | 'not approved' | 'change waits' | 'approved';

/** The plan of a class as the countdown shows it: the last approved version, where there is one. */
export type CountdownPlan = { readonly standing: PlanStanding; readonly approved?: Plan };

export type CountdownContext = TimingContext & { readonly plan: CountdownPlan };

/** The block that people start with after the warm-up; each letter with its moves by name. */
export type FirstBlock = {
  readonly kind: BlockKind;
  readonly name?: string;
  readonly letters: readonly (readonly string[])[];
};

/** What a moment says of its class. */
export type ClassFacts = {
  readonly classId: ClassId;
  readonly title?: string;
  readonly startsAt: ZonedMoment;
  readonly endsAt: string;
  readonly room?: string;
  readonly instructorId: PersonId;
  readonly people?: number;
  readonly plan: PlanStanding;
  /** Of the approved version; empty without one, without a head count, or where nothing is needed. */
  readonly layOut: readonly LaidOut[];
  readonly firstBlock?: FirstBlock;
};

type MomentBase = {
  /** Unique, and another one when the class is moved to another time. */
  readonly key: string;
  /** The instant it is due. */
  readonly at: string;
  /** Later than this it helps nobody; absent where it must be done however late. */
  readonly usefulUntil?: string;
  readonly facts: ClassFacts;
};

/**
 * `countdown`, `on now`: for the team. `how was it`: the question to the instructor. `assumed taught`: nothing
 * to post, the class is marked.
 */
export type ClassMoment = MomentBase &
  (
    | { readonly kind: 'countdown'; readonly minutesBefore: number }
    | { readonly kind: 'on now' }
    | { readonly kind: 'how was it' }
    | { readonly kind: 'assumed taught' }
  );

/** How the plan of a class stands; `record` is absent where the class has no plan. */
export function standingOf(
  record: Pick<PlanRecord, 'state' | 'approvedVersion' | 'currentVersion'> | undefined,
): PlanStanding {
  if (record === undefined) return 'none';
  if (record.approvedVersion === undefined) return 'not approved';
  return record.state === 'approved' ? 'approved' : 'change waits';
}

/**
 * The moments of one class in order, and what each says. A cancelled class has none; one that was spoken of
 * has no questions left.
 */
export function countdownFor(scheduled: ScheduledClass, context: CountdownContext): readonly ClassMoment[] {
  if (scheduled.state === 'cancelled' || scheduled.state === 'not taught') return [];
  const facts = factsOf(scheduled, context);
  const before = beforeStart(scheduled, facts, context);
  return scheduled.outcome === undefined ? [...before, ...afterEnd(scheduled, facts)] : before;
}

function beforeStart(
  scheduled: ScheduledClass,
  facts: ClassFacts,
  { settings }: CountdownContext,
): readonly ClassMoment[] {
  const { instant } = scheduled.startsAt;
  const minutes = [...new Set(settings.countdownMinutes)]
    .filter((each) => each > 0)
    .toSorted((a, b) => b - a);
  const ats = [...minutes.map((each) => instantAfter(instant, -each * 60)), instant];
  const countdown = minutes.map((minutesBefore, place): ClassMoment => {
    const at = ats[place] ?? instant;
    const usefulUntil = ats[place + 1] ?? instant;
    return {
      kind: 'countdown',
      minutesBefore,
      key: keyOf(scheduled, `${minutesBefore} min`),
      at,
      usefulUntil,
      facts,
    };
  });
  const { endsAt } = facts;
  const onNow: ClassMoment = {
    kind: 'on now',
    key: keyOf(scheduled, 'on now'),
    at: instant,
    usefulUntil: endsAt,
    facts,
  };
  return [...countdown, onNow];
}

function afterEnd(scheduled: ScheduledClass, facts: ClassFacts): readonly ClassMoment[] {
  const { endsAt } = facts;
  return [
    {
      kind: 'how was it',
      key: keyOf(scheduled, 'how was it'),
      at: endsAt,
      usefulUntil: instantAfter(endsAt, askedWithinSeconds),
      facts,
    },
    {
      kind: 'assumed taught',
      key: keyOf(scheduled, 'assumed taught'),
      at: instantAfter(endsAt, assumedAfterSeconds),
      facts,
    },
  ];
}

function keyOf({ id, startsAt }: ScheduledClass, moment: string): string {
  return `class:${id}@${startsAt.instant}:${moment}`;
}

function factsOf(scheduled: ScheduledClass, context: CountdownContext): ClassFacts {
  const { id: classId, startsAt, slotSeconds, instructorId, room } = scheduled;
  const { approved, standing } = context.plan;
  const title = scheduled.title ?? approved?.facts.title;
  const people = scheduled.people ?? approved?.facts.people;
  const firstBlock = approved === undefined ? undefined : firstBlockOf(approved, context);
  return {
    classId,
    ...(title === undefined ? {} : { title }),
    startsAt,
    endsAt: instantAfter(startsAt.instant, slotSeconds),
    ...(room === undefined ? {} : { room }),
    instructorId,
    ...(people === undefined ? {} : { people }),
    plan: standing,
    layOut: approved === undefined || people === undefined ? [] : layOut(approved, people, context),
    ...(firstBlock === undefined ? {} : { firstBlock }),
  };
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
