import type { Catalogue } from './catalogue.ts';
import type { Move, MoveId } from './move.ts';
import { idOfName } from './move-row.ts';
import type { Muscle } from './muscles.ts';
import { nameIndexOf } from './name-index.ts';
import { nameWords } from './name-words.ts';

/** What keeps a move out of the catalogue, one law each. */
export type MoveProblem =
  /** 2 to 60 letters, spaces, hyphens and apostrophes; in a nickname digits too. */
  | { readonly code: 'name-unusable'; readonly name: string }
  | { readonly code: 'name-holds-a-mark'; readonly name: string; readonly word: string }
  | { readonly code: 'name-taken'; readonly name: string; readonly by: string }
  | { readonly code: 'no-prime-mover' }
  | { readonly code: 'muscle-twice'; readonly muscle: Muscle }
  | { readonly code: 'rep-length'; readonly seconds: number }
  | { readonly code: 'kit-pieces' }
  | { readonly code: 'mobility-is-effort-too' }
  | { readonly code: 'one-side-of-one-side' }
  | { readonly code: 'cue-length'; readonly cue: string }
  | { readonly code: 'easier-missing' }
  | { readonly code: 'option-unknown'; readonly id: MoveId }
  | { readonly code: 'easier-is-harder'; readonly option: string }
  | { readonly code: 'harder-is-easier'; readonly option: string }
  | { readonly code: 'options-in-a-circle' };

const usableName = /^[A-Za-z][A-Za-z' -]{1,59}$/;
const usableNickname = /^[\p{L}0-9][\p{L}0-9'/& -]{1,59}$/u;

/** Words that the shorthand reads as something said of a move. */
const marks =
  /\b(tempo|each|left|right|light|medium|heavy|easier|harder|or|alt|rest|split sides|by round)\b/i;

const leastRepSeconds = 1;
const mostRepSeconds = 8;

/**
 * Every law of the catalogue that this move breaks in it. The catalogue is the one without the move, or with
 * an earlier state of it.
 */
export function moveProblems(move: Move, catalogue: Catalogue): readonly MoveProblem[] {
  return [
    ...nameProblems(move, catalogue),
    ...muscleProblems(move),
    ...shapeProblems(move),
    ...optionProblems(move, catalogue),
  ];
}

/** What speaks against these words as a name or nickname of the move with this id. */
export function nameProblemsOf(name: string, id: MoveId, catalogue: Catalogue): readonly MoveProblem[] {
  const [mark] = marks.exec(name) ?? [];
  const taken = nameIndexOf(catalogue).byKey.get(nameWords(name).join(''));
  const other = taken?.moves.find((each) => each.id !== id);
  return [
    ...(usableNickname.test(name) ? [] : [{ code: 'name-unusable', name } as const]),
    ...(mark === undefined ? [] : [{ code: 'name-holds-a-mark', name, word: mark } as const]),
    ...(other === undefined ? [] : [{ code: 'name-taken', name, by: other.name } as const]),
  ];
}

function nameProblems(move: Move, catalogue: Catalogue): readonly MoveProblem[] {
  const sameId = catalogue.byId.get(idOfName(move.name));
  const reused =
    sameId !== undefined && sameId.id !== move.id
      ? [{ code: 'name-taken', name: move.name, by: sameId.name } as const]
      : [];
  const spelled = [move.name, ...move.nicknames].flatMap((name) => nameProblemsOf(name, move.id, catalogue));
  return [
    ...spelled,
    ...(usableName.test(move.name) || spelled.some(({ code }) => code === 'name-unusable')
      ? []
      : [{ code: 'name-unusable', name: move.name } as const]),
    ...(spelled.some(({ code }) => code === 'name-taken') ? [] : reused),
  ];
}

function muscleProblems({ primeMovers, assisting }: Move): readonly MoveProblem[] {
  const all = [...primeMovers, ...assisting];
  return [
    ...(primeMovers.length === 0 ? [{ code: 'no-prime-mover' } as const] : []),
    ...all.flatMap((muscle, place) =>
      all.indexOf(muscle) === place ? [] : [{ code: 'muscle-twice', muscle } as const],
    ),
  ];
}

function shapeProblems(move: Move): readonly MoveProblem[] {
  const { lowerSeconds, bottomPauseSeconds, liftSeconds, topPauseSeconds } = move.tempo;
  const seconds = lowerSeconds + bottomPauseSeconds + liftSeconds + topPauseSeconds;
  const isCue = (cue: string) => /^\S.{6,68}\.$/.test(cue);
  return [
    ...(seconds < leastRepSeconds || seconds > mostRepSeconds
      ? [{ code: 'rep-length', seconds } as const]
      : []),
    ...([move.kit, ...(move.otherKit ?? [])].every(isKit) ? [] : [{ code: 'kit-pieces' } as const]),
    ...((move.pattern === 'mobility') === (move.effort === 'mobility')
      ? []
      : [{ code: 'mobility-is-effort-too' } as const]),
    ...(move.oneSideAtATime && move.sides !== 'both at once'
      ? [{ code: 'one-side-of-one-side' } as const]
      : []),
    ...[move.setUpCue, move.cue].flatMap((cue) => (isCue(cue) ? [] : [{ code: 'cue-length', cue } as const])),
  ];
}

/** Each item once, one or two pieces of it. */
function isKit(kit: Move['kit']): boolean {
  return (
    new Set(kit.map(({ item }) => item)).size === kit.length &&
    kit.every(({ pieces }) => pieces === 1 || pieces === 2)
  );
}

function optionProblems(move: Move, catalogue: Catalogue): readonly MoveProblem[] {
  const named = [move.easier, move.harder].filter((id) => id !== undefined);
  const unknown = named.filter((id) => id !== move.id && !catalogue.byId.has(id));
  const easier = move.easier === undefined ? undefined : catalogue.byId.get(move.easier);
  const harder = move.harder === undefined ? undefined : catalogue.byId.get(move.harder);
  return [
    ...(move.level > 1 && move.easier === undefined ? [{ code: 'easier-missing' } as const] : []),
    ...unknown.map((id) => ({ code: 'option-unknown', id }) as const),
    ...(easier !== undefined && easier.level > move.level
      ? [{ code: 'easier-is-harder', option: easier.name } as const]
      : []),
    ...(harder !== undefined && harder.level < move.level
      ? [{ code: 'harder-is-easier', option: harder.name } as const]
      : []),
    ...(leadsBackTo(move, catalogue) ? [{ code: 'options-in-a-circle' } as const] : []),
  ];
}

/** Whether, going from option to harder option, one comes back to the move one started from. */
function leadsBackTo(move: Move, catalogue: Catalogue): boolean {
  const moves = [...catalogue.byId.values()].map((each) => (each.id === move.id ? move : each));
  const all = moves.includes(move) ? moves : [...moves, move];
  const harderThan = (id: MoveId): readonly MoveId[] =>
    all.flatMap((each) => [
      ...(each.id === id && each.harder !== undefined ? [each.harder] : []),
      ...(each.easier === id ? [each.id] : []),
    ]);
  const met = new Set<MoveId>();
  const open = [...harderThan(move.id)];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (id === move.id) return true;
    if (met.has(id)) continue;
    met.add(id);
    open.push(...harderThan(id));
  }
  return false;
}
