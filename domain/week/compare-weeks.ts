import type { Muscle } from '../catalogue/muscles.ts';
import type { WeekReport } from './week-report.ts';

/** A first-priority muscle that one of two weeks left short; sets of each. */
export type MuscleChange = { readonly muscle: Muscle; readonly before: number; readonly now: number };

/**
 * A week beside the one before it. `unknown` where one of them has no class whose load is known. The missing
 * sets are those of all under-trained muscles together.
 */
export type WeekComparison =
  | { readonly kind: 'unknown' }
  | {
      readonly kind: 'better' | 'worse' | 'alike';
      readonly missingBefore: number;
      readonly missingNow: number;
      /** Under-trained before, with enough now. */
      readonly mended: readonly MuscleChange[];
      /** Under-trained now, with enough before. */
      readonly fresh: readonly MuscleChange[];
      /** Classes whose load is known, of each week. */
      readonly withPlanBefore: number;
      readonly withPlanNow: number;
    };

/** Better or worse goes by the missing sets; where these are alike, by the groups on fewer than two days. */
export function compareWeeks(before: WeekReport, now: WeekReport): WeekComparison {
  if (before.trust.withPlan === 0 || now.trust.withPlan === 0) return { kind: 'unknown' };
  const [missingBefore, missingNow] = [missingSets(before), missingSets(now)];
  const more = missingNow - missingBefore || groupsShort(now) - groupsShort(before);
  const [shortBefore, shortNow] = [musclesShort(before), musclesShort(now)];
  const change = (muscle: Muscle): MuscleChange => ({
    muscle,
    before: setsOf(before, muscle),
    now: setsOf(now, muscle),
  });
  return {
    kind: more === 0 ? 'alike' : more < 0 ? 'better' : 'worse',
    missingBefore,
    missingNow,
    mended: shortBefore.filter((muscle) => !shortNow.includes(muscle)).map(change),
    fresh: shortNow.filter((muscle) => !shortBefore.includes(muscle)).map(change),
    withPlanBefore: before.trust.withPlan,
    withPlanNow: now.trust.withPlan,
  };
}

function missingSets({ underTrained }: WeekReport): number {
  return underTrained.reduce((sum, each) => sum + (each.kind === 'muscle' ? each.missingSets : 0), 0);
}

function groupsShort({ underTrained }: WeekReport): number {
  return underTrained.filter(({ kind }) => kind === 'group').length;
}

function musclesShort({ underTrained }: WeekReport): readonly Muscle[] {
  return underTrained.flatMap((each) => (each.kind === 'muscle' ? [each.muscle] : []));
}

function setsOf({ muscles }: WeekReport, wanted: Muscle): number {
  return muscles.find(({ muscle }) => muscle === wanted)?.sets ?? 0;
}
