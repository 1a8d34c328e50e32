import { labelledLetters } from './labels.ts';
import type { Block, Letter, LineId, Plan, PlanFacts } from './plan.ts';
import { samePlain } from './same-plain.ts';

/** One way in which two versions differ. Labels are those of the version the line stands in. */
export type PlanChange =
  | {
      readonly kind: 'fact changed';
      readonly fact: keyof PlanFacts;
      readonly before: PlanFacts;
      readonly after: PlanFacts;
    }
  | { readonly kind: 'block added'; readonly block: Block; readonly place: number }
  | { readonly kind: 'block dropped'; readonly block: Block; readonly place: number }
  | { readonly kind: 'block changed'; readonly before: Block; readonly after: Block; readonly place: number }
  | { readonly kind: 'letter added'; readonly label: string; readonly letter: Letter }
  | { readonly kind: 'letter dropped'; readonly label: string; readonly letter: Letter }
  | {
      readonly kind: 'letter changed';
      readonly label: string;
      readonly before: Letter;
      readonly after: Letter;
    }
  | { readonly kind: 'letter moved'; readonly from: string; readonly to: string; readonly letter: Letter };

/** What a coach has to look at: lines followed by their ids, in the order of the class, dropped ones last. */
export function planDifference(before: Plan, after: Plan): readonly PlanChange[] {
  return [
    ...factChanges(before.facts, after.facts),
    ...blockChanges(before.blocks, after.blocks),
    ...letterChanges(before, after),
  ];
}

const factNames = [
  'title',
  'slotSeconds',
  'level',
  'people',
  'focus',
  'aim',
  'beginners',
  'olderAdults',
  'hotRoom',
  'startsAt',
  'room',
  'kit',
] as const satisfies readonly (keyof PlanFacts)[];

function factChanges(before: PlanFacts, after: PlanFacts): readonly PlanChange[] {
  return factNames
    .filter((fact) => !samePlain(before[fact], after[fact]))
    .map((fact) => ({ kind: 'fact changed', fact, before, after }));
}

/** A block without its letters: those are told one by one. */
function head(block: Block): object {
  return 'letters' in block ? { ...block, letters: [] } : block;
}

function blockChanges(before: readonly Block[], after: readonly Block[]): readonly PlanChange[] {
  const earlier = new Map(before.map((block) => [block.id, block]));
  const kept = new Set(after.map(({ id }) => id));
  const addedOrChanged = after.flatMap((block, place): readonly PlanChange[] => {
    const was = earlier.get(block.id);
    if (was === undefined) return [{ kind: 'block added', block, place }];
    return samePlain(head(was), head(block))
      ? []
      : [{ kind: 'block changed', before: was, after: block, place }];
  });
  const dropped = before.flatMap((block, place): readonly PlanChange[] =>
    kept.has(block.id) ? [] : [{ kind: 'block dropped', block, place }],
  );
  return [...addedOrChanged, ...dropped];
}

type Placed = { readonly label: string; readonly letter: Letter; readonly blockId: LineId };

function placedLetters(plan: Plan): ReadonlyMap<LineId, Placed> {
  return new Map(
    labelledLetters(plan).map(({ label, letter, block }) => [
      letter.id,
      { label, letter, blockId: block.id },
    ]),
  );
}

function letterChanges(before: Plan, after: Plan): readonly PlanChange[] {
  const was = placedLetters(before);
  const is = placedLetters(after);
  const inPlace = keptInOrder(was, is);
  const addedOrChanged = [...is.values()].flatMap(({ label, letter }): readonly PlanChange[] => {
    const earlier = was.get(letter.id);
    if (earlier === undefined) return [{ kind: 'letter added', label, letter }];
    const moved: readonly PlanChange[] = inPlace.has(letter.id)
      ? []
      : [{ kind: 'letter moved', from: earlier.label, to: label, letter }];
    return samePlain(earlier.letter, letter)
      ? moved
      : [...moved, { kind: 'letter changed', label, before: earlier.letter, after: letter }];
  });
  const dropped = [...was.values()].flatMap(({ label, letter }): readonly PlanChange[] =>
    is.has(letter.id) ? [] : [{ kind: 'letter dropped', label, letter }],
  );
  return [...addedOrChanged, ...dropped];
}

/** The most letters that stand in the same block and in the same order as before; the others moved. */
function keptInOrder(was: ReadonlyMap<LineId, Placed>, is: ReadonlyMap<LineId, Placed>): ReadonlySet<LineId> {
  const order = new Map([...was.keys()].map((id, place) => [id, place]));
  const placeBefore = (id: LineId | undefined) => (id === undefined ? -1 : (order.get(id) ?? -1));
  const runs: (readonly LineId[])[] = [];
  for (const { letter, blockId } of is.values()) {
    if (was.get(letter.id)?.blockId !== blockId) continue;
    const before = runs.filter((run) => placeBefore(run.at(-1)) < placeBefore(letter.id));
    runs.push([...longest(before), letter.id]);
  }
  return new Set(longest(runs));
}

function longest(runs: readonly (readonly LineId[])[]): readonly LineId[] {
  return runs.reduce<readonly LineId[]>((most, run) => (run.length > most.length ? run : most), []);
}
