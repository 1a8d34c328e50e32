import { printDay } from '../../../domain/calendar/days-meant.ts';
import type { BlockKind } from '../../../domain/plan/plan.ts';
import type { Excerpt } from '../../../domain/shorthand/excerpt.ts';
import type { LimitedThing, ModifierName, NearName, Problem } from '../../../domain/shorthand/problem.ts';
import { lengthText } from './card-words.ts';

/** What was seen, where, and what would work; with an excerpt, the line and a caret under it. */
export function problemText(problem: Problem, excerpt?: Excerpt): string {
  const said = `line ${problem.line}: ${problemSentence(problem)}`;
  if (excerpt === undefined) return said;
  const caret = ' '.repeat(excerpt.caretStart) + '^'.repeat(excerpt.caretLength);
  return `${said}\n  ${excerpt.lineText}\n  ${caret}`;
}

function problemSentence(problem: Problem): string {
  const read = short(problem.read);
  switch (problem.code) {
    case 'unknown-move':
      return problem.near.length === 0
        ? `I don't know the move "${read}". Try another name, add it as your own move, or keep it in quotes: "${read}".`
        : `I don't know the move "${read}". Did you mean ${namesText(problem.near)}?`;
    case 'ambiguous-move':
      return `"${read}" may be several moves. Which one: ${namesText(problem.choices)}?`;
    case 'unknown-kit':
      return `I don't know the kit "${read}". Try: kit: dumbbells, mats`;
    case 'unknown-wish':
      return `I can't fill "${read}". An open line takes muscles, patterns, regions, kit, no … and standing: ? row no kit`;
    case 'unknown-words':
      return `I can't read "${read}" ${problem.on === 'move' ? 'beside a move' : `on a ${problem.on} line`}. This works: ${problem.works}`;
    case 'number-needed':
      return `"${read}" needs its numbers. This works: ${problem.works}`;
    case 'unit-needed':
      return `"${read}" may mean two things. Write ${choiceText(problem.works)}.`;
    case 'sign-asked':
      return `"${read}" may be a weight or an effort. Write ${choiceText(problem.works)}.`;
    case 'said-twice':
      return `"${read}" says the ${problem.what} a second time. Keep one of the two.`;
    case 'not-here':
      return notHereText(problem.what, problem.block);
    case 'out-of-range':
      return `"${read}" is outside what I can plan: ${rangeText(problem.what, problem.least, problem.most)}.`;
    case 'too-many':
      return `${tooManyText[problem.what](problem.most)} This line goes over. Take it out, or make two classes of it.`;
    case 'message-too-long':
      return `this message has ${problem.length} characters; ${problem.most} is the most. Send the class in two parts.`;
    case 'no-block':
      return 'I see no block yet. Start one on a line of its own: circuit x3, 40/20';
    case 'no-moves':
      return `this ${problem.block} has no moves. Write them below it, a line each.`;
    case 'line-before-block':
      return `"${read}" stands before the first block. Put a block line above it: circuit x3, 40/20`;
    case 'line-under-time':
      return `"${read}" stands under ${problem.block}, which has no moves. Put a block line above it: circuit x3, 40/20`;
    case 'say-without-letter':
      return 'this cue has no move above it. Put it below the move it is for.';
    case 'misplaced-time':
      return misplacedText(problem.block, problem.at);
    case 'each-round-not-last':
      return `"${read}" belongs below the block's last move. Move it there, or write: between rounds 60`;
    case 'rounds-mismatch':
      return `there are ${problem.values} values but ${problem.rounds} rounds. A list is one value a round: leave out the x${problem.rounds}.`;
    case 'lists-differ':
      return `${problem.works} work values and ${problem.rests} rests. Write as many of one as of the other, or a single rest.`;
    case 'pairs-asked':
      return 'in pairs, do both work or does one rest? Write "in pairs, swap" or "in pairs, one rests".';
    case 'tabata-is-fixed':
      return `a tabata is 8 × 20/10. For ${read} write: circuit x8, 40/20`;
    case 'whole-minutes':
      return `an EMOM lasts whole minutes. For other intervals write: every 1:30 x6`;
    case 'moment-past':
      return `"${read}" has passed. Name a day: Thu 18:30`;
    case 'other-weekday':
      return `"${read}" names two days: that date is ${printDay(problem.date)}. Write the one you mean.`;
    case 'two-moves':
      return `two moves on one line. Write ${problem.first} + ${problem.second} for back to back, or a line each.`;
    case 'name-needed':
      return read === ''
        ? 'here a move is missing. Write its name, or ? for an open line.'
        : `"${read}" has no move. Write its name, or ? for an open line.`;
    case 'sides-not-possible':
      return `${problem.move} works both sides at once. Leave "${read}" out, or name a one-sided move.`;
    case 'sides-break-frame':
      return `"${problem.sides}" takes twice the time, which ${aBlock(problem.block)} does not have. Write split sides or alternating.`;
    case 'odd-reps':
      return `${problem.reps} reps can't be split into equal halves. Write an even number, or each side.`;
    case 'time-or-reps-needed':
      return `how long, or how many? Write ${needsText(problem.block, read)}.`;
    case 'interval-too-short':
      return `this needs ${lengthText(problem.needSeconds)}, the interval is ${lengthText(problem.intervalSeconds)}. Fewer reps, or a longer interval: every 1:30 x6`;
    case 'by-round-mismatch':
      return `by round needs one move a round: ${countText(problem.moves, 'move')} here for ${countText(problem.rounds, 'round')}.`;
    case 'unknown-edit':
      return problem.nearest === undefined
        ? `I don't read "${read}" as an edit. This works: swap B1 front squat`
        : `I don't read "${read}" as an edit. Did you mean: ${problem.nearest}`;
    case 'edit-incomplete':
      return `"${read}" is not whole. This works: ${problem.works}`;
    case 'no-such-letter':
      return problem.last === undefined
        ? `there is no ${problem.label}: this class has no letters.`
        : `there is no ${problem.label}: the letters run from A to ${problem.last}.`;
    case 'letter-gone':
      return `${problem.label} is dropped by a line above. Say one or the other.`;
    case 'no-such-block':
      return `there is no ${problem.word} to change in this class.`;
    case 'lines-left-over':
      return `${problem.lines === 1 ? '1 line' : `${problem.lines} lines`} below "${read}" can't be parted by ${problem.each}. Join what belongs together with +: ${problem.works}`;
    case 'several-blocks':
      return `there are ${problem.count} of ${problem.word}. Name a letter of the one you mean: drop D, block D 6:00`;
    case 'one-move-needed':
      return `${problem.label} is more than one move here. Say which: ${problem.moves.join(', ')}.`;
    case 'no-option':
      return `no ${problem.kind} option is named for ${problem.label}. Say one: swap ${problem.label} glute bridge`;
    case 'block-without-numbers':
      return `${aBlock(problem.block)} has no such numbers to change.`;
    case 'last-block':
      return 'this is the last block. A class keeps at least one.';
    case 'edit-unclear':
      return `"${read}" would not read back the same. Leave out commas and numbers.`;
  }
}

/** Enough of what was read to know it again on a phone. */
function short(read: string): string {
  const line = read.replaceAll(/\s+/g, ' ').trim();
  if (line.length <= 40) return line;
  const cut = line.slice(0, 39);
  return `${cut.isWellFormed() ? cut : cut.slice(0, -1)}…`;
}

function namesText(names: readonly NearName[]): string {
  return choiceText(names.map(({ name }) => name));
}

function choiceText(words: readonly string[]): string {
  const [last] = words.slice(-1);
  const others = words.slice(0, -1);
  return others.length === 0 ? (last ?? '') : `${others.join(', ')} or ${last}`;
}

function countText(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}

function aBlock(kind: BlockKind): string {
  return kind === 'emom' || kind === 'amrap'
    ? `an ${kind.toUpperCase()}`
    : kind === 'stations'
      ? 'a stations block'
      : `a ${kind}`;
}

const modifierText: Readonly<Record<ModifierName, string>> = {
  rest: 'a rest of its own',
  work: 'a work time',
  rounds: 'rounds',
  'between rounds': 'a rest between rounds',
  'between letters': 'a rest between letters',
  between: 'a rest between',
  'each round': 'a rest each round',
  'people a station': 'people a station',
  'march in the rests': 'marching in the rests',
  'in pairs': 'pairs',
  burnout: 'burnout',
  'count-in': 'a count-in',
  'about rounds': 'a number of rounds',
  in: 'a cap',
  'sets of its own': 'sets of its own',
  'time of its own': 'another time of its own',
  'to the end': '"to the end"',
  'whole set each side': 'a whole set each side',
  'by round': 'moves by round',
  explain: 'explaining',
};

function notHereText(what: ModifierName, block: BlockKind): string {
  if (what === 'sets of its own')
    return 'sets and reps on a line go in straight sets only. Write 10 goblet squat.';
  if (what === 'each round')
    return 'a rest each round goes under the moves of a circuit. Elsewhere write: rest 60';
  if (what === 'between rounds' && block === 'straight') {
    return 'straight sets rest between letters. Write: between letters 60';
  }
  if (what === 'between letters')
    return 'a rest between letters is for straight sets. Write: between rounds 60';
  return `${aBlock(block)} can't take ${modifierText[what]}. Leave it out.`;
}

const limitText: Readonly<Record<LimitedThing, string>> = {
  slot: 'a slot',
  plan: 'a plan',
  work: 'work',
  rest: 'rest',
  rounds: 'rounds',
  level: 'a level',
  people: 'people',
  reps: 'reps',
  rpe: 'rpe',
  length: 'a length',
  rungs: 'rungs',
  weight: 'a weight',
  metres: 'metres',
};

function rangeText(what: LimitedThing, least: number, most: number): string {
  const clock = what === 'length';
  const minutes = what === 'slot' || what === 'plan';
  if (minutes) return `${limitText[what]} is ${least / 60} to ${most / 60} minutes`;
  if (clock) return `${limitText[what]} is ${lengthText(least)} to ${lengthText(most)}`;
  const unit = what === 'work' || what === 'rest' ? ' seconds' : '';
  return `${limitText[what]} is ${least} to ${most}${unit}`;
}

const tooManyText = {
  blocks: (most: number) => `a class has at most ${most} blocks.`,
  letters: (most: number) => `a block has at most ${most} letters.`,
  moves: (most: number) => `a letter has at most ${most} moves.`,
} as const;

function misplacedText(block: BlockKind, at: 'start' | 'end'): string {
  if (at === 'start') return `a class can't begin with ${block}. Take it out, or put a block before it.`;
  return `a class can't end with ${block}. Take it out, or put a block behind it.`;
}

function needsText(block: BlockKind, read: string): string {
  const name = read === '' ? 'goblet squat' : read;
  return block === 'emom'
    ? `10 ${name}, or on the block line: emom 10, 40 work`
    : `10 ${name} or ${name} 40s`;
}
