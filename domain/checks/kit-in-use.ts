import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { kitCounts } from './kit-needs.ts';
import { mendWith } from './mends.ts';
import { swapsToKitThere } from './swaps-to-kit-there.ts';

export type KitInUse = FindingBase & {
  readonly code: 'kit-in-use';
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
  readonly outPieces: number;
};

/** The room has enough, but another class still has it out. Silent where nobody says what is out. */
export function kitInUse(subject: CheckSubject, context: Context): readonly KitInUse[] {
  const missing = kitCounts(subject.plan, context).filter(
    ({ needPieces, havePieces, outPieces }) =>
      needPieces <= havePieces && needPieces > havePieces - outPieces,
  );
  return [...new Set(missing.map(({ item }) => item))].map((item) => {
    const ofItem = missing.filter((count) => count.item === item);
    return {
      code: 'kit-in-use',
      severity: 'must fix',
      lines: ofItem.flatMap(({ lines }) => lines),
      source: 'common practice',
      item,
      needPieces: Math.max(...ofItem.map((count) => count.needPieces)),
      havePieces: ofItem[0]?.havePieces ?? 0,
      outPieces: ofItem[0]?.outPieces ?? 0,
      ...mendWith(
        swapsToKitThere(
          ofItem.flatMap(({ lines }) => lines),
          subject,
          context,
        ),
      ),
    };
  });
}
