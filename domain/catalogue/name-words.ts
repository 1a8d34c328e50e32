/** Trade shorthand and what it stands for, word by word; read before plurals are undone. */
const shorthand: ReadonlyMap<string, readonly string[]> = new Map([
  ['kbs', ['kettlebell', 'swing']],
  ['kb', ['kettlebell']],
  ['db', ['dumbbell']],
  ['dbs', ['dumbbell']],
  ['bb', ['barbell']],
  ['bw', ['bodyweight']],
  ['mb', ['medicine', 'ball']],
  ['med', ['medicine']],
  ['rdl', ['romanian', 'deadlift']],
  ['rdls', ['romanian', 'deadlift']],
  ['dl', ['deadlift']],
  ['ohp', ['overhead', 'press']],
  ['oh', ['overhead']],
  ['sl', ['single', 'leg']],
  ['sa', ['single', 'arm']],
  ['one', ['single']],
  ['1', ['single']],
  ['2', ['two']],
  ['legged', ['leg']],
  ['armed', ['arm']],
  ['handed', ['arm']],
  ['rev', ['reverse']],
  ['ext', ['extension']],
  ['tri', ['tricep']],
  ['tris', ['tricep']],
  ['bi', ['bicep']],
  ['bis', ['bicep']],
  ['ab', ['abdominal']],
  ['abs', ['abdominal']],
  ['iso', ['isometric']],
  ['banded', ['band']],
  ['loaded', ['weighted']],
  ['calves', ['calf']],
  ['calve', ['calf']],
  ['burpies', ['burpee']],
  ['flyes', ['fly']],
  ['flye', ['fly']],
]);

/** Words that carry no meaning in a move's name. */
const fillers: ReadonlySet<string> = new Set([
  'a',
  'an',
  'the',
  'with',
  'to',
  'and',
  'n',
  'of',
  'on',
  'onto',
  'into',
]);

const singular = (word: string): string => {
  if ((word.length < 3 && !/^\d/.test(word)) || /(ss|us|is)$/.test(word)) return word;
  if (/(ch|sh|ss|x)es$/.test(word)) return word.slice(0, -2);
  if (word.length > 4 && word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  return word.endsWith('s') ? word.slice(0, -1) : word;
};

/** A text in lower case, without accents and apostrophes; a press-up is a push-up. */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll('w/', ' with ')
    .replaceAll(/\bw (?=(?:db|dbs|kb|kbs|bb|dumbbell|kettlebell|band|plate)s?\b)/g, 'with ')
    .replaceAll(/\bpress[ -]?up(?=s?\b)/g, 'push-up')
    .normalize('NFKD')
    .replaceAll(/[\p{M}'’`´]/gu, '');

const split = (text: string, between: RegExp): readonly string[] =>
  text.split(between).filter((word) => word !== '');

const signs = /[^a-z0-9]+/;

/** A text's words in lower case, without accents, apostrophes, signs and hyphens. */
export const plainWords = (text: string): readonly string[] => split(plain(text), signs);

const standFor = (word: string): readonly string[] => {
  const written = shorthand.get(word);
  if (written !== undefined) return written;
  const single = singular(word);
  return shorthand.get(single) ?? [single];
};

/**
 * The words by which a move's name is compared, grouped by the spaces between them: trade shorthand
 * written out, plurals undone, fillers dropped. Text of fillers alone keeps its words.
 */
export const nameParts = (text: string): readonly (readonly string[])[] => {
  const parts = split(plain(text), /\s+/).map((part) => split(part, signs));
  const telling = parts.map((part) => part.filter((word) => !fillers.has(word)));
  const kept = telling.some((part) => part.length > 0) ? telling : parts;
  return kept.filter((part) => part.length > 0).map((part) => part.flatMap(standFor));
};

/** The words by which a move's name is compared. */
export const nameWords = (text: string): readonly string[] => nameParts(text).flat();
