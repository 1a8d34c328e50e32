import type { Context } from '../../context.ts';
import { isOpenBlock, isTimeBlock } from '../../plan/blocks-of.ts';
import type { Block, Letter, LetteredBlock, LineId, OpenBlock, Plan, PlannedMove } from '../../plan/plan.ts';
import { spanOfLine } from '../group-lines.ts';
import type { Line } from '../lines-of.ts';
import type { NameBook } from '../moves/name-book.ts';
import { packTokens } from '../moves/pack-tokens.ts';
import { readLetter } from '../moves/read-letter.ts';
import { splitMove } from '../moves/split-move.ts';
import { wishOf } from '../moves/wish-words.ts';
import type { ProblemKind } from '../problem.ts';
import { hasClock, readSection } from '../read-section.ts';
import { tokensOf } from '../tokens-of.ts';
import { type Told, tellProblem } from '../told.ts';
import { carriedSides, type SideChange } from './carried-sides.ts';
import type { Edit, LabelRef, Place, PlacedEdit } from './edit.ts';
import {
  blockOfLetter,
  freshIds,
  insertedAt,
  withBlock,
  withLetter,
  withMove,
  withoutBlock,
  withoutLetter,
  withoutOwnTimes,
} from './plan-lines.ts';
import { resolveLabel } from './resolve-label.ts';

/** A plan under edit: labels are those of `original`, the version the message was written on. */
export type Editing = {
  readonly original: Plan;
  readonly book: NameBook;
  readonly context: Pick<Context, 'settings'>;
  readonly told: Told;
};

/** The plan after one edit, with what became of side words on the way. */
export type Edited = { readonly plan: Plan; readonly sides: readonly SideChange[] };

type Step = { readonly plan: Plan; readonly line: Line; readonly editing: Editing };
type Target = { readonly letter: Letter; readonly block: LetteredBlock; readonly move?: PlannedMove };

/** One edit on a plan; absent where it can't be made, which is then told. */
export function applyEdit(plan: Plan, { edit, line }: PlacedEdit, editing: Editing): Edited | undefined {
  const step: Step = { plan, line, editing };
  switch (edit.kind) {
    case 'swap':
      return swapIn(edit, step);
    case 'option':
      return takeOption(edit, step);
    default: {
      const edited = applied(edit, step);
      return edited && { plan: edited, sides: [] };
    }
  }
}

function applied(edit: Exclude<Edit, { kind: 'swap' | 'option' }>, step: Step): Plan | undefined {
  const { plan } = step;
  switch (edit.kind) {
    case 'swap with':
      return exchange(edit, step);
    case 'add letter':
      return addLetter(edit, step);
    case 'add block':
      return addBlock(edit, step);
    case 'drop':
      return dropLine(edit.at, step);
    case 'drop block':
      return dropBlock(edit, step);
    case 'drop rest':
      return dropRest(edit.at, step);
    case 'move':
      return moveLetter(edit, step);
    case 'rounds':
      return changeBlock(edit.at, step, (block) => withRounds(block, edit.rounds));
    case 'interval':
      return changeBlock(edit.at, step, (block) =>
        'rounds' in block && block.intervals.some(({ workSeconds }) => workSeconds > 0)
          ? { ...block, intervals: [edit.interval] }
          : undefined,
      );
    case 'between':
      return changeBlock(edit.at, step, (block) => withBetween(block, edit.what, edit.seconds));
    case 'work':
      return changeMoves(edit.at, step, (move) => ({ ...move, workSeconds: edit.seconds }));
    case 'rest': {
      const target = targetOf(edit.at, step);
      return (
        target && withLetter(plan, target.letter.id, (letter) => ({ ...letter, restSeconds: edit.seconds }))
      );
    }
    case 'time behind':
      return timeBehind(edit, step);
    case 'open block':
      return setOpenBlock(edit.block, step);
    case 'sides':
      return changeMove(edit.at, step, (move) => ({ ...move, sides: edit.sides }));
    case 'weight':
      return changeMove(edit.at, step, (move) => ({ ...move, weight: edit.weight }));
    case 'rpe':
      return changeMove(edit.at, step, (move) => ({ ...move, rpe: edit.rpe }));
    case 'tempo':
      return changeMove(edit.at, step, (move) => ({ ...move, tempo: edit.tempo }));
    case 'kit':
      return { ...plan, facts: { ...plan.facts, kit: edit.items } };
    case 'facts':
      return { ...plan, facts: { ...plan.facts, ...edit.facts } };
  }
}

function tell({ line, editing }: Step, problem: ProblemKind): undefined {
  tellProblem(editing.told, line.number, spanOfLine(line), problem);
}

/** The letter, and the move where one is meant, as they stand now. */
function targetOf(ref: LabelRef, { plan, line, editing }: Step): Target | undefined {
  const ids = resolveLabel(ref, editing.original, line, editing.told);
  if (ids === undefined) return undefined;
  const block = blockOfLetter(plan, ids.letter);
  const letter = block?.letters.find(({ id }) => id === ids.letter);
  const move = letter?.moves.find(({ id }) => id === ids.move);
  if (block === undefined || letter === undefined || (ids.move !== undefined && move === undefined)) {
    tellProblem(editing.told, line.number, ref.span, { code: 'letter-gone', label: ref.label });
    return undefined;
  }
  return { letter, block, ...(move && { move }) };
}

/** The one move meant: of a letter with several, its own label is needed. */
function moveTarget(ref: LabelRef, step: Step): (Target & { readonly move: PlannedMove }) | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const [only, another] = target.letter.moves;
  if (target.move !== undefined) return { ...target, move: target.move };
  if (only !== undefined && another === undefined) return { ...target, move: only };
  const moves = target.letter.moves.map((_, index) => `${ref.label}${index + 1}`);
  tellProblem(step.editing.told, step.line.number, ref.span, {
    code: 'one-move-needed',
    label: ref.label,
    moves,
  });
  return undefined;
}

function changeMove(ref: LabelRef, step: Step, change: (move: PlannedMove) => PlannedMove): Plan | undefined {
  const target = moveTarget(ref, step);
  return target && withMove(step.plan, target.move.id, change);
}

/** Of a letter with several moves, each of them. */
function changeMoves(
  ref: LabelRef,
  step: Step,
  change: (move: PlannedMove) => PlannedMove,
): Plan | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  if (target.move !== undefined) return withMove(step.plan, target.move.id, change);
  return withLetter(step.plan, target.letter.id, (letter) => ({
    ...letter,
    moves: letter.moves.map(change),
  }));
}

function changeBlock(
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

function withRounds(block: LetteredBlock, rounds: number): LetteredBlock | undefined {
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

function withBetween(
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

/** The words of the edit as a line of this block. */
function readWords(line: Line, block: LetteredBlock, { editing }: Step): Letter | undefined {
  const { book, told } = editing;
  return readLetter({ line, kind: block.kind, timed: hasClock(block.kind, block), book, told }).letter;
}

function swapIn(edit: Edit & { readonly kind: 'swap' }, step: Step): Edited | undefined {
  const target = targetOf(edit.at, step);
  if (target === undefined) return undefined;
  const read = readWords(edit.moves.line, target.block, step);
  if (read === undefined) return undefined;
  const [first, ...more] = read.moves;
  if (first === undefined) return undefined;
  if (more.length > 0 && target.move === undefined) return swapLetter(read, target, step);
  const old = moveTarget(edit.at, step)?.move;
  if (old === undefined) return undefined;
  if (more.length > 0) {
    return tell(step, { code: 'one-move-needed', label: edit.at.label, moves: [edit.at.label] });
  }
  const { name: _, marks } = splitMove(packTokens(tokensOf(edit.moves.line)), step.editing.book);
  const saidSides = marks.some(({ mark }) => mark.kind === 'sides');
  return replaceMove(old, first, saidSides, target.letter.wholeSetEachSide, step);
}

/** Several moves for a whole letter: its line is written anew, its rest and cues stay. */
function swapLetter(read: Letter, { letter }: Target, { plan }: Step): Edited {
  const ids = freshIds(plan);
  const moves = read.moves.map((move, index) => ({ ...move, id: letter.moves[index]?.id ?? ids() }));
  return { plan: withLetter(plan, letter.id, (each) => ({ ...each, order: read.order, moves })), sides: [] };
}

/** The new move in the old one's place: time, side and note stay unless the words say others. */
function replaceMove(
  old: PlannedMove,
  fresh: PlannedMove,
  saidSides: boolean,
  wholeSetEachSide: boolean,
  { plan, editing }: Step,
): Edited {
  const { sides, change } = saidSides
    ? { sides: fresh.sides, change: undefined }
    : carriedSides(old, fresh.choice, wholeSetEachSide, editing.book.catalogue);
  const { workSeconds, reps, tempo, note, id, span } = old;
  const kept = {
    ...(workSeconds !== undefined && { workSeconds }),
    ...(reps !== undefined && { reps }),
    ...(tempo && { tempo }),
    ...(note !== undefined && { note }),
  };
  const swapped = withMove(plan, id, () => ({ ...kept, ...fresh, id, span, sides }));
  return { plan: swapped, sides: change ? [{ ...change, move: id }] : [] };
}

function takeOption(edit: Edit & { readonly kind: 'option' }, step: Step): Edited | undefined {
  const target = moveTarget(edit.at, step);
  if (target === undefined) return undefined;
  const { move, letter } = target;
  const { catalogue } = step.editing.book;
  const named = move.options.find(({ kind }) => kind === edit.option);
  const own = move.choice.kind === 'move' ? catalogue.byId.get(move.choice.moveId)?.[edit.option] : undefined;
  const moveId = named?.moveId ?? (named === undefined ? own : undefined);
  if (moveId === undefined && named === undefined) {
    return tell(step, { code: 'no-option', kind: edit.option, label: edit.at.label });
  }
  const choice: PlannedMove['choice'] =
    moveId === undefined ? { kind: 'words', text: named?.text ?? '' } : { kind: 'move', moveId };
  const { sides, change } = carriedSides(move, choice, letter.wholeSetEachSide, catalogue);
  const options = move.options.filter((option) => option !== named);
  const plan = withMove(step.plan, move.id, (each) => ({ ...each, choice, sides, options }));
  return { plan, sides: change ? [{ ...change, move: move.id }] : [] };
}

/** Two letters or two moves change places; times stay with the place where blocks differ. */
function exchange(edit: Edit & { readonly kind: 'swap with' }, step: Step): Plan | undefined {
  const one = targetOf(edit.at, step);
  const other = targetOf(edit.other, step);
  if (one === undefined || other === undefined) return undefined;
  const single = one.letter.moves.length === 1 && other.letter.moves.length === 1;
  const wholeLetters = one.move === undefined && other.move === undefined && !single;
  return wholeLetters ? exchangeLetters(one, other, step) : exchangeMoves(edit, step);
}

function exchangeLetters(one: Target, other: Target, { plan }: Step): Plan {
  const apart = one.block.id !== other.block.id;
  const placed = (letter: Letter) => (apart ? withoutOwnTimes(letter) : letter);
  const replaced = (letter: Letter): Letter => {
    if (letter.id === one.letter.id) return placed(other.letter);
    return letter.id === other.letter.id ? placed(one.letter) : letter;
  };
  return {
    ...plan,
    blocks: plan.blocks.map((block) =>
      'letters' in block ? { ...block, letters: block.letters.map(replaced) } : block,
    ),
  };
}

function exchangeMoves(edit: Edit & { readonly kind: 'swap with' }, step: Step): Plan | undefined {
  const one = moveTarget(edit.at, step);
  const other = moveTarget(edit.other, step);
  if (one === undefined || other === undefined) return undefined;
  const apart = one.block.id !== other.block.id;
  const inPlace = (move: PlannedMove, { workSeconds, ...place }: PlannedMove): PlannedMove => {
    if (!apart) return move;
    const { workSeconds: _, ...rest } = move;
    return workSeconds === undefined || place.id === move.id ? rest : { ...rest, workSeconds };
  };
  const replaced = (move: PlannedMove): PlannedMove => {
    if (move.id === one.move.id) return inPlace(other.move, one.move);
    return move.id === other.move.id ? inPlace(one.move, other.move) : move;
  };
  return {
    ...step.plan,
    blocks: step.plan.blocks.map((block) =>
      'letters' in block
        ? {
            ...block,
            letters: block.letters.map((letter) => ({ ...letter, moves: letter.moves.map(replaced) })),
          }
        : block,
    ),
  };
}

function addLetter(edit: Edit & { readonly kind: 'add letter' }, step: Step): Plan | undefined {
  const target = targetOf(edit.place.at, step);
  const read = target && readWords(edit.moves.line, target.block, step);
  if (target === undefined || read === undefined) return undefined;
  const ids = freshIds(step.plan);
  const letter = { ...read, id: ids(), moves: read.moves.map((move) => ({ ...move, id: ids() })) };
  return withBlock(step.plan, target.block.id, (block) => ({
    ...block,
    letters: insertedAt(block.letters, placeIn(block.letters, target.letter.id, edit.place), letter),
  }));
}

function placeIn(lines: readonly { readonly id: LineId }[], id: LineId, { side }: Place): number {
  return lines.findIndex((line) => line.id === id) + (side === 'after' ? 1 : 0);
}

/** A block behind (or before) the block that holds the letter, with one open line unless its moves follow. */
function addBlock(edit: Edit & { readonly kind: 'add block' }, step: Step): Plan | undefined {
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

/** A letter, or one move of several; the last letter takes its block along. */
function dropLine(ref: LabelRef, step: Step): Plan | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const { letter, move } = target;
  if (move === undefined || letter.moves.length === 1)
    return notEmpty(withoutLetter(step.plan, letter), step);
  return withLetter(step.plan, letter.id, (each) => ({
    ...each,
    moves: each.moves.filter(({ id }) => id !== move.id),
  }));
}

function dropBlock(edit: Edit & { readonly kind: 'drop block' }, step: Step): Plan | undefined {
  const found = step.plan.blocks.filter(({ kind }) => kind === edit.block);
  const [block] = found;
  if (block === undefined) return tell(step, { code: 'no-such-block', word: edit.block });
  if (found.length > 1) return tell(step, { code: 'several-blocks', word: edit.block, count: found.length });
  if (isTimeBlock(block)) {
    return { ...step.plan, blocks: step.plan.blocks.filter(({ id }) => id !== block.id) };
  }
  return notEmpty(withoutBlock(step.plan, block.id), step);
}

function notEmpty(plan: Plan, step: Step): Plan | undefined {
  return plan.blocks.some((block) => !isTimeBlock(block)) ? plan : tell(step, { code: 'last-block' });
}

/** The lines of time right behind the block that holds the letter. */
function timesBehind(plan: Plan, block: LetteredBlock): readonly Block[] {
  const behind = plan.blocks.slice(plan.blocks.findIndex(({ id }) => id === block.id) + 1);
  const end = behind.findIndex((each) => !isTimeBlock(each));
  return end === -1 ? behind : behind.slice(0, end);
}

function dropRest(ref: LabelRef, step: Step): Plan | undefined {
  const target = targetOf(ref, step);
  if (target === undefined) return undefined;
  const rest = timesBehind(step.plan, target.block).find(({ kind }) => kind === 'rest');
  if (rest === undefined) return tell(step, { code: 'no-such-block', word: 'rest' });
  return { ...step.plan, blocks: step.plan.blocks.filter(({ id }) => id !== rest.id) };
}

function timeBehind(edit: Edit & { readonly kind: 'time behind' }, step: Step): Plan | undefined {
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
function setOpenBlock(said: OpenBlock, step: Step): Plan | undefined {
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

/** A letter in another place, in the block of the letter it stands beside. */
function moveLetter(edit: Edit & { readonly kind: 'move' }, step: Step): Plan | undefined {
  const moved = targetOf(edit.at, step);
  const beside = targetOf(edit.place.at, step);
  if (moved === undefined || beside === undefined) return undefined;
  if (moved.move !== undefined && moved.letter.moves.length > 1) {
    return tell(step, { code: 'edit-incomplete', works: 'move C before A' });
  }
  if (moved.letter.id === beside.letter.id) return step.plan;
  const letter = moved.block.id === beside.block.id ? moved.letter : withoutOwnTimes(moved.letter);
  return withBlock(withoutLetter(step.plan, moved.letter), beside.block.id, (block) => ({
    ...block,
    letters: insertedAt(block.letters, placeIn(block.letters, beside.letter.id, edit.place), letter),
  }));
}
