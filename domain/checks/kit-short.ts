import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { kitCounts } from './kit-needs.ts';

export type KitShort = FindingBase & {
  readonly code: 'kit-short';
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
};

/** A block needs more pieces at once than the room has for that head count; the worst one of a kind is told. */
export function kitShort({ plan }: CheckSubject, context: Context): readonly KitShort[] {
  const short = kitCounts(plan, context).filter(({ needPieces, havePieces }) => needPieces > havePieces);
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
    };
  });
}
