import type { Catalogue } from '../catalogue/catalogue.ts';
import type { Letter, OpenItem, Option, PlannedMove, Weight } from '../plan/plan.ts';
import { moveName } from './move-name.ts';

/** A letter's line: its moves with all that is said of them, then what is said of the letter. */
export function printMoveLine(letter: Letter, catalogue: Catalogue): string {
  const sets = letter.rounds === undefined ? -1 : letter.moves.findIndex(({ reps }) => reps !== undefined);
  const moves = letter.moves.map((move, index) =>
    printMove(move, catalogue, index === sets ? letter.rounds : undefined),
  );
  return [
    letter.order === 'by round' ? `by round: ${moves.join(', ')}` : moves.join(' + '),
    letter.restSeconds === undefined ? '' : `rest ${letter.restSeconds}`,
    letter.wholeSetEachSide ? 'whole set each side' : '',
    letter.burnout ? 'burnout' : '',
  ]
    .filter((words) => words !== '')
    .join(', ');
}

/** One move: `8 goblet squat 45s tempo 3-1-1-0 each side heavy`. */
export function printMove(move: PlannedMove, catalogue: Catalogue, sets?: number): string {
  const { reps, workSeconds, tempo, rpe, metres, note } = move;
  const name = printChoice(move, catalogue);
  const countedFirst = sets === undefined && reps !== undefined && !/^\d/.test(name);
  return [
    countedFirst ? `${reps}` : '',
    name,
    countedFirst || reps === undefined ? '' : sets === undefined ? `x${reps}` : `${sets}x${reps}`,
    workSeconds === undefined ? '' : `${workSeconds}s`,
    tempo === undefined
      ? ''
      : `tempo ${tempo.lowerSeconds}-${tempo.bottomPauseSeconds}-${tempo.liftSeconds}-${tempo.topPauseSeconds}`,
    printSides(move, catalogue),
    move.weight === undefined ? '' : printWeight(move.weight),
    rpe === undefined ? '' : `rpe ${rpe}`,
    metres === undefined ? '' : `${metres}m`,
    ...move.options.map((option) => printOption(option, catalogue)),
    note === undefined ? '' : `(${note})`,
  ]
    .filter((words) => words !== '')
    .join(' ');
}

function printChoice({ choice }: PlannedMove, catalogue: Catalogue): string {
  switch (choice.kind) {
    case 'move':
      return moveName(choice.moveId, catalogue);
    case 'open':
      return choice.wish.words === '' ? '?' : `? ${choice.wish.words}`;
    case 'words':
      return `"${choice.text}"`;
  }
}

/** Assumed sides are written out; both, and what alternates by nature, need no word. */
function printSides({ choice, sides }: PlannedMove, catalogue: Catalogue): string {
  if (sides === 'both') return '';
  const move = choice.kind === 'move' ? catalogue.byId.get(choice.moveId) : undefined;
  return sides === 'alternating' && move?.sides === 'alternating by nature' ? '' : sides;
}

function printWeight(weight: Weight): string {
  return weight.kind === 'feel' ? weight.feel : `${weight.amount}${weight.unit}`;
}

function printOption({ kind, moveId, text }: Option, catalogue: Catalogue): string {
  return `${kind} ${moveId === undefined ? text : moveName(moveId, catalogue)}`;
}

/** What an open block lists, on one line. */
export function printItems(items: readonly OpenItem[], catalogue: Catalogue): string {
  return items
    .map(({ what, workSeconds, detail }) =>
      [
        what.kind === 'move' ? moveName(what.moveId, catalogue) : what.text,
        detail ?? '',
        workSeconds === undefined ? '' : `${workSeconds}s`,
      ]
        .filter((words) => words !== '')
        .join(' '),
    )
    .join(', ');
}
