import type { Context } from '../context.ts';
import { plannedLines, roomOf } from '../plan/class-facts.ts';
import type { LineId } from '../plan/plan.ts';
import type { CheckSubject } from './check-subject.ts';
import { linesWithMoves, swapsForOnesLike } from './mends.ts';

/** For each line a move like it that the room has free kit for, for everyone; at stations one without kit. */
export function swapsToKitThere(
  lines: readonly LineId[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const room = roomOf(subject.plan, context);
  const people = subject.plan.facts.people ?? 0;
  const known = linesWithMoves(lines, subject.plan, context);
  if (room === undefined || known.length < new Set(lines).size) return undefined;
  const takesTurns = plannedLines(subject.plan).some(
    ({ planned, block }) => lines.includes(planned.id) && block.kind === 'stations',
  );
  return swapsForOnesLike(known, subject, context, (one) =>
    one.kit.every(({ item, pieces }) => {
      const free = (room.kit[item] ?? 0) - (context.kitInUse?.[item] ?? 0);
      return item === 'mat' || (!takesTurns && pieces * people <= free);
    }),
  );
}
