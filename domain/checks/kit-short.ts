import type { KitItem } from '../catalogue/kit.ts';
import type { Context } from '../context.ts';
import { kitName } from '../shorthand/kit-words.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { itemsThatServe, kitCounts } from './kit-needs.ts';
import { mendWith } from './mends.ts';
import { swapsToKitThere } from './swaps-to-kit-there.ts';

export type KitShort = FindingBase & {
  readonly code: 'kit-short';
  readonly item: KitItem;
  readonly needPieces: number;
  readonly havePieces: number;
  /** The class's own `kit:` line leaves it out; pieces are those of one person. */
  readonly isUnlisted?: true;
};

/**
 * A block needs more pieces at once than the room has for that head count; the worst one of a kind is told. So
 * is what the class's own kit line leaves out.
 */
export function kitShort(subject: CheckSubject, context: Context): readonly KitShort[] {
  const unlisted = unlistedKit(subject, context);
  const told = new Set(unlisted.map(({ item }) => item));
  return [...unlisted, ...shortOfRoom(subject, context).filter(({ item }) => !told.has(item))];
}

function unlistedKit({ plan }: CheckSubject, context: Context): readonly KitShort[] {
  const { kit: listed } = plan.facts;
  if (listed === undefined) return [];
  const needs = [...movesByLine(plan, context).values()].flatMap(({ planned, kit }) =>
    kit
      .filter(({ item }) => item !== 'mat' && !itemsThatServe(item).some((one) => listed.includes(one)))
      .map((need) => ({ ...need, line: planned.id })),
  );
  return [...new Set(needs.map(({ item }) => item))].map((item) => {
    const ofItem = needs.filter((need) => need.item === item);
    return {
      code: 'kit-short',
      severity: 'must fix',
      lines: ofItem.map(({ line }) => line),
      source: 'common practice',
      item,
      needPieces: Math.max(...ofItem.map(({ pieces }) => pieces)),
      havePieces: 0,
      isUnlisted: true,
      mend: `kit ${[...listed, item].map(kitName).join(', ')}`,
    };
  });
}

function shortOfRoom(subject: CheckSubject, context: Context): readonly KitShort[] {
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
        swapsToKitThere(
          ofItem.flatMap(({ lines }) => lines),
          subject,
          context,
        ),
      ),
    };
  });
}
