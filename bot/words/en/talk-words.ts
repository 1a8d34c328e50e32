import type { Outcome, ZonedMoment } from '../../../domain/calendar/scheduled-class.ts';
import type { LifeStepKind } from '../../../domain/plan/plan-life.ts';
import type { PlanVersion } from '../../../domain/ports.ts';
import { lengthText } from './card-words.ts';
import { personFirst, personText } from './person-words.ts';
import { privateWords } from './private-words.ts';

/** A day and time in the studio's zone: `Thu 8 Oct, 18:30`. */
export function whenText({ date, time }: Pick<ZonedMoment, 'date' | 'time'>): string {
  return `${dayText({ date })}, ${time}`;
}

function dayText({ date }: Pick<ZonedMoment, 'date'>): string {
  const day = new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    timeZone: 'UTC',
  });
  return day.format(new Date(`${date}T00:00:00Z`));
}

export const flowWords = {
  fixLinesFirst: 'Some lines could not be read yet. Put them right first; the card in its thread shows how.',
  madeOnEarlierVersion: (version: number) =>
    `The plan is at v${version} now, and that line has moved on. The card shows it as it stands.`,
  nothingToUndo: 'This is the first version: there is nothing to undo.',
  nothingToRedo: 'There is nothing to redo.',
  openLinesLeft:
    'Not sent: a line is still open (?). Put a move in its place first, for example swap A1 goblet squat.',
  buttonGone:
    'That button is out of date and changed nothing. The newest message shows what can be done now.',
  onlyInstructorMarks: 'Only the instructor of the class or a head coach can mark it.',
  startedFrom: (title: string, version: number, made: Pick<ZonedMoment, 'date'>) =>
    `Started from ${title}, v${version} of ${dayText(made)}.`,
  noClassAgain: (said: string, titles: readonly string[]) =>
    [
      said === '' ? 'Which class once more?' : `I found no class called ${said}.`,
      titles.length === 0 ? 'Write one as a message first.' : `There are: ${titles.join(' · ')}`,
    ].join(' '),
  draftIsAt: (link: string) => `Your draft and its card are here: <${link}|open the draft>.`,
  weekUnclear: (running: string) =>
    `Which week? week alone is the running one; week last, or week ${running}, work too.`,
  nearestEdit: (edit: string) => `I did not read that as an edit. Did you mean: ${edit}`,
  versionLine: ({ version, cause, totalSeconds }: PlanVersion) =>
    `v${version} · ${causeText(cause)} · ${totalSeconds === 0 ? 'lines to put right' : lengthText(totalSeconds)}`,
} as const;

function causeText(cause: PlanVersion['cause']): string {
  switch (cause.kind) {
    case 'written':
      return 'written';
    case 'edit':
      return cause.words.replaceAll('\n', ', ');
    case 'undo':
      return `undo, back to v${cause.restores}`;
    case 'redo':
      return `redo, forward to v${cause.restores}`;
  }
}

export const editWords = {
  undone: (version: number) => `Undone: this is v${version} again.`,
  redone: (version: number) => `Redone: this is v${version} again.`,
  rewritten: (title: string) => `Read anew: ${title}${/[.!?…]$/u.test(title) ? '' : '.'}`,
  cleared: (finding: string) => `Cleared: ~${finding.replaceAll('*', '')}~`,
} as const;

export const reviewWords = {
  lead: (title: string, author: string, version: number) =>
    `${title}, v${version}, for review from ${personText(author, 'an instructor')}`,
  nowAt: (version: number) => `Now at v${version}.`,
  changedSince: 'Changed since the last approval:',
  changedSinceAsked: (version: number) => `Changed since changes were asked on v${version}:`,
  moreChanges: (count: number) => `and ${count} more lines; the plan has all of them`,
  technical: (names: string) => `Technical: ${names}`,
  approveButton: (version: number) => `Approve v${version} for teaching`,
  askButton: 'Ask for changes',
  approvedNote: (by: string, version: number, note = '') =>
    `${personFirst(by, 'a coach')} approved v${version} for teaching: structure and timing.${note === '' ? '' : `\nNote: ${note}`}`,
  changesNote: (by: string, version: number, reason: string) =>
    `${personFirst(by, 'a coach')} asks for changes to v${version}: ${reason}\nReply here with an edit, then Send for review.`,
  decided: (kind: LifeStepKind, by: string, version: number, reason: string) =>
    decidedText(kind, by, version, reason),
} as const;

function decidedText(kind: LifeStepKind, by: string, version: number, reason: string): string {
  switch (kind) {
    case 'approved':
      return `Approved for teaching, structure and timing: v${version}, by ${personText(by, 'a coach')}${reason === '' ? '' : `. Note: ${reason}`}`;
    case 'changes asked':
      return `Changes asked by ${personText(by, 'a coach')} on v${version}: ${reason}`;
    case 'withdrawn':
      return `Taken back by ${personText(by, 'a coach')}`;
    case 'sent':
    case 'changed after approval':
      return '';
  }
}

export const formWords = {
  close: 'Close',
  draftTitle: 'Write a class',
  draftSubmit: 'Make the draft',
  classLabel: 'The class, a line each',
  classGoesOn: 'The class goes on',
  classHint: `Title and length first, then blocks and moves. ${privateWords.hint}`,
  classPlaceholder:
    'Row & Squat, 40 min, level 2\nwarm-up 6:00\ncircuit x3, 40/20\ngoblet squat\nbent-over row\ncool-down to the end',
  classUnclear:
    'I found no block in this. Start with a title and length, then a line like: circuit x3, 40/20',
  scheduleTitle: 'Put on the calendar',
  scheduleSubmit: 'Save',
  date: 'Day',
  offeredSlot: (title: string) =>
    `Filled in: your next class without a plan${title === '' ? '' : `, ${title}`}.`,
  time: 'Start, in the studio’s time',
  room: 'Room',
  people: 'People expected',
  peopleHint: 'A number only; kit is counted for it.',
  dateMissing: 'Pick a day.',
  timeMissing: 'Pick a start time.',
  noSuchTime: 'There is no such day or time. Pick another.',
  roomGone: 'That room is not in the settings. Pick another.',
  inThePast: 'That moment has passed. Pick a later day or time.',
  askTitle: 'Ask for changes',
  askSubmit: 'Send to instructor',
  askLabel: 'What should change, and why',
  privacyHint: privateWords.hint,
  reasonMissing: 'Say in a line what should change.',
  taughtTitle: 'Taught with changes',
  taughtSubmit: 'Save',
  taughtLabel: 'What was different',
  changesMissing: 'Say in a line what was different.',
} as const;

export const afterWords = {
  lead: (title: string, when: string) => `*${title}*, ${when}: how did it go?`,
  coverLead: (title: string, when: string) => `*${title}*, ${when}: cover stayed open. Did it take place?`,
  askInShort: 'Taught as planned, with changes, or not taught?',
  asPlanned: 'Taught as planned',
  withChanges: 'Taught with changes',
  notTaught: 'Not taught',
  effortAsk: 'How hard for the group, your estimate',
  effortOption: (effort: number) =>
    effort === 0 ? '0, no effort' : effort === 10 ? '10, as hard as it gets' : String(effort),
  length: (length: 'short' | 'on time' | 'over') =>
    length === 'short' ? 'Ended short' : length === 'over' ? 'Ran over' : 'On time',
  hint: 'Each answer can be changed. No names or health details of members.',
  said: (outcome: Outcome) =>
    [
      howText(outcome),
      outcome.effort === undefined ? '' : `how hard for the group, your estimate: ${outcome.effort} of 10`,
      outcome.length === undefined ? '' : lengthOf(outcome.length),
    ]
      .filter((part) => part !== '')
      .join(' · '),
} as const;

function howText({ how, changes }: Outcome): string {
  switch (how) {
    case 'as planned':
      return 'Taught as planned';
    case 'with changes':
      return /^taught:/i.test(changes ?? '')
        ? `Without a plan, ${changes}`
        : `Taught with changes: ${changes ?? ''}`;
    case 'not taught':
      return 'Not taught';
    case 'as planned, assumed':
      return 'Taught as planned, assumed';
  }
}

function lengthOf(length: 'short' | 'on time' | 'over'): string {
  return length === 'on time' ? 'on time' : length === 'short' ? 'ended short' : 'ran over';
}
