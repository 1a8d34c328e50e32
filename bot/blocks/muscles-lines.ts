import { groupOfMuscle, muscleGroups, muscles } from '../../domain/catalogue/muscles.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { energyText, type Show } from './draft-card.ts';
import { clip, limits } from './limits.ts';

/** Interval sets and time under tension of every muscle touched, by public-guideline group. */
export function musclesLines(open: OpenPlan, show: Show): readonly string[] {
  const { report } = open;
  const { words } = show;
  if (report.kind !== 'report') return [words.flow.fixLinesFirst];
  const { setsByMuscle, tensionSecondsByMuscle } = report.load;
  const lines = muscleGroups.flatMap((group) => {
    const touched = muscles.filter(
      (muscle) => groupOfMuscle[muscle] === group && (tensionSecondsByMuscle[muscle] ?? 0) > 0,
    );
    return touched.length === 0
      ? []
      : [
          `*${words.catalogue.muscleGroup(group)}*  ${touched
            .map(
              (muscle) =>
                `${words.catalogue.muscle(muscle)} ${words.sets(setsByMuscle[muscle] ?? 0)} (${words.length(tensionSecondsByMuscle[muscle] ?? 0)})`,
            )
            .join(' · ')}`,
        ];
  });
  return [words.card.musclesLead, ...lines, energyText(report.load, words)];
}

export function renderMuscles(open: OpenPlan, show: Show): Message {
  return {
    text: clip(
      musclesLines(open, show)
        .filter((line) => line !== '')
        .join('\n'),
      limits.topLevelText,
    ),
  };
}
