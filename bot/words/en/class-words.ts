import type { Clash } from '../../../domain/calendar/clashes.ts';
import type { ClassFacts, PlanStanding } from '../../../domain/calendar/facts-of-class.ts';
import type { KitRotation } from '../../../domain/calendar/kit-shortages.ts';
import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import type { LateStartCut } from '../../../domain/timing/fit.ts';
import { peopleText } from './card-words.ts';
import { countdownWords } from './countdown-words.ts';
import { personFirst, personText } from './person-words.ts';
import { whenText } from './talk-words.ts';

type Safe = (typed: string) => string;
type Named = Pick<ScheduledClass, 'title' | 'startsAt'>;
type Placed = Pick<ScheduledClass, 'title' | 'startsAt' | 'room'>;

/** What is said of the timetable: the evening before, the last minutes, exceptions and clashes. */
export const classWords = {
  named: namedText,
  untitled: 'Untitled class',

  digestLead: (date: string, held: number) =>
    `${dayText(date)}: ${held === 1 ? '1 class' : `${held} classes`}`,
  digestLine: (facts: ClassFacts, cancelled: boolean, clashes: readonly string[], safe: Safe) => {
    const title = `${facts.startsAt.time} *${safe(facts.title ?? 'Untitled class')}*`;
    if (cancelled) return `${title}: cancelled`;
    const where = [
      facts.coverOpen ? '*cover open*' : personText(facts.instructorId, 'an instructor'),
      ...(facts.room === undefined ? [] : [safe(facts.room)]),
      ...(facts.people === undefined ? [] : [peopleText(facts.people)]),
    ].join(', ');
    const notes = [
      ...facts.kitShort.map(countdownWords.kitShort),
      countdownWords.standing(facts.plan),
      ...clashes,
    ].filter((note) => note !== '');
    return [`${title}, ${where}`, ...notes].join('\n    ');
  },
  digestCause: 'From the timetable, the evening before. The hour is in Settings.',

  askIn: (one: Named, minutes: number, room: string | undefined, safe: Safe) =>
    `${namedText(one, safe)}${room === undefined ? '' : `, ${safe(room)}`}, starts in ${minutes} min. Are you in?`,
  inButton: 'I’m in',
  cannotButton: 'I can’t teach it',
  isIn: (one: Named, safe: Safe) => `${namedText(one, safe)}: you are in. Have a good class.`,
  askOver: (one: Named, safe: Safe) => `${namedText(one, safe)}: not yours to confirm as it stands now.`,
  askEnded: (one: Named, safe: Safe) => `${namedText(one, safe)}: it is over.`,
  notIn: (one: Named, instructorId: string, minutes: number, safe: Safe) =>
    `${namedText(one, safe)}, starts in ${minutes} min and ${personText(instructorId, 'an instructor')} has not said *I’m in* yet.`,
  coverStillOpen: (one: Named, left: string, safe: Safe) =>
    `${namedText(one, safe)}, starts in ${left}: cover is still open.`,
  left: (seconds: number) =>
    seconds >= 5400 ? `${Math.round(seconds / 3600)} h` : `${Math.max(0, Math.ceil(seconds / 60))} min`,

  firstLines: (one: Named, minutes: number, safe: Safe) =>
    `${namedText(one, safe)}, starts in ${minutes} min. It begins:`,
  lateCut: ({ lateSeconds, proposal }: LateStartCut) => {
    const late = `${lateSeconds / 60} min late`;
    return proposal === undefined
      ? `${late}: nothing to cut, the spare time covers it.`
      : `${late}: ${proposal.edit.replaceAll('\n', ', ')}`;
  },

  planWaits: (one: Named, left: string, standing: PlanStanding, safe: Safe) =>
    standing === 'change waits'
      ? `${namedText(one, safe)}, starts in ${left}: a change to its plan waits for approval. The team sees the last approved plan.`
      : `${namedText(one, safe)}, starts in ${left}: its plan is not approved yet. The team sees: *plan in change*.`,

  missedLead: (from: string, to: string) =>
    `I was stopped from ${from} to ${to}. What I did not post in that time, because it came too late to help:`,
  missedLine: (one: Named, what: readonly string[], safe: Safe) =>
    `• ${namedText(one, safe)}: ${what.join(', ')}`,
  missed: {
    countdown: 'countdown',
    digest: (date: string) => `• the evening’s list for ${dayText(date)}`,
    weekReport: (week: string) =>
      `• the report on week ${Number(week.slice(6))}: /evenset week ${week} shows it`,
    planWaits: 'that its plan was not approved',
    areYouIn: 'I’m in',
    firstLines: 'first lines',
    howWasIt: 'how did it go',
  },

  clash: (clash: Clash, withNames: readonly string[], reader?: string) => {
    const others = withNames.join(' and ');
    switch (clash.kind) {
      case 'room':
        return `Clash: the room is taken by ${others}.`;
      case 'instructor':
        if (clash.instructorId === reader) return `Clash: you also teach ${others}.`;
        return `Clash: ${personText(clash.instructorId, 'an instructor')} also teaches ${others}.`;
      case 'kit':
        return `Clash: ${clash.needPieces} ${clash.item} pieces are needed of the ${clash.havePieces} shared ones, together with ${others}.`;
    }
  },

  recount: (people: number, planned: number | undefined) =>
    planned === undefined || planned === people
      ? `Counted again for ${people}.`
      : `Counted again for ${people}, in this class alone. Its plan stays written for ${planned}.`,
  enough: 'The kit in the room is enough.',
  rotate: ({ label, item, atOnce, over, startAt }: KitRotation) =>
    startAt === undefined
      ? `${label}: ${item} for ${atOnce} at once. ${over} share: in pairs, one works while one rests.`
      : `${label}: ${item} for ${atOnce} at once. ${over} start at ${startAt} and change over each round.`,
  noPlanToCount: 'There is no approved plan to count kit for; the class’s head count is kept.',
  noRoomToCount: 'Its room’s kit is not in the settings, so nothing can be called short.',
  whichClassNow: 'No class of yours starts or runs about now. Say it in the thread of the class.',

  cancelled: (one: Named, safe: Safe) => `${namedText(one, safe)}, is cancelled.`,
  onAgain: (one: Named, safe: Safe) => `${namedText(one, safe)}, is on again.`,
  moved: (one: Placed, after: Placed, safe: Safe) =>
    `${namedText(one, safe)}, ${movesText(one, after, safe)}.`,
  offerAsk: (one: Named, channel: string, from: string, safe: Safe) =>
    `Offer ${namedText(one, safe)}, to the team? <#${channel}> then reads that ${personText(from, 'an instructor')} can’t teach it, and no reason.`,
  offerAskWhich: (channel: string) =>
    `Which class can’t you teach? One tap offers it to the team in <#${channel}>; no reason is said.`,
  offerButton: 'Offer it to the team',
  coverAsked: (one: Named, safe: Safe) =>
    `${namedText(one, safe)}: offered to the team. The first to take it gets it; the coach knows.`,
  takeBackButton: 'Take it back',
  offerTakenBack: (one: Named, safe: Safe) =>
    `${namedText(one, safe)}: it is not offered any more, you teach it.`,
  coachTakenBack: (one: Named, by: string, safe: Safe) =>
    `${personFirst(by, 'an instructor')} teaches ${namedText(one, safe)}, after all.`,
  notOffered: (one: Named, safe: Safe) => `${namedText(one, safe)}, is not offered to the team.`,
  coverOffer: (facts: ClassFacts, safe: Safe) => [
    `${personFirst(facts.instructorId, 'an instructor')} can’t teach ${namedText(facts, safe)}. Who takes it?`,
    [
      ...(facts.room === undefined ? [] : [safe(facts.room)]),
      ...(facts.people === undefined ? [] : [peopleText(facts.people)]),
      facts.plan === 'none' ? 'no plan yet, three house classes are ready' : 'its plan comes with it',
    ].join(', '),
  ],
  takeButton: 'I take it',
  coverTaken: (one: Named, by: string, from: string, safe: Safe) =>
    `${personFirst(by, 'an instructor')} takes ${namedText(one, safe)}, from ${personText(from, 'an instructor')}.`,
  coverMoved: (one: Named, after: Named, safe: Safe) =>
    `${namedText(one, safe)}, is at another time now: ${whenText(after.startsAt)}.`,
  coverOver: (one: Named, safe: Safe) => `${namedText(one, safe)}: nobody took it.`,
  coachOpen: (one: Named, from: string, safe: Safe) =>
    `${personFirst(from, 'an instructor')} can’t teach ${namedText(one, safe)}. It is offered to the team.`,
  coachTaken: (one: Named, by: string, safe: Safe) =>
    `${personFirst(by, 'an instructor')} teaches ${namedText(one, safe)}.`,
  alreadyTaken: (one: Named, by: string, safe: Safe) =>
    `${namedText(one, safe)}, is ${personText(by, 'an instructor')}’s already. Nothing was changed.`,
  yoursNow: (one: Named, safe: Safe) =>
    `${namedText(one, safe)}, is yours. Plan and lay-out are in your messages.`,
  youTeach: (one: Named, safe: Safe) => `You teach ${namedText(one, safe)}. Thank you.`,
  houseAsk: 'It has no plan yet. These are ready; one tap makes it your draft:',
  changedBy: (one: Named, by: string, what: 'cancelled' | 'on again', safe: Safe) =>
    what === 'cancelled'
      ? `${personFirst(by)} cancelled ${namedText(one, safe)}.`
      : `${personFirst(by)} put ${namedText(one, safe)}, on again.`,
  movedBy: (one: Placed, after: Placed, by: string, safe: Safe) =>
    one.startsAt.instant === after.startsAt.instant
      ? `${personFirst(by)} moved ${namedText(one, safe)}, to ${safe(after.room ?? '')}.`
      : `${personFirst(by)} moved ${namedText(one, safe)}, to ${whenText(after.startsAt)}${inRoom(one, after, safe)}.`,
  holiday: (from: string, to: string, lines: readonly string[]) =>
    lines.length === 0
      ? `No class from ${dayText(from)} to ${dayText(to)}: nothing to cancel.`
      : `Cancelled from ${dayText(from)} to ${dayText(to)}:\n${lines.join('\n')}`,

  onlyInstructor: 'Only the instructor of the class or a head coach can do that.',
  onlyCoach: 'Only a head coach can do that.',
  notThisClass: 'That class is over or stands otherwise by now. Nothing was changed.',
  noSuchClass: (said: string) =>
    `I found no class for “${said}” in the next four weeks. Say the day, and the time where there are several: cancel Thu 18:30.`,
  severalClasses: 'Several classes fit. Which one?',
  sameMoment: 'It is at that time and in that room already.',
  noSuchDay: 'I know no such day. Say it as Thu 15 Oct, 15.10. or 2026-10-15.',
  movesWhich: 'Two days fit. To which does it move?',
  holidayHow: 'Say the first and the last day: holiday Mon 21 Dec to Sun 27 Dec.',
  inThePast: 'That moment has passed. Say a later one.',
  moveWhere: 'Say where to: move Thu 18:30 to Fri 19:00.',
  exceptionsHelp:
    'Timetable: can’t teach Thu · cancel Thu 18:30 · move Thu 18:30 to Fri 19:00 · give Thu to @name · on again Thu 18:30 · holiday 21 Dec to 27 Dec · 18 now · calendar',
  noTeamChannel:
    'No team channel is set, so nobody could be asked. Nothing was changed; choose the channel in Settings, on Evenset’s home.',

  feedReady: (url: string) =>
    `The timetable as a calendar to subscribe to. Whoever has this address can read it, so keep it in the studio:\n${url}\nThe same as a file is in your messages. A new address ends this one: calendar new.`,
  feedNeedsUrl: (path: string) =>
    `The timetable as a file is in your messages. To subscribe to it, add this to the app’s own address (set in Settings, it is put in front here); whoever has it can read the timetable:\n${path}`,
  fileTitle: (day: string) => `Timetable, as of ${day}`,
  fileText: 'The timetable as a calendar file. It does not change by itself; the subscribed one does.',
  calendarSummary: ({ title }: Pick<Named, 'title'>, facts: ClassFacts, cancelled: boolean) => {
    const state = cancelled
      ? 'cancelled'
      : facts.coverOpen
        ? 'cover open'
        : facts.plan === 'none'
          ? 'no plan yet'
          : facts.plan === 'approved'
            ? ''
            : 'plan in change';
    const name = title ?? 'Untitled class';
    return state === '' ? name : `${name} (${state})`;
  },
} as const;

function namedText({ title, startsAt }: Named, safe: Safe): string {
  return `*${safe(title ?? 'Untitled class')}*, ${whenText(startsAt)}`;
}

function movesText(one: Placed, after: Placed, safe: Safe): string {
  return one.startsAt.instant === after.startsAt.instant
    ? `is in ${safe(after.room ?? '')} from now on`
    : `moves to ${whenText(after.startsAt)}${inRoom(one, after, safe)}`;
}

function inRoom(one: Placed, after: Placed, safe: Safe): string {
  return after.room === undefined || after.room === one.room ? '' : `, in ${safe(after.room)}`;
}

function dayText(date: string): string {
  return whenText({ date, time: '' }).replace(/, $/, '');
}
