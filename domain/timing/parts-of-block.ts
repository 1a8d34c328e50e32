import type { Block, TimeBlock } from '../plan/plan.ts';
import type { Part } from './part.ts';
import { partsOfEmom } from './parts-of-emom.ts';
import { partsOfRounds } from './parts-of-rounds.ts';
import { partsOfSharedWork } from './parts-of-shared-work.ts';
import { partsOfTabata } from './parts-of-tabata.ts';
import type { TimingContext } from './timing-context.ts';

/** A cool-down to the end has its place here; how long it gets is known once all other blocks are. */
const placeholderSeconds = 1;

/** A block by itself, as if another followed at once: its last rest is there, and no part is empty. */
export function partsOfBlock(block: Block, context: TimingContext): readonly Part[] {
  return allParts(block, context).filter(({ seconds }) => seconds > 0);
}

function allParts(block: Block, context: TimingContext): readonly Part[] {
  switch (block.kind) {
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
      return partsOfRounds(block, context);
    case 'emom':
      return partsOfEmom(block, context);
    case 'tabata':
      return partsOfTabata(block);
    case 'amrap':
    case 'for time':
    case 'ladder':
      return partsOfSharedWork(block, context);
    case 'warm-up':
    case 'cool-down':
    case 'mobility':
    case 'song':
      return [
        { kind: 'open', seconds: block.length.kind === 'fixed' ? block.length.seconds : placeholderSeconds },
      ];
    case 'rest':
    case 'water':
    case 'explain':
    case 'set-up':
    case 'clear-up':
      return [partOfTime(block)];
  }
}

function partOfTime(block: TimeBlock): Part {
  const { seconds } = block;
  switch (block.kind) {
    case 'rest':
      return { kind: 'between-blocks', seconds, ...(block.explain ? { also: 'explain' } : {}) };
    case 'water':
      return { kind: 'between-blocks', seconds, also: 'water' };
    case 'explain':
      return { kind: 'explain', seconds };
    case 'set-up':
      return { kind: 'set-up', seconds };
    case 'clear-up':
      return { kind: 'set-up', seconds, also: 'clear-up' };
  }
}
