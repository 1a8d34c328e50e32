import { hasLetters, isOpenBlock } from '../../plan/blocks-of.ts';
import type { Block, Letter, LetteredBlock, LineId, Plan, PlannedMove } from '../../plan/plan.ts';
import type { Place } from './edit.ts';

/** Pure changes of a plan by line id; a line that is not there changes nothing. */

export function withBlock(plan: Plan, id: LineId, change: (block: LetteredBlock) => LetteredBlock): Plan {
  return {
    ...plan,
    blocks: plan.blocks.map((block) => (block.id === id && hasLetters(block) ? change(block) : block)),
  };
}

export function withLetter(plan: Plan, id: LineId, change: (letter: Letter) => Letter): Plan {
  return {
    ...plan,
    blocks: plan.blocks.map((block) =>
      hasLetters(block)
        ? { ...block, letters: block.letters.map((letter) => (letter.id === id ? change(letter) : letter)) }
        : block,
    ),
  };
}

export function withMove(plan: Plan, id: LineId, change: (move: PlannedMove) => PlannedMove): Plan {
  return {
    ...plan,
    blocks: plan.blocks.map((block) =>
      hasLetters(block)
        ? {
            ...block,
            letters: block.letters.map((letter) => ({
              ...letter,
              moves: letter.moves.map((move) => (move.id === id ? change(move) : move)),
            })),
          }
        : block,
    ),
  };
}

/** The block that holds a letter. */
export function blockOfLetter(plan: Plan, letter: LineId): LetteredBlock | undefined {
  return plan.blocks.filter(hasLetters).find(({ letters }) => letters.some(({ id }) => id === letter));
}

/** Without a block and the rest line right behind it; breaks that then open or end the class go too. */
export function withoutBlock(plan: Plan, id: LineId): Plan {
  const at = plan.blocks.findIndex((block) => block.id === id);
  const restBehind = plan.blocks[at + 1]?.kind === 'rest' ? 1 : 0;
  return { ...plan, blocks: withoutStrayBreaks(plan.blocks.toSpliced(at, 1 + restBehind)) };
}

function withoutStrayBreaks(blocks: readonly Block[]): readonly Block[] {
  const isBreak = ({ kind }: Block) => kind === 'rest' || kind === 'water';
  const first = blocks.findIndex((block) => !isBreak(block));
  const last = blocks.findLastIndex((block) => !isBreak(block));
  return first === -1 ? blocks : blocks.slice(first, last + 1);
}

/** Without a letter; the block goes with its only one. */
export function withoutLetter(plan: Plan, letter: Letter): Plan {
  const block = blockOfLetter(plan, letter.id);
  if (block === undefined) return plan;
  if (block.letters.length === 1) return withoutBlock(plan, block.id);
  return withBlock(plan, block.id, (each) => ({
    ...each,
    letters: each.letters.filter(({ id }) => id !== letter.id),
  }));
}

export function insertedAt<Item>(items: readonly Item[], at: number, item: Item): readonly Item[] {
  return [...items.slice(0, at), item, ...items.slice(at)];
}

/** Where a line goes that is to stand before or after this one. */
export function placeIn(lines: readonly { readonly id: LineId }[], id: LineId, { side }: Place): number {
  return lines.findIndex((line) => line.id === id) + (side === 'after' ? 1 : 0);
}

/** Ids for lines that are new, standing nowhere in the plan. */
export function freshIds(plan: Plan): () => LineId {
  const taken = new Set(allIds(plan));
  let count = 0;
  return () => {
    do count += 1;
    while (taken.has(`l${count}`));
    const id = `l${count}`;
    taken.add(id);
    return id;
  };
}

/** Every line's id in the order written. */
export function allIds(plan: Plan): readonly LineId[] {
  return plan.blocks.flatMap((block) => {
    if (hasLetters(block)) {
      return [
        block.id,
        ...block.letters.flatMap((letter) => [letter.id, ...letter.moves.map(({ id }) => id)]),
      ];
    }
    return isOpenBlock(block) ? [block.id, ...block.items.map(({ id }) => id)] : [block.id];
  });
}

/** The same plan with these ids in the order written. */
export function withIdsInOrder(plan: Plan, ids: readonly LineId[]): Plan {
  let at = 0;
  const next = (own: LineId) => ids[at++] ?? own;
  return {
    ...plan,
    blocks: plan.blocks.map((block) => {
      const id = next(block.id);
      if (hasLetters(block)) {
        const letters = block.letters.map((letter) => ({
          ...letter,
          id: next(letter.id),
          moves: letter.moves.map((move) => ({ ...move, id: next(move.id) })),
        }));
        return { ...block, id, letters };
      }
      if (!isOpenBlock(block)) return { ...block, id };
      return { ...block, id, items: block.items.map((item) => ({ ...item, id: next(item.id) })) };
    }),
  };
}

/** A letter as it stands in another block: that block's times, not its own. */
export function withoutOwnTimes({ restSeconds: _, rounds: __, moves, ...letter }: Letter): Letter {
  return { ...letter, moves: moves.map(({ workSeconds: ___, ...move }) => move) };
}
