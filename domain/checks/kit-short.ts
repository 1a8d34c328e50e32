import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import { plannedLines, roomOf } from '../plan/class-facts.ts';
import type { LineId } from '../plan/plan.ts';
import { knownMove } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { kitCounts } from './kit-needs.ts';
import { mendWith, swapForOneLike } from './mends.ts';

export type KitShort = FindingBase & {
  readonly code: 'kit-short';
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
};

/** A block needs more pieces at once than the room has for that head count; the worst one of a kind is told. */
export function kitShort(subject: CheckSubject, context: Context): readonly KitShort[] {
  const short = kitCounts(subject.plan, context).filter(
    ({ needPieces, havePieces }) => needPieces > havePieces,
  );
  return [...new Set(short.map(({ item }) => item))].map((item) => {
    const ofItem = short.filter((count) => count.item === item);
    const needPieces = Math.max(...ofItem.map((count) => count.needPieces));
    return {
      code: 'kit-short',
      severity: 'must fix',
      lines: ofItem.flatMap(({ lines }) => lines),
      source: 'common practice',
      item,
      needPieces,
      havePieces: ofItem[0]?.havePieces ?? 0,
      ...mendWith(
        swapToKitThere(
          ofItem.flatMap(({ lines }) => lines),
          subject,
          context,
        ),
      ),
    };
  });
}

/** Where one line asks for it: a move like it that the room has kit for, for everyone; none at stations. */
function swapToKitThere(
  [line, ...others]: readonly LineId[],
  subject: CheckSubject,
  context: Context,
): string | undefined {
  const place = plannedLines(subject.plan).find(({ planned }) => planned.id === line);
  const move = place && knownMove(place.planned, context);
  const room = roomOf(subject.plan, context);
  const people = subject.plan.facts.people ?? 0;
  if (line === undefined || move === undefined || room === undefined || others.length > 0) {
    return undefined;
  }
  return swapForOneLike(move, line, subject, context, (one) =>
    one.kit.every(
      ({ item, pieces }) =>
        item === 'mat' || (place?.block.kind !== 'stations' && pieces * people <= (room.kit[item] ?? 0)),
    ),
  );
}
