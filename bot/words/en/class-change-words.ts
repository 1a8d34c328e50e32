import type { ScheduledClass } from '../../../domain/calendar/scheduled-class.ts';
import type { WallTime } from '../../../domain/plan/plan.ts';
import { personText } from './person-words.ts';
import { whenText } from './talk-words.ts';

type Safe = (typed: string) => string;
type Named = Pick<ScheduledClass, 'title' | 'startsAt'>;

/** What is done to a class by form. `startsAt` in the studio's time; without a room it keeps its own. */
export type ClassChange =
  | { readonly kind: 'cancel' }
  | { readonly kind: 'on again' }
  | { readonly kind: 'move'; readonly startsAt: WallTime; readonly room?: string };

/** What a change makes the app say, and to whom. */
export type ToldOfChange = {
  /** Absent where none is set: the team is told nothing. */
  readonly teamChannel?: string;
  /** Its countdown stands there. */
  readonly countdown: boolean;
  /** An offer of cover stands there. */
  readonly offer: boolean;
  /** Days whose lists stand there, `YYYY-MM-DD`. */
  readonly lists: readonly string[];
  /** Who gets a message of their own. */
  readonly people: readonly string[];
};

/** A class moved or cancelled by form, and what that will say to whom. */
export const classChangeWords = {
  openButton: 'Move or cancel',
  title: 'Move or cancel',
  next: 'Next',
  nothingYet: 'Nothing is posted yet: the next page says what will be, and to whom.',
  what: 'What',
  move: 'Move it',
  cancel: 'Cancel it',
  sameRoom: 'No room given: it keeps its own.',
  confirmTitle: 'Is this right?',
  submit: ({ kind }: ClassChange) => submitText(kind),
  lead: (one: Named, change: ClassChange, safe: Safe) => leadText(one, change, safe),
  postedTitle: 'What is said, and to whom:',
  posted: (change: ClassChange, told: ToldOfChange) => postedLines(change, told),
  doneTitle: 'The class',
  others: 'Classes of others',
  othersHow: 'Move or cancel one of the next four weeks.',
  othersChoose: 'Choose a class',
} as const;

function submitText(kind: ClassChange['kind']): string {
  switch (kind) {
    case 'cancel':
      return 'Cancel the class';
    case 'on again':
      return 'Put it on again';
    case 'move':
      return 'Move the class';
  }
}

function leadText({ title, startsAt }: Named, change: ClassChange, safe: Safe): string {
  const named = `*${safe(title ?? 'Untitled class')}*, ${whenText(startsAt)}`;
  switch (change.kind) {
    case 'cancel':
      return `${named}, is cancelled.`;
    case 'on again':
      return `${named}, is on again.`;
    case 'move': {
      const room = change.room === undefined ? '' : `, in ${safe(change.room)}`;
      return `${named}, moves to ${whenText(change.startsAt)}${room}.`;
    }
  }
}

function postedLines(change: ClassChange, told: ToldOfChange): readonly string[] {
  const { teamChannel, people } = told;
  const inTeam =
    teamChannel === undefined
      ? ['No team channel is set: the team is told nothing.']
      : teamLines(change, told).map((line) => `<#${teamChannel}>: ${line}`);
  const directly = people.map(
    (person) => `${personText(person)}: a message that you ${didText(change.kind)}.`,
  );
  return [...inTeam, ...(directly.length === 0 ? ['Nobody else gets a message.'] : directly)].map(
    (line) => `• ${line}`,
  );
}

function teamLines({ kind }: ClassChange, { countdown, offer, lists }: ToldOfChange): readonly string[] {
  return [
    countdownText(kind, countdown),
    ...(offer
      ? [
          kind === 'move'
            ? 'the offer of cover is made again as it stands then.'
            : 'the offer of cover is closed.',
        ]
      : []),
    ...lists.map((day) => `the list of ${whenText({ date: day, time: '' }).replace(/, $/, '')} follows.`),
  ];
}

function countdownText(kind: ClassChange['kind'], stands: boolean): string {
  switch (kind) {
    case 'cancel':
      return stands ? 'its countdown says that it is cancelled.' : 'its countdown does not come.';
    case 'on again':
      return stands ? 'its countdown goes on.' : 'its countdown comes as always.';
    case 'move':
      return stands
        ? 'its countdown says where it went; a new one comes before it.'
        : 'its countdown comes before the new start.';
  }
}

function didText(kind: ClassChange['kind']): string {
  switch (kind) {
    case 'cancel':
      return 'cancelled it';
    case 'on again':
      return 'put it on again';
    case 'move':
      return 'moved it';
  }
}
