import type { Context } from '../context.ts';
import { isToTheEnd } from '../plan/blocks-of.ts';
import type { Plan } from '../plan/plan.ts';
import { exactFits } from '../timing/exact-fits.ts';
import type { FitProposal } from '../timing/fit.ts';
import { withLength } from '../timing/fit-ends.ts';
import { teachingSeconds } from '../timing/teaching-seconds.ts';
import type { CheckSubject } from './check-subject.ts';
import { secondsToTheEnd } from './edges-of-class.ts';
import type { FindingBase } from './finding.ts';
import { mendWith } from './mends.ts';

export type TimeUnused = FindingBase & {
  readonly code: 'time-unused';
  readonly unusedSeconds: number;
  readonly teachingSeconds: number;
};

/** More of the teaching time is left over, or put on an overlong cool-down, than a class's small slack. */
export function timeUnused(subject: CheckSubject, context: Context): readonly TimeUnused[] {
  const { fit } = subject;
  const { unusedShareOfTeachingTime, longCoolDownSeconds } = context.settings.checks;
  const unusedSeconds = fit.spareSeconds + Math.max(0, secondsToTheEnd(subject) - longCoolDownSeconds);
  if (unusedSeconds <= fit.teachingSeconds * unusedShareOfTeachingTime) {
    return [];
  }
  return [
    {
      code: 'time-unused',
      severity: 'look at',
      lines: [],
      source: 'common practice',
      unusedSeconds,
      teachingSeconds: fit.teachingSeconds,
      ...mendWith(
        fit.spareSeconds > 0 ? bestOf(fit.proposals)?.edit : moreBeforeTheEnd(subject.plan, context),
      ),
    },
  ];
}

/** A change that leaves a cool-down *to the end* no longer than a long one. */
function moreBeforeTheEnd(plan: Plan, context: Context): string | undefined {
  const open = plan.blocks.findIndex(isToTheEnd);
  const fixed = withLength(plan, open, context.settings.checks.longCoolDownSeconds);
  const fits = exactFits(fixed, teachingSeconds(plan, context.settings), fillers.length, context);
  const lines = bestOf(fits.filter(({ kind }) => kind !== 'warm-up'))
    ?.edit.split('\n')
    .filter((line) => !line.startsWith('cool-down '));
  return lines?.join('\n');
}

/** What a class is filled with, best first: common practice. */
const fillers = ['cool-down', 'warm-up', 'rounds', 'work', 'rest'] as const;

function bestOf(fits: readonly FitProposal[]): FitProposal | undefined {
  return fillers.flatMap((kind) => fits.find((fit) => fit.kind === kind) ?? [])[0];
}
