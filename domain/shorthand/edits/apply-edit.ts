import type { Plan, PlannedMove } from '../../plan/plan.ts';
import {
  addBlock,
  changeBlock,
  changeOnlyBlock,
  dropBlock,
  dropRest,
  notEmpty,
  setOpenBlock,
  timeBehind,
  withBetween,
  withInterval,
  withLengthOf,
  withRounds,
} from './change-blocks.ts';
import type { Edit, LabelRef, PlacedEdit } from './edit.ts';
import { type Edited, type Editing, moveTarget, type Step, targetOf, tell } from './edit-step.ts';
import {
  freshIds,
  insertedAt,
  placeIn,
  withBlock,
  withLetter,
  withMove,
  withoutLetter,
  withoutOwnTimes,
} from './plan-lines.ts';
import { exchange, readWords, swapIn, takeOption } from './swap-moves.ts';

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
      return dropLines(edit.letters, step);
    case 'drop block':
      return dropBlock(edit, step);
    case 'change block':
      return changeOnlyBlock(edit, step);
    case 'drop rest':
      return dropRest(edit.at, step);
    case 'move':
      return moveLetter(edit, step);
    case 'rounds':
      return changeBlock(edit.at, step, (block) => withRounds(block, edit.rounds));
    case 'interval':
      return changeBlock(edit.at, step, (block) => withInterval(block, edit.interval));
    case 'length':
      return changeBlock(edit.at, step, (block) => withLengthOf(block, edit.length));
    case 'between':
      return changeBlock(edit.at, step, (block) => withBetween(block, edit.what, edit.seconds));
    case 'work':
      return changeMoves(edit.at, step, (move) => ({ ...move, workSeconds: edit.seconds }));
    case 'reps':
      return changeMove(edit.at, step, (move) => ({ ...move, reps: edit.reps }));
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

function dropLines([first, ...others]: readonly LabelRef[], step: Step): Plan | undefined {
  const plan = first && dropLine(first, step);
  return plan === undefined || others.length === 0 ? plan : dropLines(others, { ...step, plan });
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
