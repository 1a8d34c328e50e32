import type { DueMoment } from '../../domain/calendar/due-notices.ts';
import type { ClassToCome } from '../../domain/calendar/facts-of-class.ts';
import type { ScheduledClass } from '../../domain/calendar/scheduled-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { inertText } from '../blocks/escape.ts';
import { inSeveral } from '../blocks/in-several.ts';
import type { Desk } from '../handling.ts';
import { isConfirmed, tellCoaches } from './tell-instructor.ts';

/** A moment that was skipped: of a class, in words that share its line, or with a line of its own. */
type Skipped = { readonly key: string } & (
  | { readonly scheduled: ScheduledClass; readonly what: string }
  | { readonly line: string }
);

/**
 * After a stop, one list to the coach of what came too late to help. `from`: up to when all was looked at. A
 * countdown that is posted late all the same is none of it. What was listed before, by a clock that was set
 * forward and back, is not listed again.
 */
export async function tellMissed(
  desk: Desk,
  from: string,
  missed: readonly DueMoment[],
  due: readonly DueMoment[],
  classes: readonly ClassToCome[],
): Promise<void> {
  const { stores, studioId, settings, words, now } = desk;
  const skipped = [...ofClasses(desk, missed, due, classes), ...ofStudio(desk, missed)];
  const keys = skipped.map(({ key }) => key);
  const untold = new Set(await stores.timetable.keepMissedTold(studioId, keys, now));
  const left = skipped.filter(({ key }) => untold.has(key));
  const [first] = left;
  if (first === undefined) return;
  const when = (instant: string) => words.when(wallTimeOf(instant, settings.zone));
  const lists = inSeveral(words.classes.missedLead(when(from), when(now)), linesOf(left, desk), words);
  for (const [place, list] of lists.entries())
    await tellCoaches(desk, place === 0 ? `missed:${first.key}` : `missed:${first.key}:${place + 1}`, list);
}

/** A line a class; what it had of one kind is said once in it. */
function linesOf(skipped: readonly Skipped[], { words }: Desk): readonly string[] {
  const ofClass = new Map<ScheduledClass, Set<string>>();
  for (const each of skipped)
    if ('what' in each)
      ofClass.set(each.scheduled, (ofClass.get(each.scheduled) ?? new Set<string>()).add(each.what));
  return [
    ...[...ofClass].map(([scheduled, what]) => words.classes.missedLine(scheduled, [...what], inertText)),
    ...skipped.flatMap((each) => ('line' in each ? [each.line] : [])),
  ];
}

function ofClasses(
  desk: Desk,
  missed: readonly DueMoment[],
  due: readonly DueMoment[],
  classes: readonly ClassToCome[],
): readonly Skipped[] {
  const stillTold = new Set(due.flatMap((moment) => (isTeam(moment) ? [moment.facts.classId] : [])));
  return classes.flatMap((one) =>
    missed
      .filter((moment) => 'facts' in moment && moment.facts.classId === one.scheduled.id)
      .filter((moment) => !isTeam(moment) || !stillTold.has(one.scheduled.id))
      .flatMap((moment) => {
        const what = whatWasMissed(desk, moment, one);
        return what === undefined ? [] : [{ key: moment.key, scheduled: one.scheduled, what }];
      }),
  );
}

/** Nothing for a moment that had nothing to say as the class stands. */
function whatWasMissed(desk: Desk, moment: DueMoment, { scheduled, plan }: ClassToCome): string | undefined {
  const words = desk.words.classes.missed;
  switch (moment.kind) {
    case 'countdown':
    case 'on now':
      return words.countdown;
    case 'plan waits':
      return plan.standing === 'not approved' || plan.standing === 'change waits'
        ? words.planWaits
        : undefined;
    case 'are you in':
      return isConfirmed(scheduled) ? undefined : words.areYouIn;
    case 'first lines':
      return plan.approved === undefined ? undefined : words.firstLines;
    case 'how was it':
      return words.howWasIt;
    case 'not in':
    case 'over':
    case 'assumed taught':
    case 'week report':
    case 'digest':
      return undefined;
  }
}

function ofStudio(desk: Desk, missed: readonly DueMoment[]): readonly Skipped[] {
  const words = desk.words.classes.missed;
  return missed.flatMap((moment) => {
    if (moment.kind === 'digest') return [{ key: moment.key, line: words.digest(moment.date) }];
    if (moment.kind === 'week report') return [{ key: moment.key, line: words.weekReport(moment.week) }];
    return [];
  });
}

function isTeam(moment: DueMoment): moment is Extract<DueMoment, { kind: 'countdown' | 'on now' }> {
  return moment.kind === 'countdown' || moment.kind === 'on now';
}
