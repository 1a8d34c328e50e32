import { anyPhrase, type Match, phraseOf, wholeNumber } from '../matches.ts';
import { levelAt, slotAt } from '../title/title-facts.ts';
import type { Token } from '../tokens-of.ts';
import { labelAt } from './label-at.ts';

export type EditVerb =
  | 'swap'
  | 'add'
  | 'drop'
  | 'move'
  | 'rounds'
  | 'block'
  | 'work'
  | 'reps'
  | 'rest'
  | 'water'
  | 'explain'
  | 'between rounds'
  | 'between letters'
  | 'open block'
  | 'sides'
  | 'weight'
  | 'tempo'
  | 'easier'
  | 'harder'
  | 'kit'
  | 'people'
  | 'level'
  | 'focus'
  | 'aim'
  | 'title'
  | 'slot';

/** Words that begin nothing else: the first word says that the line is an edit. */
const verbs: ReadonlyMap<string, EditVerb> = new Map<string, EditVerb>([
  ['swap', 'swap'],
  ['sub', 'swap'],
  ['substitute', 'swap'],
  ['change', 'swap'],
  ['replace', 'swap'],
  ['add', 'add'],
  ['drop', 'drop'],
  ['delete', 'drop'],
  ['remove', 'drop'],
  ['cut', 'drop'],
  ['move', 'move'],
  ['rounds', 'rounds'],
  ['block', 'block'],
  ['reps', 'reps'],
  ['between rounds', 'between rounds'],
  ['rest between rounds', 'between rounds'],
  ['between letters', 'between letters'],
  ['rest between letters', 'between letters'],
  ['sides', 'sides'],
  ['weight', 'weight'],
  ['tempo', 'tempo'],
  ['kit', 'kit'],
  ['equipment', 'kit'],
  ['focus', 'focus'],
  ['aim', 'aim'],
  ['title', 'title'],
]);

/** Words that a class may begin with too: they are edits where a letter, `after` or their length follows. */
const labelVerbs: ReadonlyMap<string, EditVerb> = new Map<string, EditVerb>([
  ['work', 'work'],
  ['rest', 'rest'],
  ['water', 'water'],
  ['explain', 'explain'],
  ['easier', 'easier'],
  ['harder', 'harder'],
]);

const openWords = ['warm up', 'wu', 'cool down', 'cd', 'mobility', 'song'];

/** Every first word of the edit language, for finding the one nearly typed. */
export const editWords: readonly string[] = [...verbs.keys(), ...labelVerbs.keys()];

/** Verbs that a line of a class may begin with as well. */
const alsoInClasses = new Set<EditVerb>(['kit', 'focus', 'aim', 'title', 'block']);

/** Whether a line begins with a word that no class begins a line with. */
export function beginsOnlyEdits(tokens: readonly Token[]): boolean {
  const found = phraseOf(tokens, 0, verbs);
  return found !== undefined && !alsoInClasses.has(found.value);
}

/** The edit word a line begins with. */
export function editWordAt(tokens: readonly Token[]): Match<EditVerb> {
  return phraseOf(tokens, 0, verbs) ?? labelVerbAt(tokens) ?? openBlockAt(tokens) ?? wholeLineFact(tokens);
}

function labelVerbAt(tokens: readonly Token[]): Match<EditVerb> {
  const found = phraseOf(tokens, 0, labelVerbs);
  if (found === undefined) return undefined;
  const follows = labelAt(tokens, found.next) ?? anyPhrase(tokens, found.next, ['after', 'behind']);
  const placed = tokens.some(
    ({ text }, at) => text === 'after' && labelAt(tokens, at + 1)?.next === tokens.length,
  );
  return follows !== undefined || placed ? found : undefined;
}

function openBlockAt(tokens: readonly Token[]): Match<EditVerb> {
  const found = anyPhrase(tokens, 0, openWords);
  return found && { value: 'open block', next: found.next };
}

/** `18 now`, `level 2`, `slot 50`: the whole line is the fact. */
function wholeLineFact(tokens: readonly Token[]): Match<EditVerb> {
  const number = wholeNumber(tokens, 0);
  const now = number && anyPhrase(tokens, number.next, ['now', 'people', 'people now', 'ppl', 'ppl now']);
  if (now?.next === tokens.length) return { value: 'people', next: now.next };
  const level = levelAt(tokens, 0);
  if (level?.next === tokens.length) return { value: 'level', next: level.next };
  const slot = slotAt(tokens, 0);
  return slot?.next === tokens.length ? { value: 'slot', next: slot.next } : undefined;
}
