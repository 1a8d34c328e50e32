import { hasLetters, isOpenBlock } from '../plan/blocks-of.ts';
import type { Block, Letter, LineId, OpenItem, Plan, PlannedMove } from '../plan/plan.ts';

/** Hands out ids: those of earlier lines first, then new ones that stand nowhere in the earlier plan. */
type Ids = {
  /** The id of an earlier line told by one of these keys, likeliest first; each is given once. */
  readonly kept: (keys: readonly string[]) => LineId;
};

/**
 * Every line with an id, unique in the plan and the same for the same text. Where a line of the earlier plan
 * stands again (its words alike, else its moves, else its kind and place) it keeps its id.
 */
export function keepIds(plan: Plan, previous: Plan | undefined): Plan {
  const ids = idsFrom(previous);
  const keyed = plan.blocks.map((block, place) => ({ block, keys: blockKeys(block, place, plan.blocks) }));
  return { ...plan, blocks: keyed.map(({ block, keys }) => withIds(block, keys, ids)) };
}

function withIds(block: Block, keys: readonly string[], ids: Ids): Block {
  const id = ids.kept(keys);
  if (hasLetters(block))
    return { ...block, id, letters: block.letters.map((letter) => letterWithIds(letter, ids)) };
  if (!isOpenBlock(block)) return { ...block, id };
  return { ...block, id, items: block.items.map((item) => ({ ...item, id: ids.kept([itemKey(item)]) })) };
}

function letterWithIds(letter: Letter, ids: Ids): Letter {
  const id = ids.kept(letterKeys(letter));
  return { ...letter, id, moves: letter.moves.map((move) => ({ ...move, id: ids.kept(moveKeys(move)) })) };
}

function idsFrom(previous: Plan | undefined): Ids {
  const waiting = new Map<string, LineId[]>();
  const taken = new Set<LineId>();
  const given = new Set<LineId>();
  for (const [id, keys] of previous === undefined ? [] : linesOfPlan(previous)) {
    taken.add(id);
    for (const key of keys) waiting.set(key, [...(waiting.get(key) ?? []), id]);
  }
  let count = 0;
  const fresh = (): LineId => {
    do count += 1;
    while (taken.has(`l${count}`));
    return `l${count}`;
  };
  const kept = (keys: readonly string[]): LineId => {
    const id = keys.flatMap((key) => waiting.get(key) ?? []).find((each) => !given.has(each)) ?? fresh();
    given.add(id);
    return id;
  };
  return { kept };
}

/** Every line of a plan with the keys it is known by again. */
function linesOfPlan(plan: Plan): readonly (readonly [LineId, readonly string[]])[] {
  return plan.blocks.flatMap((block, place) => {
    const own = [block.id, blockKeys(block, place, plan.blocks)] as const;
    if (hasLetters(block)) {
      const letters = block.letters.flatMap((letter) => [
        [letter.id, letterKeys(letter)] as const,
        ...letter.moves.map((move) => [move.id, moveKeys(move)] as const),
      ]);
      return [own, ...letters];
    }
    return isOpenBlock(block)
      ? [own, ...block.items.map((item) => [item.id, [itemKey(item)]] as const)]
      : [own];
  });
}

function blockKeys(block: Block, place: number, blocks: readonly Block[]): readonly string[] {
  const among = blocks.slice(0, place).filter(({ kind }) => kind === block.kind).length;
  if (!hasLetters(block)) return [`block ${block.kind} ${among}`];
  const moves = block.letters.map((letter) => letter.moves.map(moveName).join('+')).join(';');
  return [`block ${block.kind} of ${moves}`, `block ${block.kind} ${among}`];
}

function letterKeys(letter: Letter): readonly string[] {
  const { id: _, span: __, moves, ...facts } = letter;
  const names = moves.map(moveName).join('+');
  return [`letter ${JSON.stringify([facts, moves.map(withoutPlace)])}`, `letter of ${names}`];
}

function moveKeys(move: PlannedMove): readonly string[] {
  return [`move ${JSON.stringify(withoutPlace(move))}`, `move ${moveName(move)}`];
}

function withoutPlace({ id: _, span: __, ...facts }: PlannedMove): Omit<PlannedMove, 'id' | 'span'> {
  return facts;
}

function moveName({ choice }: PlannedMove): string {
  switch (choice.kind) {
    case 'move':
      return choice.moveId;
    case 'open':
      return `? ${choice.wish.words}`;
    case 'words':
      return `"${choice.text}"`;
  }
}

function itemKey({ what }: OpenItem): string {
  return `item ${what.kind === 'move' ? what.moveId : what.text}`;
}
