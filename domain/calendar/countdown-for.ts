import type { Settings } from '../settings.ts';
import { type ClassFacts, type CountdownContext, endOf, factsOfClass, isOn } from './facts-of-class.ts';
import type { ScheduledClass } from './scheduled-class.ts';
import { instantAfter } from './wall-time.ts';

/** How long after its end a class nobody spoke of counts as taught as planned: our own rule. */
export const assumedAfterSeconds = 3 * 3600;

/** How long the question how a class went is still worth asking: common practice, no published source. */
const askedWithinSeconds = 24 * 3600;

/** When coach and instructor hear of a plan that waits, in hours before the start: our own rule. */
const planWaitsHours = [24, 3] as const;

/** Minutes before the start at which the instructor is asked, the coach told, the first lines sent: our own. */
const askedMinutes = 20;
const coachToldMinutes = 15;
const firstLinesMinutes = 5;

type MomentBase = {
  /** Unique, and another one when the class is moved to another time. */
  readonly key: string;
  /** The instant it is due. */
  readonly at: string;
  /** Later than this it helps nobody; absent where it must be done however late. */
  readonly usefulUntil?: string;
  readonly facts: ClassFacts;
};

/** A moment of the team's one message. */
export type TeamMoment =
  | { readonly kind: 'countdown'; readonly minutesBefore: number }
  | { readonly kind: 'on now' }
  | { readonly kind: 'over' };

/**
 * `countdown`, `on now`, `over`: for the team. `plan waits`: to coach and instructor, where the plan is not approved.
 * `are you in`, `first lines`: to the instructor; `not in`: to the coach, where nobody confirmed. `how was
 * it`: the question to the instructor. `assumed taught`: nothing to post, the class is marked. Moments are
 * times; what holds then is looked at when they fall due.
 */
export type ClassMoment = MomentBase &
  (
    | TeamMoment
    | { readonly kind: 'plan waits'; readonly hoursBefore: number }
    | { readonly kind: 'are you in' }
    | { readonly kind: 'not in' }
    | { readonly kind: 'first lines' }
    | { readonly kind: 'how was it' }
    | { readonly kind: 'assumed taught' }
  );

type Timed = Omit<MomentBase, 'key' | 'facts'> & { readonly name: string };

/**
 * The moments of one class in order of kind, and what each says. A cancelled class has none; one that was
 * spoken of has no questions left.
 */
export function countdownFor(scheduled: ScheduledClass, context: CountdownContext): readonly ClassMoment[] {
  if (!isOn(scheduled)) return [];
  const facts = factsOfClass(scheduled, context);
  const base = ({ name, ...times }: Timed): MomentBase => ({
    key: keyOf(scheduled, name),
    ...times,
    facts,
  });
  const before = [
    ...planWaits(scheduled, base),
    ...forTeam(scheduled, context.settings, base),
    ...forInstructor(scheduled, base),
  ];
  return scheduled.outcome === undefined ? [...before, ...afterEnd(scheduled, base)] : before;
}

/** The moment of the team's message that an instant falls in; none before the first. */
export function teamMomentAt(
  scheduled: ScheduledClass,
  settings: Settings,
  at: string,
): TeamMoment | undefined {
  const { instant } = scheduled.startsAt;
  const now = Date.parse(at);
  if (now >= Date.parse(endOf(scheduled))) return { kind: 'over' };
  if (now >= Date.parse(instant)) return { kind: 'on now' };
  const minutesBefore = minutesOf(settings).findLast(
    (each) => Date.parse(instantAfter(instant, -each * 60)) <= now,
  );
  return minutesBefore === undefined ? undefined : { kind: 'countdown', minutesBefore };
}

/** Largest first. */
function minutesOf({ countdownMinutes }: Settings): readonly number[] {
  return [...new Set(countdownMinutes)].filter((each) => each > 0).toSorted((a, b) => b - a);
}

type Base = (timed: Timed) => MomentBase;

function forTeam(scheduled: ScheduledClass, settings: Settings, base: Base): readonly ClassMoment[] {
  const { instant } = scheduled.startsAt;
  const minutes = minutesOf(settings);
  const ats = [...minutes.map((each) => instantAfter(instant, -each * 60)), instant];
  const countdown = minutes.map((minutesBefore, place): ClassMoment => {
    const at = ats[place] ?? instant;
    const usefulUntil = ats[place + 1] ?? instant;
    return { kind: 'countdown', minutesBefore, ...base({ name: `${minutesBefore} min`, at, usefulUntil }) };
  });
  const onNow = base({ name: 'on now', at: instant, usefulUntil: endOf(scheduled) });
  // However late: a message that says *on now* of a class that is over would stay untrue.
  const over = base({ name: 'over', at: endOf(scheduled) });
  return [...countdown, { kind: 'on now', ...onNow }, { kind: 'over', ...over }];
}

function planWaits({ startsAt: { instant } }: ScheduledClass, base: Base): readonly ClassMoment[] {
  return planWaitsHours.map((hoursBefore, place) => {
    const nextHours = planWaitsHours[place + 1] ?? 0;
    return {
      kind: 'plan waits',
      hoursBefore,
      ...base({
        name: `plan waits, ${hoursBefore} h`,
        at: instantAfter(instant, -hoursBefore * 3600),
        usefulUntil: instantAfter(instant, -nextHours * 3600),
      }),
    };
  });
}

function forInstructor({ startsAt: { instant } }: ScheduledClass, base: Base): readonly ClassMoment[] {
  const untilStart = (name: string, minutes: number) =>
    base({ name, at: instantAfter(instant, -minutes * 60), usefulUntil: instant });
  return [
    { kind: 'are you in', ...untilStart('are you in', askedMinutes) },
    { kind: 'not in', ...untilStart('not in', coachToldMinutes) },
    { kind: 'first lines', ...untilStart('first lines', firstLinesMinutes) },
  ];
}

function afterEnd(scheduled: ScheduledClass, base: Base): readonly ClassMoment[] {
  const endsAt = endOf(scheduled);
  return [
    {
      kind: 'how was it',
      ...base({
        name: 'how was it',
        at: endsAt,
        usefulUntil: instantAfter(endsAt, askedWithinSeconds),
      }),
    },
    {
      kind: 'assumed taught',
      ...base({ name: 'assumed taught', at: instantAfter(endsAt, assumedAfterSeconds) }),
    },
  ];
}

function keyOf({ id, startsAt }: ScheduledClass, name: string): string {
  return `class:${id}@${startsAt.instant}:${name}`;
}
