import { hasLetters, isOpenBlock, isToTheEnd } from '../plan/blocks-of.ts';
import type { OpenBlock } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';

/** The easy part at one end of a class: its blocks and their length together. */
export type Edge = { readonly blocks: readonly OpenBlock[]; readonly seconds: number };

/** What stands before the first block with letters: warm-up, mobility, a song. */
export function openingOf(subject: CheckSubject): Edge {
  const first = subject.plan.blocks.findIndex(hasLetters);
  return edgeOf(subject, (block) => first === -1 || block < first, ['warm-up', 'mobility', 'song']);
}

/** What stands behind the last block with letters: cool-down, mobility, a song. */
export function endingOf(subject: CheckSubject): Edge {
  const last = subject.plan.blocks.findLastIndex(hasLetters);
  return edgeOf(subject, (block) => block > last, ['cool-down', 'mobility', 'song']);
}

/** Length of a cool-down *to the end*; 0 where the class has none. */
export function secondsToTheEnd({ plan, timeline }: CheckSubject): number {
  const open = plan.blocks.findIndex(isToTheEnd);
  const time = timeline.blocks.find(({ block }) => block === open);
  return time === undefined ? 0 : time.endSeconds - time.startSeconds;
}

function edgeOf(
  { plan, timeline }: CheckSubject,
  isThere: (block: number) => boolean,
  kinds: readonly OpenBlock['kind'][],
): Edge {
  const inside = plan.blocks.flatMap((block, index) =>
    isOpenBlock(block) && kinds.includes(block.kind) && isThere(index) ? [{ block, index }] : [],
  );
  const indexes = inside.map(({ index }) => index);
  return {
    blocks: inside.map(({ block }) => block),
    seconds: timeline.segments
      .filter(({ kind, block }) => kind === 'open' && indexes.includes(block))
      .reduce((sum, { startSeconds, endSeconds }) => sum + endSeconds - startSeconds, 0),
  };
}
