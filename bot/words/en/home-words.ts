import type { PlanState } from '../../../domain/plan/plan-life.ts';
import type { SetUpStep } from '../../flows/set-up-steps.ts';

/** What the home tab says. */
export const homeWords = {
  write: 'Write a class',
  today: 'My classes today',
  week: 'My next seven days',
  waitsForMe: 'Waits for me',
  drafts: 'My drafts',
  approval: 'Waits for approval',
  none: {
    approval: 'nothing to approve',
    today: 'no class today',
    waiting: 'nothing waits for me',
    later: 'no class in the next seven days',
    drafts: 'no draft',
  },
  nothing: (none: readonly string[]) => {
    const text = none.join(' · ');
    return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
  },
  clean: 'Clean: fits its time, nothing found',
  state: (state: PlanState, approvedBefore: boolean) => stateText(state, approvedBefore),
  look: 'Look',
  noPlan: 'no plan yet',
  cancelled: 'cancelled',
  coverOpen: 'cover is open',
  moved: 'moved',
  wait: (kind: Waiting['kind']) => waitText(kind),
  more: (count: number) => `and ${count} more`,
  muscles: 'Sets by muscle and day, this week',
  musclesHow:
    'Interval sets of classes taught and planned, Monday to Sunday; from 10 on in whole numbers. A class without a plan is unknown, not zero: ?.',
  dayHeads: ['M', 'T', 'W', 'T', 'F', 'S', 'S'],
  setUp: 'Before the studio is ready',
  setUpStep: (step: SetUpStep) => setUpText(step),
  how: 'A plan lives in its thread: reply there to change it.',
  settings: 'Settings',
  notices: 'My notices',
  data: 'My data',
} as const;

function stateText(state: PlanState, approvedBefore: boolean): string {
  switch (state) {
    case 'draft':
      return approvedBefore ? 'approved, a change not sent' : 'draft';
    case 'in review':
      return approvedBefore ? 'approved, a change in review' : 'in review';
    case 'approved':
      return 'approved';
  }
}

/** Something a person is waited for. */
export type Waiting = {
  readonly kind: 'changes asked' | 'no plan soon' | 'not sent soon' | 'how was it';
};

function waitText(kind: Waiting['kind']): string {
  switch (kind) {
    case 'changes asked':
      return 'changes asked: reply in its thread';
    case 'no plan soon':
      return 'no plan yet: write one';
    case 'not sent soon':
      return 'still a draft: send it for review';
    case 'how was it':
      return 'say how it went';
  }
}

function setUpText(step: SetUpStep): string {
  switch (step) {
    case 'zone':
      return 'Time zone: times are UTC until it is set.';
    case 'headCoaches':
      return 'Head coach: nobody can approve until one is named.';
    case 'reviewChannel':
      return 'Review channel: plans can’t be sent until it is set.';
    case 'teamChannel':
      return 'Team channel: no countdown or report is posted until it is set.';
    case 'rooms':
      return 'Rooms: kit and capacity are not checked until there is one.';
    case 'emergencyCard':
      return 'Emergency card: a room has none, in the studio’s own words.';
    case 'slots':
      return 'Weekly slots: the timetable is empty.';
  }
}
