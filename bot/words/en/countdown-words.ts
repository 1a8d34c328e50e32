import type { ClassMoment, FirstBlock, PlanStanding } from '../../../domain/calendar/countdown-for.ts';
import type { LaidOut } from '../../../domain/calendar/lay-out.ts';

/** What makes typed text inert where it is shown. */
type Safe = (typed: string) => string;

/** A class's countdown: `lead` tells a notification the whole story in short, `lines` the rest. */
export const countdownWords = {
  lead: leadText,
  cause: (instructorId: string) => `From the timetable, for <@${instructorId}>’s class.`,
  lines: (moment: ClassMoment, safe: Safe): readonly string[] =>
    [
      layOutText(moment.facts.layOut, moment.facts.people),
      firstBlockText(moment.facts.firstBlock, safe),
      standingText(moment.facts.plan),
    ].filter((line) => line !== ''),
} as const;

/** `now` is an ISO instant: what is told late says the time that is really left. */
function leadText(moment: ClassMoment, now: string, safe: Safe): string {
  const { title, startsAt, room, instructorId, people } = moment.facts;
  const who = [
    `<@${instructorId}>`,
    ...(room === undefined ? [] : [safe(room)]),
    ...(people === undefined ? [] : [people === 1 ? '1 person' : `${people} people`]),
  ].join(', ');
  return `${safe(title ?? 'Untitled class')}, ${startsAt.time}, ${whenText(moment, now)}: ${who}`;
}

function whenText(moment: ClassMoment, now: string): string {
  switch (moment.kind) {
    case 'countdown': {
      const minutes = Math.ceil((Date.parse(moment.facts.startsAt.instant) - Date.parse(now)) / 60_000);
      return minutes <= 0 ? 'on now' : `in ${minutes} min`;
    }
    case 'on now':
      return 'on now';
    case 'how was it':
    case 'assumed taught':
      return 'just ended';
  }
}

function layOutText(layOut: readonly LaidOut[], people: number | undefined): string {
  if (layOut.length === 0) return '';
  const pieces = layOut.map(piecesText).join(', ');
  return people === undefined ? `Lay out: ${pieces}` : `Lay out for ${people}: ${pieces}`;
}

function piecesText({ item, pieces }: LaidOut): string {
  if (pieces === 1) return `1 ${item}`;
  return `${pieces} ${item === 'bench' || item === 'box' ? `${item}es` : `${item}s`}`;
}

function firstBlockText(first: FirstBlock | undefined, safe: Safe): string {
  if (first === undefined) return '';
  const name = first.name === undefined ? first.kind : `${first.kind} ${safe(first.name)}`;
  return `First: ${name}, ${first.letters.map((moves) => moves.map(safe).join(' + ')).join(' → ')}`;
}

function standingText(standing: PlanStanding): string {
  switch (standing) {
    case 'none':
      return 'No plan yet.';
    case 'not approved':
      return 'Plan in change.';
    case 'change waits':
      return 'Shown is the last approved plan; a change waits for review.';
    case 'approved':
      return '';
  }
}
