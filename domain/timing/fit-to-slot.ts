import type { Plan } from '../plan/plan.ts';
import { exactFits } from './exact-fits.ts';
import type { Fit, LateStartCut } from './fit.ts';
import { lengthMeter } from './length-of-class.ts';
import { teachingSeconds } from './teaching-seconds.ts';
import type { TimingContext } from './timing-context.ts';

const mostProposals = 3;

/** Late starts for which a cut stands ready. */
const lateStartSeconds = [180, 300] as const;

/**
 * The class against its teaching time. Where it does not fit: at most three exact proposals of different
 * kinds; and a ready cut for each late start that the spare time does not cover.
 */
export function fitToSlot(plan: Plan, context: TimingContext): Fit {
  const teaching = teachingSeconds(plan, context.settings);
  const { totalSeconds } = lengthMeter(context)(plan);
  return {
    teachingSeconds: teaching,
    totalSeconds,
    spareSeconds: teaching - totalSeconds,
    proposals: totalSeconds === teaching ? [] : exactFits(plan, teaching, mostProposals, context),
    lateStartCuts: lateStartSeconds.map((late) => cutFor(late, plan, teaching, totalSeconds, context)),
  };
}

function cutFor(
  lateSeconds: number,
  plan: Plan,
  teaching: number,
  totalSeconds: number,
  context: TimingContext,
): LateStartCut {
  const target = teaching - lateSeconds;
  const [proposal] = totalSeconds <= target ? [] : exactFits(plan, target, 1, context);
  return { lateSeconds, ...(proposal === undefined ? {} : { proposal }) };
}
