import { endOf } from '../../domain/calendar/facts-of-class.ts';
import { isoWeekOf, weekAfter } from '../../domain/calendar/iso-week.ts';
import type { ScheduledClass, ZonedMoment } from '../../domain/calendar/scheduled-class.ts';
import { instantAfter, inZone } from '../../domain/calendar/wall-time.ts';
import type { PlanRecord } from '../../domain/plan/plan-life.ts';
import { type MuscleDays, musclesByDay } from '../../domain/week/muscles-by-day.ts';
import { isHeadCoach, maySet } from '../../domain/who-may.ts';
import type { BatchLine } from '../blocks/batch-message.ts';
import type { Desk } from '../handling.ts';
import type { Waiting } from '../words/en/home-words.ts';
import { weeksAhead } from './change-class.ts';
import { classesAround } from './classes-around.ts';
import { classesInWeek } from './classes-in-week.ts';
import { linkTo, linkToDraft } from './link-to.ts';
import { afterClassKey } from './mark-class.ts';
import { waitingForReview } from './reviews-at-once.ts';
import { type SetUpStep, setUpSteps } from './set-up-steps.ts';
import { standingVersion } from './standing-version.ts';

/** A class or a plan in one line. */
export type HomeLine = {
  readonly title?: string;
  readonly startsAt?: ZonedMoment;
  readonly record?: PlanRecord;
  readonly scheduled?: ScheduledClass;
  readonly waits?: Waiting['kind'];
  /** Address of the thread it is written or decided in. */
  readonly link?: string;
  /** It can still be moved or cancelled by whose home it is. */
  readonly mayChange?: true;
};

/** Everything on one person's home. */
export type Home = {
  readonly today: readonly HomeLine[];
  readonly later: readonly HomeLine[];
  readonly waiting: readonly HomeLine[];
  readonly drafts: readonly HomeLine[];
  /** For head coaches. */
  readonly coach?: {
    readonly approval: readonly BatchLine[];
    readonly muscles: readonly MuscleDays[];
    /** Days with a class whose load is not known, Monday 0. */
    readonly unknownDays: ReadonlySet<number>;
    /** Classes of others still to come, in order of start. */
    readonly others: readonly ScheduledClass[];
  };
  /** For those who may take them. */
  readonly setUp: readonly SetUpStep[];
  readonly maySet: boolean;
};

const weekSeconds = 7 * 86_400;
/** A class this near without a plan, or with one that is not sent, is waited for. Ours. */
const soonSeconds = 3 * 86_400;

export async function homeOf(desk: Desk, personId: string): Promise<Home> {
  const { settings, now } = desk;
  const week = isoWeekOf(now, settings.zone);
  const thisWeek = await classesInWeek(desk, week);
  const lines = await Promise.all(
    [...thisWeek, ...(await classesInWeek(desk, weekAfter(week)))]
      .filter(({ instructorId }) => instructorId === personId)
      .map((each) => classLine(desk, each)),
  );
  const today = inZone(now, settings.zone).toFormat('yyyy-MM-dd');
  const until = instantAfter(now, weekSeconds);
  const isLater = ({ startsAt }: HomeLine) =>
    startsAt !== undefined && startsAt.date > today && startsAt.instant < until;
  const drafts = await draftLines(desk, personId);
  const isToday = ({ startsAt }: HomeLine) => startsAt?.date === today;
  // A draft that stands with its class is not told once more.
  const onCalendar = new Set(
    lines.filter((line) => isToday(line) || isLater(line)).map(({ record }) => record?.id),
  );
  const isCoach = isHeadCoach(settings, personId);
  return {
    today: lines.filter(isToday),
    later: lines.filter(isLater),
    waiting: [...drafts.filter(({ waits }) => waits !== undefined), ...(await waitingClasses(desk, lines))],
    drafts: drafts.filter(({ waits, record }) => waits === undefined && !onCalendar.has(record?.id)),
    ...(isCoach ? { coach: await coachPart(desk, personId, thisWeek) } : {}),
    setUp: maySet(settings, personId) ? setUpSteps(settings) : [],
    maySet: maySet(settings, personId),
  };
}

async function coachPart(
  desk: Desk,
  personId: string,
  thisWeek: readonly ScheduledClass[],
): Promise<NonNullable<Home['coach']>> {
  const around = await classesAround(desk, weeksAhead);
  return {
    approval: await waitingForReview(desk, personId),
    ...(await musclesOfWeek(desk, thisWeek)),
    others: around.filter(
      ({ instructorId, startsAt, state }) =>
        instructorId !== personId && startsAt.instant > desk.now && state !== 'not taught',
    ),
  };
}

async function classLine(desk: Desk, scheduled: ScheduledClass): Promise<HomeLine> {
  const { planId, title, startsAt } = scheduled;
  const record = planId === undefined ? undefined : await desk.stores.plans.find(desk.studioId, planId);
  return {
    ...(title === undefined ? {} : { title }),
    startsAt,
    scheduled,
    ...(record === undefined ? {} : { record, ...(await linkOf(desk, record)) }),
    ...(endOf(scheduled) > desk.now && scheduled.state !== 'not taught' ? { mayChange: true } : {}),
  };
}

async function waitingClasses(desk: Desk, lines: readonly HomeLine[]): Promise<readonly HomeLine[]> {
  const waiting: HomeLine[] = [];
  for (const line of lines) {
    const waits = line.scheduled && whyWaiting(line.scheduled, line.record, desk.now);
    if (line.scheduled === undefined || waits === undefined) continue;
    const asked =
      waits === 'how was it'
        ? linkTo(
            desk,
            (await desk.stores.notices.find(desk.studioId, afterClassKey(line.scheduled.id)))?.sentTo,
          )
        : undefined;
    waiting.push({ ...line, waits, ...(asked === undefined ? {} : { link: asked }) });
  }
  return waiting;
}

function whyWaiting(
  { state, outcome, startsAt, slotSeconds, coverOpen }: ScheduledClass,
  record: PlanRecord | undefined,
  now: string,
): Waiting['kind'] | undefined {
  if (state === 'cancelled') return undefined;
  const { instant } = startsAt;
  if (instantAfter(instant, slotSeconds) <= now)
    return outcome?.saidBy === undefined && coverOpen !== true && instant > instantAfter(now, -weekSeconds)
      ? 'how was it'
      : undefined;
  if (instant > instantAfter(now, soonSeconds)) return undefined;
  if (record === undefined) return 'no plan soon';
  return record.state === 'draft' ? 'not sent soon' : undefined;
}

async function draftLines(desk: Desk, personId: string): Promise<readonly HomeLine[]> {
  const { stores, studioId } = desk;
  const records = await stores.plans.listByAuthor(studioId, personId, 10);
  const open = records.filter(({ state }) => state !== 'approved');
  return Promise.all(
    open.map(async (record) => {
      const steps = await stores.reviews.list(studioId, record.id);
      const asked = record.state === 'draft' && steps.at(-1)?.kind === 'changes asked';
      return { ...(await planLine(desk, record)), ...(asked ? { waits: 'changes asked' as const } : {}) };
    }),
  );
}

async function planLine(desk: Desk, record: PlanRecord): Promise<HomeLine> {
  const version = await desk.stores.plans.findVersion(desk.studioId, record.id, record.currentVersion);
  const title = version?.plan?.facts.title;
  return { ...(title === undefined ? {} : { title }), record, ...(await linkOf(desk, record)) };
}

async function linkOf(desk: Desk, record: PlanRecord): Promise<Pick<HomeLine, 'link'>> {
  const link = await linkToDraft(desk, record);
  return link === undefined ? {} : { link };
}

/** What was counted for taught classes, and what the plans of the others would give. */
async function musclesOfWeek(
  desk: Desk,
  classes: readonly ScheduledClass[],
): Promise<Pick<NonNullable<Home['coach']>, 'muscles' | 'unknownDays'>> {
  const loads = await Promise.all(
    classes
      .filter(({ state }) => state !== 'cancelled' && state !== 'not taught')
      .map(async (each) => ({
        day: inZone(each.startsAt.instant, desk.settings.zone).weekday - 1,
        load: (await standingVersion(desk, each))?.load,
      })),
  );
  return {
    muscles: musclesByDay(
      loads.flatMap(({ day, load }) => (load === undefined ? [] : [{ day, load }])),
      desk.settings.firstPriority,
    ),
    unknownDays: new Set(loads.flatMap(({ day, load }) => (load === undefined ? [day] : []))),
  };
}
