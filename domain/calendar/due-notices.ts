import type { Settings } from '../settings.ts';
import type { TimingContext } from '../timing/timing-context.ts';
import { type ClassMoment, countdownFor } from './countdown-for.ts';
import { type DigestMoment, digestMoments } from './digest.ts';
import type { ClassToCome } from './facts-of-class.ts';
import { datesOfWeek, type IsoWeek, isoWeekOf, weekAfter, weekdays } from './iso-week.ts';
import { nextInRoom } from './next-in-room.ts';
import { instantOf } from './wall-time.ts';

/** The weekly report on `week`, the last whole week before the one in which it is due. */
export type ReportMoment = {
  readonly kind: 'week report';
  readonly week: IsoWeek;
  readonly key: string;
  readonly at: string;
  /** When the next one is due. */
  readonly usefulUntil: string;
};

export type DueMoment = ClassMoment | ReportMoment | DigestMoment;

/** Instants: `from` is not part of it, `to` is. */
export type Stretch = { readonly from: string; readonly to: string };

/** Moments that fell due, in order; `missed` are those that help nobody at the end of the stretch any more. */
export type Due = { readonly due: readonly DueMoment[]; readonly missed: readonly DueMoment[] };

/**
 * What falls due in a stretch of time, as the classes stand now: a moved or cancelled class changes it at
 * once. Stretches that overlap give moments twice, under the same key.
 */
export function dueNotices(
  classes: readonly ClassToCome[],
  { from, to }: Stretch,
  context: TimingContext,
): Due {
  const ends = Date.parse(to);
  const fallen = [...momentsOf(classes, context), ...reportMoments({ from, to }, context.settings)]
    .filter(({ at }) => Date.parse(from) < Date.parse(at) && Date.parse(at) <= ends)
    .toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.key < b.key ? -1 : 1));
  const helps = ({ usefulUntil }: DueMoment) => usefulUntil === undefined || ends < Date.parse(usefulUntil);
  return { due: fallen.filter(helps), missed: fallen.filter((moment) => !helps(moment)) };
}

/** The next instant after `after` at which something falls due. */
export function nextDue(classes: readonly ClassToCome[], after: string, context: TimingContext): string {
  const instants = momentsOf(classes, context)
    .map(({ at }) => at)
    .filter((at) => Date.parse(at) > Date.parse(after));
  return [nextReport(after, context.settings).at, ...instants].reduce((earliest, at) =>
    Date.parse(at) < Date.parse(earliest) ? at : earliest,
  );
}

/** The weekly reports that fall due in a stretch of time. */
export function reportMoments({ from, to }: Stretch, settings: Settings): readonly ReportMoment[] {
  const moments: ReportMoment[] = [];
  let next = nextReport(from, settings);
  while (Date.parse(next.at) <= Date.parse(to)) {
    moments.push(next);
    next = nextReport(next.at, settings);
  }
  return moments;
}

function momentsOf(
  classes: readonly ClassToCome[],
  context: TimingContext,
): readonly (ClassMoment | DigestMoment)[] {
  const ofClasses = classes.flatMap((each) => {
    const next = nextInRoom(each, classes);
    return countdownFor(each.scheduled, {
      ...context,
      plan: each.plan,
      ...(next === undefined ? {} : { next }),
    });
  });
  return [...ofClasses, ...digestMoments(classes, context.settings)];
}

function nextReport(after: string, settings: Settings): ReportMoment {
  const week = isoWeekOf(after, settings.zone);
  const thisWeek = reportIn(week, settings);
  return Date.parse(thisWeek.at) > Date.parse(after) ? thisWeek : reportIn(weekAfter(week), settings);
}

function reportIn(dueWeek: IsoWeek, settings: Settings): ReportMoment {
  const week = weekAfter(dueWeek, -1);
  return {
    kind: 'week report',
    week,
    key: `week:${week}`,
    at: reportInstant(dueWeek, settings),
    usefulUntil: reportInstant(weekAfter(dueWeek), settings),
  };
}

function reportInstant(dueWeek: IsoWeek, { reportAt, zone }: Settings): string {
  const date = datesOfWeek(dueWeek)[weekdays.indexOf(reportAt.weekday)] ?? '';
  return instantOf({ date, time: reportAt.time, zone });
}
