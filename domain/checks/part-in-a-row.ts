import type { Move } from '../catalogue/move.ts';
import type { Muscle } from '../catalogue/muscles.ts';
import type { Pattern } from '../catalogue/patterns.ts';
import type { Context } from '../context.ts';
import type { LineId } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import { swapThatMends } from './mends.ts';
import { namedFocus } from './named-focus.ts';
import type { Turn } from './turn.ts';
import { linesOfTurns, rowsOfThree, turnsOf } from './turns-of.ts';

/** A part of the body that three moves in a row tire. */
export type TiredPart = 'lower back' | 'grip' | 'wrists' | 'shoulders';

/** A row of three or more, and the exchange of two moves that leaves no such row. */
export type PartRow = {
  readonly part: TiredPart;
  readonly lines: readonly LineId[];
  readonly mend: string | undefined;
};

const muscleOf: Readonly<Record<TiredPart, Muscle | undefined>> = {
  'lower back': 'lower back',
  grip: 'forearms',
  wrists: undefined,
  shoulders: 'shoulders',
};

/** The first row of three on one of the parts, but in a `burnout` and where the class's focus names it. */
export function partInARow(
  parts: readonly TiredPart[],
  subject: CheckSubject,
  context: Context,
): PartRow | undefined {
  const { rowBreakSeconds } = context.settings.checks;
  const turns = turnsOf(subject, context);
  const rowsIn = (some: readonly Turn[]): readonly Omit<PartRow, 'mend'>[] =>
    parts.flatMap((part) =>
      rowsOfThree(some, rowBreakSeconds, (turn) => tires(turn, part, subject, context)).map((row) => ({
        part,
        lines: linesOfTurns(row),
      })),
    );
  const row = rowsIn(turns)[0];
  return (
    row && {
      ...row,
      mend: swapThatMends(subject.plan, turns, row.lines, (some) => rowsIn(some).length === 0),
    }
  );
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

/** Trunk work on the hands or forearms loads the shoulders, but is not what tires them first. */
const pressing: readonly Pattern[] = ['horizontal push', 'vertical push', 'squat', 'hinge', 'lunge', 'carry'];

function loads(move: Move, part: TiredPart): boolean {
  return part === 'shoulders'
    ? move.primeMovers.includes('shoulders') ||
        (move.traits.includes('shoulders') && pressing.includes(move.pattern))
    : move.traits.includes(part);
}
