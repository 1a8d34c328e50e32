import type { Level, MoveId } from '../catalogue/move.ts';
import type { Context } from '../context.ts';
import { classLevel, hasGentlerOption, plannedLines } from '../plan/class-facts.ts';
import type { LineId } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith } from './mends.ts';
import { moveById } from './move-facts.ts';

export type AboveLevel = FindingBase & {
  readonly code: 'above-level';
  readonly level: Level;
  /** The easier options the catalogue knows, by line. */
  readonly options: readonly { readonly line: LineId; readonly moveId: MoveId }[];
};

/** Moves above the class's level, with no easier option named beside them. */
export function aboveLevel({ plan }: CheckSubject, context: Context): readonly AboveLevel[] {
  const level = classLevel(plan);
  if (level === undefined) {
    return [];
  }
  const above = plannedLines(plan).flatMap(({ planned }) => {
    const move = knownMove(planned, context);
    return move !== undefined && move.level > level && !hasGentlerOption(planned) ? [{ planned, move }] : [];
  });
  if (above.length === 0) {
    return [];
  }
  const options = above.flatMap(({ planned, move }) =>
    move.easier !== undefined && (moveById(move.easier, context)?.level ?? 3) <= level
      ? [{ line: planned.id, moveId: move.easier }]
      : [],
  );
  return [
    {
      code: 'above-level',
      severity: 'look at',
      lines: above.map(({ planned }) => planned.id),
      source: 'common practice',
      level,
      options,
      ...mendWith(
        options.length === above.length
          ? options.map(({ line }) => `easier ${labelOf(plan, line)}`).join('\n')
          : undefined,
      ),
    },
  ];
}
