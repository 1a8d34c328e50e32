import type { TeamMoment } from '../../../domain/calendar/countdown-for.ts';
import type { ClassFacts, FirstBlock, PlanStanding } from '../../../domain/calendar/facts-of-class.ts';
import type { KitShortage } from '../../../domain/calendar/kit-shortages.ts';
import type { LaidOut } from '../../../domain/calendar/lay-out.ts';
import type { ZonedMoment } from '../../../domain/calendar/scheduled-class.ts';
import { peopleText } from './card-words.ts';
import { personText } from './person-words.ts';
import { whenText } from './talk-words.ts';

/** What makes typed text inert where it is shown. */
type Safe = (typed: string) => string;

/** From here on the message says what the last minutes need. */
const lastMinutes = 15;

/** A class's countdown: `lead` tells a notification the whole story in short, `lines` the rest. */
export const countdownWords = {
  lead: leadText,
  cause: (instructorId: string) =>
    `From the timetable, for ${personText(instructorId, 'an instructor')}’s class.`,
  lines: linesText,
  cancelled: (facts: ClassFacts, safe: Safe) =>
    `${titleText(facts, safe)}, ${whenText(facts.startsAt)}: cancelled.`,
  over: (facts: ClassFacts, how: 'over' | 'not taught' | 'nobody took it', safe: Safe) => {
    const lead = `${titleText(facts, safe)}, ${whenText(facts.startsAt)}`;
    switch (how) {
      case 'over':
        return `${lead}: over.`;
      case 'not taught':
        return `${lead}: did not take place.`;
      case 'nobody took it':
        return `${lead}: over. Cover stayed open.`;
    }
  },
  moved: (facts: ClassFacts, to: ZonedMoment, safe: Safe) =>
    `${titleText(facts, safe)}, ${whenText(facts.startsAt)}: moved to ${whenText(to)}.`,
  kitShort: kitShortText,
  layOut: layOutText,
  pieces: piecesText,
  standing: standingText,
} as const;

/** `now` is an ISO instant: what is told late says the time that is really left. */
function leadText(facts: ClassFacts, moment: TeamMoment, now: string, safe: Safe): string {
  const who = [
    facts.coverOpen ? 'cover open' : personText(facts.instructorId, 'an instructor'),
    ...(facts.room === undefined ? [] : [safe(facts.room)]),
    ...(facts.people === undefined ? [] : [peopleText(facts.people)]),
  ].join(', ');
  return `${titleText(facts, safe)}, ${facts.startsAt.time}, ${leftText(facts, moment, now)}: ${who}`;
}

function titleText({ title }: ClassFacts, safe: Safe): string {
  return safe(title ?? 'Untitled class');
}

function leftText({ startsAt }: ClassFacts, moment: TeamMoment, now: string): string {
  const minutes = Math.ceil((Date.parse(startsAt.instant) - Date.parse(now)) / 60_000);
  return moment.kind !== 'countdown' || minutes <= 0 ? 'on now' : `in ${minutes} min`;
}

function linesText(facts: ClassFacts, moment: TeamMoment, safe: Safe): readonly string[] {
  const isLast = moment.kind !== 'countdown' || moment.minutesBefore <= lastMinutes;
  return [
    layOutText(facts.layOut, facts.people),
    ...facts.kitShort.map(kitShortText),
    isLast ? mayStayText(facts, safe) : '',
    firstBlockText(facts.firstBlock, safe),
    standingText(facts.plan),
    isLast ? emergencyText(facts, safe) : '',
  ].filter((line) => line !== '');
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

function kitShortText({ item, needPieces, havePieces }: KitShortage): string {
  return `Kit short: ${piecesText({ item, pieces: needPieces })} needed, ${havePieces} in the room.`;
}

function mayStayText({ mayStay, nextInRoom }: ClassFacts, safe: Safe): string {
  if (nextInRoom === undefined || mayStay.length === 0) return '';
  const next = `${safe(nextInRoom.title ?? 'the next class')}, ${nextInRoom.time}`;
  return `May stay out for ${next}: ${mayStay.map(piecesText).join(', ')}`;
}

function emergencyText({ emergencyCard, room }: ClassFacts, safe: Safe): string {
  if (emergencyCard === undefined) return '';
  return `Emergency card${room === undefined ? '' : `, ${safe(room)}`}: ${safe(emergencyCard)}`;
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
      return 'Plan in change: shown is the last approved one.';
    case 'approved':
      return '';
  }
}
