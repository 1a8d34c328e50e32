import type { Catalogue } from './catalogue.ts';
import { type KitItem, type KitNeed, kitItems } from './kit.ts';
import { lookUpMove } from './look-up-move.ts';
import type { OwnMoveFacts } from './make-own-move.ts';
import type { Level } from './move.ts';
import { type Muscle, muscles } from './muscles.ts';
import { patterns } from './patterns.ts';

/** Facts as typed, and the parts between commas that say none. */
export type MoveFactsRead = { readonly facts: OwnMoveFacts; readonly unread: readonly string[] };

const positions = ['standing', 'kneeling', 'seated', 'supine', 'prone', 'side-lying'] as const;
const efforts = ['reps', 'hold', 'conditioning', 'mobility'] as const;
const levels: Readonly<Record<string, Level>> = { '1': 1, '2': 2, '3': 3 };

/** `level 2, standing, each side, chest + triceps, assists lats, dumbbell pair, easier plank, also ww`. */
export function readMoveFacts(text: string, catalogue: Catalogue): MoveFactsRead {
  const parts = text
    .split(',')
    .map((part) => part.trim().replaceAll(/\s+/g, ' '))
    .filter((part) => part !== '');
  const read = parts.map((part) => ({ part, fact: readFact(part, catalogue) }));
  const said = read.flatMap(({ fact }) => fact ?? []);
  let facts: OwnMoveFacts = {};
  for (const { nicknames = [], kit, ...fact } of said) {
    facts = {
      ...facts,
      ...fact,
      ...(nicknames.length === 0 ? {} : { nicknames: [...(facts.nicknames ?? []), ...nicknames] }),
      ...(kit === undefined ? {} : { kit: [...(facts.kit ?? []), ...kit] }),
    };
  }
  return { facts, unread: read.flatMap(({ part, fact }) => (fact === undefined ? [part] : [])) };
}

function readFact(part: string, catalogue: Catalogue): OwnMoveFacts | undefined {
  const text = part.toLowerCase();
  const [, verb = '', rest = ''] =
    /^(level|easier|harder|also|assists?|trains?|cue)\s+(.+)$/.exec(text) ?? [];
  if (verb !== '') return readSaid(verb, rest, part.slice(-rest.length), catalogue);
  return readPlain(text);
}

function readSaid(
  verb: string,
  rest: string,
  asTyped: string,
  catalogue: Catalogue,
): OwnMoveFacts | undefined {
  switch (verb) {
    case 'level': {
      const level = levels[rest];
      return level === undefined ? undefined : { level };
    }
    case 'easier':
    case 'harder': {
      const found = lookUpMove(rest, catalogue);
      if (found.kind !== 'found') return undefined;
      return verb === 'easier' ? { easier: found.move.id } : { harder: found.move.id };
    }
    case 'also':
      return { nicknames: [asTyped] };
    case 'cue':
      return { cue: asTyped.endsWith('.') ? asTyped : `${asTyped}.` };
    case 'assist':
    case 'assists': {
      if (rest === 'none' || rest === 'nothing') return { assisting: [] };
      const assisting = readMuscles(rest);
      return assisting === undefined ? undefined : { assisting };
    }
    default: {
      const primeMovers = readMuscles(rest);
      return primeMovers === undefined ? undefined : { primeMovers };
    }
  }
}

function readPlain(text: string): OwnMoveFacts | undefined {
  const position = positions.find((each) => each === text);
  if (position !== undefined) return { position };
  const effort = efforts.find((each) => each === text);
  if (effort === 'mobility') return { effort, pattern: 'mobility' };
  if (effort !== undefined) return { effort };
  const pattern = patterns.find((each) => each === text);
  if (pattern !== undefined) return { pattern };
  if (text === 'each side' || text === 'one-sided' || text === 'one side') return { sides: 'one-sided' };
  if (text === 'alternating') return { sides: 'alternating by nature' };
  if (text === 'both at once' || text === 'both sides') return { sides: 'both at once' };
  if (text === 'no kit' || text === 'bodyweight') return { kit: [] };
  const primeMovers = readMuscles(text);
  if (primeMovers !== undefined) return { primeMovers };
  const need = readKitNeed(text);
  return need === undefined ? undefined : { kit: [need] };
}

function readMuscles(text: string): readonly Muscle[] | undefined {
  const named = text.split(/\s*(?:\+|&|\band\b)\s*/).map((name) => muscles.find((each) => each === name));
  return named.every((muscle) => muscle !== undefined) ? named : undefined;
}

/** `dumbbell`, `two dumbbells`, `dumbbell pair`: one piece or two. */
function readKitNeed(text: string): KitNeed | undefined {
  const [, two, name = '', pair] = /^(?:(2|two|pair of)\s+)?(.+?)(\s+pair)?$/.exec(text) ?? [];
  const item = itemOf(name);
  return item === undefined ? undefined : { item, pieces: two !== undefined || pair !== undefined ? 2 : 1 };
}

function itemOf(name: string): KitItem | undefined {
  return kitItems.find((item) => name === item || name === `${item}s` || name === `${item}es`);
}
