import type { Block, LetteredBlock, OpenBlock, TimeBlock } from './plan.ts';

/** A block whose lines are letters. */
export function hasLetters(block: Block): block is LetteredBlock {
  return 'letters' in block;
}

/** Warm-up, cool-down, mobility or song. */
export function isOpenBlock(block: Block): block is OpenBlock {
  return 'items' in block;
}

/** Rest, water, explain, set-up or clear-up. */
export function isTimeBlock(block: Block): block is TimeBlock {
  return !hasLetters(block) && !isOpenBlock(block);
}

/** A cool-down that takes what is left of the teaching time. */
export function isToTheEnd(block: Block): boolean {
  return isOpenBlock(block) && block.length.kind === 'to the end';
}
