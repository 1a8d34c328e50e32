import type { NoticeKind, PersonData } from '../../../domain/ports.ts';
import type { RetentionSettings } from '../../../domain/settings.ts';

/** What people are told of the data kept about them. */
export const dataWords = {
  title: 'My data',
  headCoach: 'head coach',
  admin: 'admin',
  trustedInstructor: 'trusted instructor',
  instructor: 'instructor',
  firstRun: (kept: RetentionSettings) =>
    [
      'Send me a class as a message, or *hello*: I time it, count its load and check it.',
      '*What Evenset keeps, why, and how long*',
      'Of you: your id in this workspace, your roles, the plans and edits you write, steps of review, comments, classes you teach and what you say of them. To time, count, check and approve classes; for nothing else. Your name is the workspace’s to show and is not kept.',
      `Drafts never sent go after ${kept.unsentDraftDays} days, comments after ${kept.commentDays}, the text of messages sent after ${kept.sentPayloadDays}; plans stand without you after ${kept.planDays} days. Backups go after 14 days.`,
      'Of members nothing: a head count is a number. Please write no names or health details.',
      'Write *my data* to see it, *forget me* to have it deleted, *notices* to choose what you hear.',
    ].join('\n'),
  mine: (
    data: PersonData & { readonly roles: readonly string[]; readonly off: readonly NoticeKind[] },
    kept: RetentionSettings,
    safe: (text: string) => string,
  ) =>
    [
      '*Kept of you*',
      'Your id in this workspace; no name.',
      `Roles: ${data.roles.length === 0 ? 'none' : data.roles.join(', ')}.`,
      `Plans: ${data.plans.length}${data.plans.length === 0 ? '' : ` (${titles(data, safe)})`}; versions of plans made: ${data.versions}.`,
      `Steps of review: ${data.steps}; comments and reasons: ${data.comments}.`,
      `Classes on the timetable: ${data.classes}; messages to you: ${data.notices}.`,
      ...(data.off.length === 0 ? [] : [`Notices switched off: ${data.off.map(noticeKindText).join('; ')}.`]),
      `Drafts never sent go after ${kept.unsentDraftDays} days, comments after ${kept.commentDays}, message text after ${kept.sentPayloadDays}; plans stand without you after ${kept.planDays} days.`,
    ].join('\n'),
  forgetLead:
    'This deletes your drafts, comments, what you said of classes, your roles and the messages kept for you. Approved plans and counts stay without you; approvals read *a coach*. Backups with your data go within 14 days, and a restore deletes it again. What stands in this workspace itself, you delete there. It can’t be undone.',
  forgetButton: 'Forget me',
  forgetTitle: 'Forget you?',
  forgetYes: 'Delete',
  forgetNo: 'Keep',
  forgotten: 'Done: nothing here leads to you any more. If you write again, it starts anew.',
  forgottenOther: 'Done: nothing here leads to them any more.',
  slotsLeft: (slots: readonly string[]) =>
    `No instructor now: ${slots.join(', ')}. ${slots.length === 1 ? 'Its' : 'Their'} classes are not announced until you name one in Settings, Weekly slots.`,
  onlyCoachForgets: 'Only head coaches and admins can have someone else forgotten. For yourself: forget me',
  noticesTitle: 'My notices',
  noticesLabel: 'Tell me',
  noticesHint: 'Answers to what you do, reviews and cover always come.',
  noticesSave: 'Save',
  noticesButton: 'Choose notices',
  noticesLead: 'Which notices would you like?',
  noticeKind: noticeKindText,
  noticesSaved: (off: readonly NoticeKind[]) =>
    off.length === 0 ? 'You hear everything.' : `Off: ${off.map(noticeKindText).join('; ')}.`,
} as const;

const mostTitles = 20;

function titles({ plans }: PersonData, safe: (text: string) => string): string {
  const named = plans.slice(0, mostTitles).map(({ title }) => safe(title ?? 'untitled'));
  return plans.length > mostTitles
    ? `${named.join(', ')} and ${plans.length - mostTitles} more`
    : named.join(', ');
}

function noticeKindText(kind: NoticeKind): string {
  switch (kind) {
    case 'how it went':
      return 'after a class: how did it go';
    case 'before a class':
      return 'just before my class: its first lines';
    case 'plans that wait':
      return 'a plan of my class that is not approved yet';
  }
}
