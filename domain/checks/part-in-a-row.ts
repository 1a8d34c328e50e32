import type { Move } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import { swapThatMends } from './mends.ts';
import { namedFocus } from './named-focus.ts';
import { linesOfTurns, rowsOfThree, type Turn, turnsOf } from './turns-of.ts';

/** A part of the body that three moves in a row tire. */
export type TiredPart = 'lower back' | 'grip' | 'wrists' | 'shoulders';

/** A row of three or more, and the exchange of two moves that breaks it. */
export type PartRow = { readonly lines: readonly string[]; readonly mend: string | undefined };

const muscleOf: Readonly<Record<TiredPart, Muscle | undefined>> = {
  'lower back': 'lower back',
  grip: 'forearms',
  wrists: undefined,
  shoulders: 'shoulders',
};

/** The first row of three on one part, but in a `burnout` and where the class's focus names the part. */
export function partInARow(part: TiredPart, subject: CheckSubject, context: Context): PartRow | undefined {
  const { rowBreakSeconds } = context.settings.checks;
  const turns = turnsOf(subject, context);
  const rowsIn = (some: readonly Turn[]): readonly (readonly Turn[])[] =>
    rowsOfThree(some, rowBreakSeconds, (turn) => tires(turn, part, subject, context));
  const row = rowsIn(turns)[0];
  if (row === undefined) {
    return undefined;
  }
  const lines = linesOfTurns(row);
  return { lines, mend: swapThatMends(subject.plan, turns, lines, (some) => rowsIn(some).length === 0) };
}

function tires(turn: Turn, part: TiredPart, { plan }: CheckSubject, context: Context): boolean {
  const { gripBoutSeconds, rowBoutSeconds } = context.settings.checks;
  const muscle = muscleOf[part];
  return (
    turn.move !== undefined &&
    loads(turn.move, part) &&
    turn.boutSeconds >= (part === 'grip' ? gripBoutSeconds : rowBoutSeconds) &&
    !turn.block.burnout &&
    !turn.letter.burnout &&
    !(muscle !== undefined && namedFocus(plan, turn.block).has(muscle))
  );
}

function loads(move: Move, part: TiredPart): boolean {
  return move.traits.includes(part) || (part === 'shoulders' && move.primeMovers.includes('shoulders'));
}
