import { personFirst, personText } from './person-words.ts';

/** Words of the coach's side: comments, notes, several reviews at once. */
export const coachWords = {
  isNew: 'First time',
  repeats: (when: string) => `Taught before, last ${when}`,
  covers: (person: string) => `Cover: taught by ${personText(person, 'an instructor')}`,
  explaining: (length: string) => `explaining ${length} inside it`,
  newMoves: (names: string) => `First time here: ${names}`,
  patternInWeek: (pattern: string, sets: string, week: string) => `${pattern} ${sets} (${week} in its week)`,
  openComments: 'Open comments:',
  noteButton: 'Approve with a note',
  noteTitle: 'Approve with a note',
  noteSubmit: 'Approve for teaching',
  noteLabel: 'Note to the instructor',
  noteMissing: 'Write the note, or close this and tap Approve.',
  commentButton: 'Comment on a move',
  commentTitle: 'Comment on a move',
  commentSubmit: 'Send to instructor',
  commentOn: 'Which letter',
  commentLabel: 'Comment',
  commentMissing: 'Write the comment.',
  commentLineMissing: 'Pick a letter.',
  commented: (by: string, where: string, text: string) =>
    `${personFirst(by, 'a coach')} on ${where}: ${text}`,
  commentGone: 'a line that is gone',
  commentLineGone: 'That line is not in the plan as it stands now. Pick another.',
  noSuchLetter: (label: string, last: string) =>
    `There is no ${label} in this plan; its last letter is ${last}.`,
  resolveButton: 'Mark resolved',
  resolved: (by: string) => `Resolved by ${personText(by)}`,
  onlyTheirs: 'Only the instructor of the plan or a head coach can resolve this.',
  byTrust: 'nothing found, and its instructor is trusted',
  keepsApproval: 'a small change or another day; the approval stays',
  onlyCoaches: 'Only a head coach sees all that waits for review.',
  noneWaits: 'Nothing waits for review.',
  batchLead: (clean: number, toLookAt: number) =>
    [clean === 0 ? '' : `${clean} clean`, toLookAt === 0 ? '' : `${toLookAt} to look at`]
      .filter((part) => part !== '')
      .join(', '),
  batchClean: '*Clean:* fits its time, nothing found, no comment open',
  batchLook: '*To look at:*',
  batchLine: (title: string, author: string, version: number, when: string) =>
    `${title}, v${version}, ${personText(author, 'an instructor')}${when === '' ? '' : `, ${when}`}`,
  batchMore: (count: number) => `and ${count} more`,
  batchOwn: 'your own',
  batchTrouble: (told: readonly string[], more: number, comments: number) =>
    [
      ...told,
      more === 0 ? '' : `and ${more} more to look at`,
      comments === 0 ? '' : `${comments} open comment${comments === 1 ? '' : 's'}`,
    ]
      .filter((part) => part !== '')
      .join(' '),
  approveClean: (count: number) =>
    count === 1 ? 'Approve the clean one' : `Approve the clean ones (${count})`,
  approvedClean: (count: number) => `${count === 1 ? '1 plan' : `${count} plans`} approved for teaching.`,
  leftOut: 'Left as they are, since they changed or were decided meanwhile:',
} as const;
