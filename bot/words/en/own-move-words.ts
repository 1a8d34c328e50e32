import type { Move } from '../../../domain/catalogue/move.ts';
import type { MoveProblem } from '../../../domain/catalogue/move-problems.ts';
import { personFirst } from './person-words.ts';

/** Sentences about a studio's own moves and nicknames. */
export const ownMoveWords = {
  addButton: 'Add as our own move',
  formTitle: 'Our own move',
  changeTitle: 'Change our move',
  submit: 'Save',
  name: 'Name, as people type it',
  like: 'Works like',
  likeHint: 'Muscles, pattern, time and cues are taken from it; say below only what differs.',
  differs: 'Left empty, each is as with the move it works like.',
  level: 'Level',
  levelChoice: (level: number) => `level ${level}`,
  primeMovers: 'Prime movers',
  assisting: 'Assisting muscles',
  kit: 'Kit for one person',
  kitChoice: (item: string, pieces: number) => (pieces === 2 ? `two: ${item}` : item),
  noKit: 'no kit',
  position: 'Position at the start',
  sides: 'Sides',
  effort: 'Counted as',
  easier: 'Easier option',
  nicknames: 'Nicknames, with commas between',
  cue: 'Form cue, one short sentence',
  standing: 'In use',
  offered: 'offered',
  retired: 'retired: old plans stay readable',
  added: (move: Move, like: string) =>
    `Added: *${move.name}*, like ${like}. ${factsText(move)}\nUse it at once in any class.`,
  changed: (move: Move) => `Changed: *${move.name}*. ${factsText(move)}\nTaught classes keep their counts.`,
  retiredNow: (name: string) =>
    `Retired: *${name}*. It is offered nowhere; plans that name it stay readable. bring back move ${name} undoes it.`,
  broughtBack: (name: string) => `Back in use: *${name}*.`,
  nicknamed: (nickname: string, name: string) => `“${nickname}” is read as *${name}* from now on.`,
  nicknameDropped: (nickname: string) => `“${nickname}” is a nickname here no more.`,
  toldCoach: (by: string, name: string, like: string) =>
    `${personFirst(by, 'an instructor')} added our own move *${name}*, like ${like}. A head coach can put it right: change move ${name}: level 2`,
  likeWhat: (name: string) => `Like which known move? For example: new move ${name} like push-up, level 2`,
  likeUnknown: (like: string, near: readonly string[]) =>
    near.length === 0
      ? `“${like}” is no move I know. Name one of the catalogue, such as push-up.`
      : `“${like}” is no single move. Did you mean ${near.join(', ')}?`,
  notOurs: (name: string) => `“${name}” is none of our own moves. our moves lists them.`,
  noSuchNickname: (nickname: string) => `“${nickname}” is no nickname here. our moves lists them.`,
  factsUnread: (parts: readonly string[]) =>
    `Not read: ${parts.join(', ')}. What works: level 2, kneeling, each side, chest + triceps, assists lats, two dumbbells, easier plank, also a nickname. Nothing was changed.`,
  onlyCoaches: 'Head coaches and admins change and retire our moves. Anyone can add one: new move … like …',
  none: 'We have no moves or nicknames of our own yet. Add one: new move yard crawl like bear crawl, level 2',
  listMove: (move: Move) => `• *${move.name}*${move.retired ? ', retired' : ''}: ${factsText(move)}`,
  listName: (nickname: string, name: string) => `• “${nickname}” = ${name}`,
  listHow: 'new move … like … · change move …: level 2 · retire move … · nickname … = … · drop nickname …',
  problem: moveProblemText,
  nameUnreadable: (name: string) =>
    `“${name}” reads as something else in a class. Add a word to it, such as yard ${name}.`,
} as const;

function factsText(move: Move): string {
  return [
    `level ${move.level}`,
    move.pattern,
    `prime ${move.primeMovers.join(' + ')}`,
    move.assisting.length === 0 ? '' : `assisting ${move.assisting.join(' + ')}`,
    move.kit.length === 0
      ? 'no kit'
      : move.kit.map(({ item, pieces }) => (pieces === 2 ? `two ${item}s` : item)).join(' + '),
    move.position,
    move.sides,
    move.effort,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}

/** Why a move can't stand in the catalogue, and what would work. */
function moveProblemText(problem: MoveProblem): string {
  switch (problem.code) {
    case 'name-unusable':
      return `“${problem.name}” can't be a name: use 2 to 60 letters, with spaces or hyphens.`;
    case 'name-holds-a-mark':
      return `“${problem.word}” in “${problem.name}” means something of its own in a class. Leave it out.`;
    case 'name-taken':
      return `“${problem.name}” is ${problem.by} already. Use that, or another name.`;
    case 'no-prime-mover':
      return 'Name at least one prime mover.';
    case 'muscle-twice':
      return `${problem.muscle} stands there twice: prime mover or assisting, not both.`;
    case 'rep-length':
      return `One repetition would take ${problem.seconds} s; 1 to 8 s is readable.`;
    case 'kit-pieces':
      return 'Each kit item once, one or two pieces for a person.';
    case 'mobility-is-effort-too':
      return 'Mobility is both pattern and count: set both or neither.';
    case 'one-side-of-one-side':
      return 'A move on one side has no single-sided form.';
    case 'cue-length':
      return 'A cue is one short sentence of at most 70 characters with a full stop.';
    case 'easier-missing':
      return 'Above level 1 a move needs an easier option. Add: easier … and its name.';
    case 'option-unknown':
      return 'The easier or harder option is no move I know.';
    case 'easier-is-harder':
      return `${problem.option} is of a higher level, so it is no easier option.`;
    case 'harder-is-easier':
      return `${problem.option} is of a lower level, so it is no harder option.`;
    case 'options-in-a-circle':
      return 'Its easier and harder options lead round in a circle. Choose another.';
  }
}
