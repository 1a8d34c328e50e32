import type { Context } from '../context.ts';
import { movesByLine } from '../timing/planned-moves.ts';
import type { CheckSubject } from './check-subject.ts';
import type { FindingBase } from './finding.ts';
import { labelOf, mendWith, secondsToGrow } from './mends.ts';
import { isWeighted } from './move-facts.ts';

export type NoTimeToWipe = FindingBase & {
  readonly code: 'no-time-to-wipe';
  readonly restSeconds: number;
  readonly wipeSeconds: number;
};

/** Kit passes from hand to hand at stations, and the rest is too short to wipe it. */
export function noTimeToWipe(subject: CheckSubject, context: Context): readonly NoTimeToWipe[] {
  const { plan } = subject;
  const { wipeSeconds } = context.settings.checks;
  const handed = [...movesByLine(plan, context).values()].flatMap(
    ({ letter, planned, kit, block: index }) => {
      const block = plan.blocks[index];
      const restSeconds =
        block?.kind === 'stations'
          ? (letter.restSeconds ?? block.intervals[0]?.restSeconds ?? 0)
          : wipeSeconds;
      return isWeighted(kit) && restSeconds < wipeSeconds ? [{ id: planned.id, restSeconds }] : [];
    },
  );
  return handed.length === 0
    ? []
    : [
        {
          code: 'no-time-to-wipe',
          severity: 'good to know',
          lines: handed.map(({ id }) => id),
          source: 'common practice',
          restSeconds: Math.min(...handed.map(({ restSeconds }) => restSeconds)),
          wipeSeconds,
          ...mendWith(longerRest(subject, context)),
        },
      ];
}

/** Where there is one block of stations with one rest for all, and the class has the time for it. */
function longerRest(subject: CheckSubject, context: Context): string | undefined {
  const { plan } = subject;
  const [block, another] = plan.blocks.flatMap((each) => (each.kind === 'stations' ? [each] : []));
  const [interval, others] = block?.intervals ?? [];
  if (block === undefined || interval === undefined || (another ?? others) !== undefined) return undefined;
  if (block.letters.some(({ restSeconds }) => restSeconds !== undefined)) return undefined;
  const { wipeSeconds } = context.settings.checks;
  const more = (wipeSeconds - interval.restSeconds) * block.rounds * block.letters.length;
  return more <= secondsToGrow(subject, context)
    ? `block ${labelOf(plan, block.letters[0]?.id ?? '')} ${interval.workSeconds}/${wipeSeconds}`
    : undefined;
}
