import { hasLetters, isOpenBlock, isTimeBlock } from '../../plan/blocks-of.ts';
import type {
  Block,
  BlockKind,
  Interval,
  Letter,
  LetteredBlock,
  LineId,
  OpenBlock,
  Plan,
  PlannedMove,
  TimeBlock,
} from '../../plan/plan.ts';
import type { Duration } from '../durations.ts';
import { spanOfLine } from '../group-lines.ts';
import { wishOf } from '../moves/wish-words.ts';
import { readSection } from '../read-section.ts';
import type { BlockNumber, Edit, LabelRef } from './edit.ts';
import { type Step, targetOf, tell } from './edit-step.ts';
import { freshIds, insertedAt, placeIn, withBlock, withoutBlock } from './plan-lines.ts';

export function changeBlock(
  ref: LabelRef,
  step: Step,
  change: (block: LetteredBlock) => LetteredBlock | undefined,
): Plan | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const changed = change(target.block);
  if (changed === undefined) return tell(step, { code: 'block-without-numbers', block: target.block.kind });
  return withBlock(step.plan, target.block.id, () => changed);
}

/** The block of its kind that the class has only one of. */
function onlyBlock(kind: BlockKind, step: Step): Block | undefined {
  const found = step.plan.blocks.filter((block) => block.kind === kind);
  if (found.length > 1) return tell(step, { code: 'several-blocks', word: kind, count: found.length });
  return found[0] ?? tell(step, { code: 'no-such-block', word: kind });
}

/** `change amrap to 6`: the number of the only block of that kind. */
export function changeOnlyBlock(
  edit: Edit & { readonly kind: 'change block' },
  step: Step,
): Plan | undefined {
  const block = onlyBlock(edit.block, step);
  if (block === undefined) return undefined;
  const changed = hasLetters(block) ? withNumber(block, edit.to) : withOwnLength(block, edit.to);
  if (changed === undefined) return tell(step, { code: 'block-without-numbers', block: block.kind });
  return { ...step.plan, blocks: step.plan.blocks.map((each) => (each === block ? changed : each)) };
}

function withNumber(block: LetteredBlock, to: BlockNumber): LetteredBlock | undefined {
  switch (to.kind) {
    case 'rounds':
      return withRounds(block, to.rounds);
    case 'interval':
      return withInterval(block, to.interval);
    case 'length':
      return withLengthOf(block, to.length);
  }
}

/** A bare number is read as on the block's own line: minutes of a warm-up, seconds of a rest. */
function withOwnLength(block: OpenBlock | TimeBlock, to: BlockNumber): Block | undefined {
  if (to.kind !== 'length') return undefined;
  const { bare, number, seconds } = to.length;
  if (isTimeBlock(block)) return { ...block, seconds };
  return {
    ...block,
    length: { kind: 'fixed', seconds: bare && block.kind !== 'song' ? number * 60 : seconds },
  };
}

export function withInterval(block: LetteredBlock, interval: Interval): LetteredBlock | undefined {
  return 'rounds' in block && block.intervals.some(({ workSeconds }) => workSeconds > 0)
    ? { ...block, intervals: [interval] }
    : undefined;
}

export function withRounds(block: LetteredBlock, rounds: number): LetteredBlock | undefined {
  switch (block.kind) {
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
      return block.intervals.length > 1 ? undefined : { ...block, rounds };
    case 'emom':
      return { ...block, intervals: rounds };
    case 'tabata':
      return { ...block, times: rounds };
    case 'amrap':
    case 'for time':
    case 'ladder':
      return undefined;
  }
}

/** An EMOM, AMRAP, for time or ladder that lasts so long; a bare number is minutes, as on their own lines. */
export function withLengthOf(
  block: LetteredBlock,
  { bare, number, seconds: typed }: Duration,
): LetteredBlock | undefined {
  const seconds = bare ? number * 60 : typed;
  switch (block.kind) {
    case 'emom':
      return seconds % block.intervalSeconds === 0
        ? { ...block, intervals: seconds / block.intervalSeconds }
        : undefined;
    case 'amrap':
    case 'for time':
      return { ...block, seconds };
    case 'ladder':
      return { ...block, capSeconds: seconds };
    case 'circuit':
    case 'straight':
    case 'stations':
    case 'finisher':
    case 'tabata':
      return undefined;
  }
}

export function withBetween(
  block: LetteredBlock,
  what: 'rounds' | 'letters',
  seconds: number,
): LetteredBlock | undefined {
  if (block.kind === 'tabata' && what === 'rounds') return { ...block, betweenSeconds: seconds };
  if (!('rounds' in block)) return undefined;
  const straight = block.kind === 'straight';
  if (what === 'letters') return straight ? { ...block, betweenLettersSeconds: seconds } : undefined;
  return straight ? undefined : { ...block, betweenRoundsSeconds: seconds };
}

/** A block behind (or before) the block that holds the letter, with one open line unless its moves follow. */
export function addBlock(edit: Edit & { readonly kind: 'add block' }, step: Step): Plan | undefined {
  const target = targetOf(edit.place.at, step);
  const block = target && readNewBlock(edit, step);
  if (target === undefined || block === undefined) return undefined;
  const ids = freshIds(step.plan);
  const at = placeIn(step.plan.blocks, target.block.id, edit.place);
  return { ...step.plan, blocks: insertedAt(step.plan.blocks, at, withNewIds(block, ids)) };
}

function readNewBlock(edit: Edit & { readonly kind: 'add block' }, { editing }: Step): Block | undefined {
  const { head, line } = edit;
  if (head.shape === 'letters' && edit.below.length === 0) {
    return head.block && { ...head.block, letters: [openLetter(head.block)] };
  }
  const below = edit.below.map((each) => ({ kind: 'moves', line: each }) as const);
  return readSection({ line, head, below }, editing.book, editing.told).block;
}

function openLetter({ span }: LetteredBlock): Letter {
  const open: PlannedMove = {
    id: '',
    span,
    choice: { kind: 'open', wish: wishOf('', []) },
    sides: 'both',
    options: [],
  };
  return { id: '', span, order: 'in turn', moves: [open], wholeSetEachSide: false, burnout: false, say: [] };
}

function withNewIds(block: Block, ids: () => LineId): Block {
  const id = ids();
  if ('letters' in block) {
    const letters = block.letters.map((letter) => ({
      ...letter,
      id: ids(),
      moves: letter.moves.map((move) => ({ ...move, id: ids() })),
    }));
    return { ...block, id, letters };
  }
  return isOpenBlock(block)
    ? { ...block, id, items: block.items.map((item) => ({ ...item, id: ids() })) }
    : { ...block, id };
}

export function dropBlock(edit: Edit & { readonly kind: 'drop block' }, step: Step): Plan | undefined {
  const block = onlyBlock(edit.block, step);
  if (block === undefined) return undefined;
  if (isTimeBlock(block)) {
    return { ...step.plan, blocks: step.plan.blocks.filter(({ id }) => id !== block.id) };
  }
  return notEmpty(withoutBlock(step.plan, block.id), step);
}

export function notEmpty(plan: Plan, step: Step): Plan | undefined {
  return plan.blocks.some((block) => !isTimeBlock(block)) ? plan : tell(step, { code: 'last-block' });
}

/** The lines of time right behind the block that holds the letter. */
function timesBehind(plan: Plan, block: LetteredBlock): readonly Block[] {
  const behind = plan.blocks.slice(plan.blocks.findIndex(({ id }) => id === block.id) + 1);
  const end = behind.findIndex((each) => !isTimeBlock(each));
  return end === -1 ? behind : behind.slice(0, end);
}

export function dropRest(ref: LabelRef, step: Step): Plan | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const rest = timesBehind(step.plan, target.block).find(({ kind }) => kind === 'rest');
  if (rest === undefined) return tell(step, { code: 'no-such-block', word: 'rest' });
  return { ...step.plan, blocks: step.plan.blocks.filter(({ id }) => id !== rest.id) };
}

export function timeBehind(edit: Edit & { readonly kind: 'time behind' }, step: Step): Plan | undefined {
  const target = targetOf(edit.at, step);
  if (target === undefined) return undefined;
  const { plan } = step;
  const { seconds, time } = edit;
  const line = timesBehind(plan, target.block).find(({ kind }) => kind === time);
  if (line !== undefined) {
    return {
      ...plan,
      blocks: plan.blocks.map((block) =>
        block.id === line.id && isTimeBlock(block) ? { ...block, seconds } : block,
      ),
    };
  }
  const added: Block = {
    kind: time,
    id: freshIds(plan)(),
    span: spanOfLine(step.line),
    seconds,
    explain: false,
  };
  const at = plan.blocks.findIndex(({ id }) => id === target.block.id) + 1;
  return { ...plan, blocks: insertedAt(plan.blocks, at, added) };
}

/** A warm-up, cool-down, mobility or song gets this length; one that is not there is added at its end. */
export function setOpenBlock(said: OpenBlock, step: Step): Plan | undefined {
  const { plan } = step;
  const found = plan.blocks.filter((block): block is OpenBlock => block.kind === said.kind);
  const [block] = found;
  if (found.length > 1) return tell(step, { code: 'several-blocks', word: said.kind, count: found.length });
  if (block !== undefined) {
    const changed = { ...block, length: said.length };
    return { ...plan, blocks: plan.blocks.map((each) => (each === block ? changed : each)) };
  }
  const added = withNewIds(said, freshIds(plan));
  if (said.kind === 'warm-up') {
    const first = plan.blocks.findIndex((each) => !isTimeBlock(each));
    return { ...plan, blocks: insertedAt(plan.blocks, first, added) };
  }
  if (said.kind !== 'cool-down') return tell(step, { code: 'no-such-block', word: said.kind });
  const last = plan.blocks.findLastIndex((each) => !isTimeBlock(each));
  return { ...plan, blocks: insertedAt(plan.blocks, last + 1, added) };
}
