import { personFirst } from './person-words.ts';

/** Words for leaving a finding out. */
export const dismissWords = {
  button: 'Leave out',
  title: 'Leave this check out',
  submit: 'Leave out',
  label: 'Why, in a few words',
  reasonMissing: 'Say in a few words why it can stay as it is.',
  gone: 'That is not found any more: nothing to leave out.',
  mustFix: 'This must be fixed; it can’t be left out.',
  done: (by: string, finding: string, reason: string) =>
    `${personFirst(by)} leaves out: ${finding} Why: ${reason}`,
} as const;
