import { isTimeBlock } from '../plan/blocks-of.ts';
import type { Block, BlockKind, TimeBlock } from '../plan/plan.ts';
import { type Told, tellNote, tellProblem } from './told.ts';

export type PlacedBlock = { readonly block: Block; readonly line: number };

const mayOpen: ReadonlySet<BlockKind> = new Set(['explain', 'set-up']);
const mayEnd: ReadonlySet<BlockKind> = new Set(['clear-up']);

/** The blocks that stand where they may; the rest is told. */
export function checkOrder(placed: readonly PlacedBlock[], told: Told): readonly Block[] {
  const first = placed.findIndex(({ block }) => !isTimeBlock(block));
  const last = placed.findLastIndex(({ block }) => !isTimeBlock(block));
  const standing = placed.filter(({ block, line }, index) => {
    const misplaced = { code: 'misplaced-time', block: block.kind } as const;
    if (index < first && !mayOpen.has(block.kind)) {
      tellProblem(told, line, block.span, { ...misplaced, at: 'start' });
      return false;
    }
    if (index > last && isTimeBlock(block) && !(mayEnd.has(block.kind) && last !== -1)) {
      tellProblem(told, line, block.span, { ...misplaced, at: 'end' });
      return false;
    }
    return true;
  });
  return oneToTheEnd(standing, told).map(({ block }) => block);
}

/** `cool-down to the end` stands once a class. */
function oneToTheEnd(placed: readonly PlacedBlock[], told: Told): readonly PlacedBlock[] {
  const toTheEnd = placed.filter(({ block }) => 'items' in block && block.length.kind === 'to the end');
  const beyond = new Set(toTheEnd.slice(1));
  for (const { block, line } of beyond) {
    tellProblem(told, line, block.span, { code: 'said-twice', what: 'cool-down to the end' });
  }
  return placed.filter((each) => !beyond.has(each));
}

/** A plain rest is once, before the block that follows; that is always told. */
export function sayRests(blocks: readonly Block[], told: Told): void {
  blocks.forEach((block, index) => {
    if (block.kind !== 'rest') return;
    const next = blocks
      .slice(index + 1)
      .find((each): each is Exclude<Block, TimeBlock> => !isTimeBlock(each));
    if (next === undefined) return;
    const name = next.name === undefined ? {} : { name: next.name };
    tellNote(told, { code: 'rest-once', seconds: block.seconds, before: next.kind, ...name }, block.span);
  });
}
