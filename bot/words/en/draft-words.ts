import type { LeftToWrite } from '../../../domain/shorthand/part-problems.ts';
import { personText } from './person-words.ts';

/** Whole messages that ask for nothing. */
const smallTalk =
  /^(?:(?:ok(?:ay)?|kk?|thx|ty|cheers|great|nice|cool|super|perfect|lovely|good|done|fine|yes|yep|thank you|thanks)(?: (?:so much|a lot|again|then))?|(?!:wave):[+\w-]+:|(?:(?!👋)\p{Extended_Pictographic}|\p{Emoji_Modifier}|\u200d|\ufe0f)+)(?:[\s.!,]+|$)/iu;

function isSmallTalk(text: string): boolean {
  let left = text.trim();
  while (left !== '') {
    const found = smallTalk.exec(left)?.[0];
    if (found === undefined) return false;
    left = left.slice(found.length);
  }
  return text.trim() !== '';
}

/** What is said while a draft is written, sent and taken back. */
export const draftWords = {
  isSmallTalk,
  gladly: 'Gladly. Send a class or an edit any time.',
  leftToWrite: leftToWriteText,
  linesWelcome:
    'Each message you send within five minutes is its next line; in this thread a line comes in at any time.',
  /** `line`: one that could not be read. */
  mendHow: (how: { readonly names: boolean; readonly line: number; readonly ownMessage: boolean }) => {
    const ways = [
      ...(how.names ? ['tap a name'] : []),
      `reply with the line put right (line ${how.line}: …)`,
      ...(how.ownMessage ? ['edit your message'] : []),
    ];
    const said = ways.length > 2 ? `${ways.slice(0, -1).join(', ')}, or ${ways.at(-1)}` : ways.join(', or ');
    return `${said.slice(0, 1).toUpperCase()}${said.slice(1)}.`;
  },
  mendFirst: 'Not yet: these lines come first.',
  notWhole: 'Not yet: the class is not whole.',
  leaveOut: (line: number) => `Leave line ${line} out`,
  noSuchLine: (line: number, last: number) =>
    last === 1
      ? `There is no line ${line}: the draft has one line. Nothing was changed.`
      : `There is no line ${line}: the draft has lines 1 to ${last}. Nothing was changed.`,
  onlyLines: 'Nothing would be left of the draft. Write the class anew in this thread instead.',
  openLines: (count: number) =>
    count === 1
      ? 'One line is still open (?). Put a move in its place, then send it.'
      : `${count} lines are still open (?). Put moves in their place, then send it.`,
  noLineOpen: 'No line is open here.',
  fillByHand: (labels: readonly string[]) =>
    `Open: ${labels.join(' ')}. Put a move there: swap ${labels[0]} goblet squat`,
  sent: (version: number, channel: string | undefined) =>
    `v${version} is sent for review${channel === undefined ? '' : ` to <#${channel}>`}.`,
  approvedByTrust: (version: number) => `v${version} is approved for teaching: structure and timing.`,
  takenBack: (version: number) => `Taken back: v${version} is a draft again.`,
  youTookItBack: 'It is a draft already: you took it back.',
  nothingChanged: 'Nothing changed: it stands like that already.',
  leftOutOfText: (edits: string) => `From the thread, not in this text: ${edits}`,
  inItsThread: (title: string) =>
    `That goes into the thread under your class: open ${title} and reply there.`,
  moveWhat: (letters: readonly string[]) =>
    [
      ...(letters.length > 1 ? [`A letter: move ${letters.at(-1)} before ${letters[0]}.`] : []),
      'The class: move Thu 18:30 to Fri 19:00.',
    ].join(' '),
  by: (personId: string) => personText(personId),
  today: 'today',
  yesterday: 'yesterday',
} as const;

function leftToWriteText(left: LeftToWrite): string {
  switch (left.kind) {
    case 'blocks':
      return 'Now its blocks, for example: circuit x3, 40/20';
    case 'moves':
      return `Now the moves of this ${left.block}, a line each.`;
  }
}
