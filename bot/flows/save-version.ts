import type { Muscle } from '../../domain/catalogue/muscles.ts';
import { muscles } from '../../domain/catalogue/muscles.ts';
import type { ClassProblems, ClassReport } from '../../domain/class-report.ts';
import type { Load } from '../../domain/load/load.ts';
import type { PlanRecord, VersionCause } from '../../domain/plan/plan-life.ts';
import type { MuscleLoad, PlanVersion } from '../../domain/ports.ts';
import type { Desk } from '../handling.ts';

export type NewVersion = {
  readonly text: string;
  readonly report: ClassReport | ClassProblems;
  readonly cause: VersionCause;
  readonly by: string;
};

/** Stores the version that `record` stands at after this change; versions are never rewritten. */
export async function saveVersion(desk: Desk, record: PlanRecord, made: NewVersion): Promise<PlanVersion> {
  const version: PlanVersion = {
    planId: record.id,
    version: record.currentVersion,
    text: made.text,
    ...(made.report.plan === undefined ? {} : { plan: made.report.plan }),
    ...told(made.report),
    catalogueEdition: desk.catalogue.edition,
    madeBy: made.by,
    madeAt: desk.now,
    cause: made.cause,
  };
  await desk.stores.plans.addVersion(desk.studioId, version);
  return version;
}

/** Load rows as told: one a muscle that was touched. */
function loadRows(load: Load): readonly MuscleLoad[] {
  return muscles.flatMap((muscle: Muscle) => {
    const sets = load.setsByMuscle[muscle] ?? 0;
    const tensionSeconds = load.tensionSecondsByMuscle[muscle] ?? 0;
    return sets === 0 && tensionSeconds === 0 ? [] : [{ muscle, sets, tensionSeconds }];
  });
}

function told(
  report: ClassReport | ClassProblems,
): Pick<PlanVersion, 'problemCount' | 'totalSeconds' | 'load' | 'setsByPattern' | 'findingCodes'> {
  if (report.kind === 'problems') {
    return {
      problemCount: report.problems.length,
      totalSeconds: 0,
      load: [],
      setsByPattern: {},
      findingCodes: [],
    };
  }
  return {
    problemCount: 0,
    totalSeconds: report.timeline.totalSeconds,
    load: loadRows(report.load),
    setsByPattern: report.load.setsByPattern,
    findingCodes: report.findings.map(({ code }) => code),
  };
}
