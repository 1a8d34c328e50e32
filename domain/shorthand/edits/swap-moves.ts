import type { Letter, LetteredBlock, Plan, PlannedMove } from '../../plan/plan.ts';
import type { Line } from '../lines-of.ts';
import { packTokens } from '../moves/pack-tokens.ts';
import { readLetter } from '../moves/read-letter.ts';
import { splitMove } from '../moves/split-move.ts';
import { hasClock } from '../read-section.ts';
import { tokensOf } from '../tokens-of.ts';
import { carriedSides } from './carried-sides.ts';
import type { Edit } from './edit.ts';
import { type Edited, moveTarget, type Step, type Target, targetOf, tell } from './edit-step.ts';
import { freshIds, withLetter, withMove, withoutOwnTimes } from './plan-lines.ts';

/** The words of the edit as a line of this block. */
export function readWords(line: Line, block: LetteredBlock, { editing }: Step): Letter | undefined {
  const { book, told } = editing;
  return readLetter({ line, kind: block.kind, timed: hasClock(block.kind, block), book, told }).letter;
}

export function swapIn(edit: Edit & { readonly kind: 'swap' }, step: Step): Edited | undefined {
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

export function takeOption(edit: Edit & { readonly kind: 'option' }, step: Step): Edited | undefined {
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
export function exchange(edit: Edit & { readonly kind: 'swap with' }, step: Step): Plan | undefined {
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
