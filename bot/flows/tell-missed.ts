import type { DueMoment } from '../../domain/calendar/due-notices.ts';
import type { ClassToCome } from '../../domain/calendar/facts-of-class.ts';
import { wallTimeOf } from '../../domain/calendar/wall-time.ts';
import { inertText } from '../blocks/escape.ts';
import { clip, limits } from '../blocks/limits.ts';
import type { Desk } from '../handling.ts';
import { isConfirmed, tellCoaches } from './tell-instructor.ts';

/**
 * After a stop, one message to the coach with what came too late to help. `from`: up to when all was looked
 * at. A countdown that is posted late all the same is none of it.
 */
export async function tellMissed(
  desk: Desk,
  from: string,
  missed: readonly DueMoment[],
  due: readonly DueMoment[],
  classes: readonly ClassToCome[],
): Promise<void> {
  const lines = [...classLines(desk, missed, due, classes), ...otherLines(desk, missed)];
  if (lines.length === 0) return;
  const { zone } = desk.settings;
  const when = (instant: string) => desk.words.when(wallTimeOf(instant, zone));
  const text = [desk.words.classes.missedLead(when(from), when(desk.now)), ...lines].join('\n');
  await tellCoaches(desk, `missed:${desk.now}`, { text: clip(text, limits.topLevelText) });
}

function classLines(
  desk: Desk,
  missed: readonly DueMoment[],
  due: readonly DueMoment[],
  classes: readonly ClassToCome[],
): readonly string[] {
  const stillTold = new Set(due.flatMap((moment) => (isTeam(moment) ? [moment.facts.classId] : [])));
  return classes.flatMap((one) => {
    const { id } = one.scheduled;
    const what = missed
      .filter((moment) => 'facts' in moment && moment.facts.classId === id)
      .filter((moment) => !isTeam(moment) || !stillTold.has(id))
      .flatMap((moment) => whatWasMissed(desk, moment, one));
    const { missedLine } = desk.words.classes;
    return what.length === 0 ? [] : [missedLine(one.scheduled, [...new Set(what)], inertText)];
  });
}

/** Nothing for a moment that had nothing to say as the class stands. */
function whatWasMissed(desk: Desk, moment: DueMoment, { scheduled, plan }: ClassToCome): readonly string[] {
  const words = desk.words.classes.missed;
  switch (moment.kind) {
    case 'countdown':
    case 'on now':
      return [words.countdown];
    case 'plan waits':
      return plan.standing === 'not approved' || plan.standing === 'change waits' ? [words.planWaits] : [];
    case 'are you in':
      return isConfirmed(scheduled) ? [] : [words.areYouIn];
    case 'first lines':
      return plan.approved === undefined ? [] : [words.firstLines];
    case 'how was it':
      return [words.howWasIt];
    case 'not in':
    case 'assumed taught':
    case 'week report':
    case 'digest':
      return [];
  }
}

function otherLines(desk: Desk, missed: readonly DueMoment[]): readonly string[] {
  return missed.flatMap((moment) =>
    moment.kind === 'digest' ? [desk.words.classes.missed.digest(moment.date)] : [],
  );
}

function isTeam(moment: DueMoment): moment is Extract<DueMoment, { kind: 'countdown' | 'on now' }> {
  return moment.kind === 'countdown' || moment.kind === 'on now';
}
