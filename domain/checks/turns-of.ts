import type { Context } from '../context.ts';
import { plannedLines } from '../plan/class-facts.ts';
import type { LineId, PlannedMove } from '../plan/plan.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import { secondsPerRep } from '../timing/seconds-per-rep.ts';
import type { Segment } from '../timing/timeline.ts';
import type { CheckSubject } from './check-subject.ts';
import type { Turn } from './turn.ts';

type Bout = Omit<Turn, 'gapSeconds' | 'pauseSeconds'>;
type Line = Omit<Bout, 'blockIndex' | 'startSeconds' | 'endSeconds' | 'workSeconds' | 'boutSeconds'>;

/** Without reps, one pass over a move in open-ended work is taken as this long: common practice. */
const assumedPassSeconds = 30;

/** The turns of a class in order. Open-ended work is shown as two rounds of its moves. */
export function turnsOf(subject: CheckSubject, context: Context): readonly Turn[] {
  if (subject.turns !== undefined) {
    return subject.turns;
  }
  const lines = linesOf(subject, context);
  const bouts = subject.timeline.segments
    .filter((segment) => segment.kind === 'work')
    .flatMap((segment) => passesOf(segment, lines, context));
  return joinBouts(bouts);
}

function linesOf({ plan }: CheckSubject, context: Context): ReadonlyMap<LineId, Line> {
  const moves = movesByLine(plan, context);
  return new Map(
    plannedLines(plan).map(({ block, letter, planned }) => {
      const { known, kit = [] } = moves.get(planned.id) ?? {};
      return [planned.id, { block, letter, planned, kit, ...(known === undefined ? {} : { move: known }) }];
    }),
  );
}

function passesOf(segment: Segment, lines: ReadonlyMap<LineId, Line>, context: Context): readonly Bout[] {
  const shared = segment.sharedBy !== undefined && segment.sharedBy.length > 0 ? segment.sharedBy : undefined;
  const ids =
    shared !== undefined ? [...shared, ...shared] : segment.move === undefined ? [] : [segment.move];
  const seconds = (segment.endSeconds - segment.startSeconds) / ids.length;
  return ids.flatMap((id, index) => {
    const line = lines.get(id);
    if (line === undefined) {
      return [];
    }
    return [
      {
        ...line,
        blockIndex: segment.block,
        startSeconds: segment.startSeconds + index * seconds,
        endSeconds: segment.startSeconds + (index + 1) * seconds,
        workSeconds: seconds,
        boutSeconds: shared === undefined ? seconds : Math.min(seconds, passSeconds(line.planned, context)),
      },
    ];
  });
}

function passSeconds(planned: PlannedMove, context: Context): number {
  return planned.reps === undefined ? assumedPassSeconds : planned.reps * secondsPerRep(planned, context);
}

function joinBouts(bouts: readonly Bout[]): readonly Turn[] {
  const turns: Turn[] = [];
  for (const bout of bouts) {
    const last = turns.at(-1);
    if (last !== undefined && last.planned.id === bout.planned.id) {
      turns[turns.length - 1] = joined(last, bout);
    } else {
      turns.push({
        ...bout,
        pauseSeconds: 0,
        gapSeconds: last === undefined ? Number.POSITIVE_INFINITY : bout.startSeconds - last.endSeconds,
      });
    }
  }
  return turns;
}

function joined(turn: Turn, bout: Bout): Turn {
  return {
    ...turn,
    endSeconds: bout.endSeconds,
    workSeconds: turn.workSeconds + bout.workSeconds,
    boutSeconds: Math.max(turn.boutSeconds, bout.boutSeconds),
    pauseSeconds: Math.max(turn.pauseSeconds, bout.startSeconds - turn.endSeconds),
  };
}

/** Each turn with the one before it, inside one block, where less than `breakSeconds` lie between them. */
export function neighboursIn(
  turns: readonly Turn[],
  breakSeconds: number,
): readonly { readonly before: Turn; readonly after: Turn }[] {
  return turns.flatMap((after, index) => {
    const before = turns[index - 1];
    return before !== undefined &&
      before.blockIndex === after.blockIndex &&
      before.planned.id !== after.planned.id &&
      after.gapSeconds < breakSeconds
      ? [{ before, after }]
      : [];
  });
}

/** The stretches of three or more different lines in a row that are of a kind, with less than `breakSeconds` between. */
export function rowsOfThree(
  turns: readonly Turn[],
  breakSeconds: number,
  isOfKind: (turn: Turn) => boolean,
): readonly (readonly Turn[])[] {
  const rows: Turn[][] = [];
  let row: Turn[] = [];
  for (const turn of turns) {
    if (!isOfKind(turn) || turn.gapSeconds >= breakSeconds) {
      row = [];
    }
    if (isOfKind(turn)) {
      row.push(turn);
    }
    if (!rows.includes(row) && linesOfTurns(row).length >= 3) {
      rows.push(row);
    }
  }
  return rows;
}

/** The line ids of some turns, each once, in order. */
export function linesOfTurns(turns: readonly Turn[]): readonly LineId[] {
  return [...new Set(turns.map((turn) => turn.planned.id))];
}
