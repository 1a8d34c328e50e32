import { groupOfMuscle, type Muscle, muscleGroups, muscles } from '../../domain/catalogue/muscles.ts';
import type { OpenPlan } from '../flows/open-plan.ts';
import type { Message } from '../handling.ts';
import { energyText } from './draft-card.ts';
import { clip, limits } from './limits.ts';
import type { Show } from './show.ts';

/** Interval sets and time under tension of every muscle touched, by public-guideline group; one alone in its group by its own name. */
export function musclesLines(open: OpenPlan, show: Show): readonly string[] {
  const { report } = open;
  const { words } = show;
  if (report.kind !== 'report') return [words.flow.fixLinesFirst];
  const { setsByMuscle, tensionSecondsByMuscle } = report.load;
  const amount = (muscle: Muscle) =>
    `${words.sets(setsByMuscle[muscle] ?? 0)} (${words.length(tensionSecondsByMuscle[muscle] ?? 0)})`;
  const lines = muscleGroups.flatMap((group) => {
    const touched = muscles.filter(
      (muscle) => groupOfMuscle[muscle] === group && (tensionSecondsByMuscle[muscle] ?? 0) > 0,
    );
    const [first, ...others] = touched;
    if (first === undefined) return [];
    if (others.length === 0) return [`*${words.catalogue.muscle(first)}*  ${amount(first)}`];
    const each = touched.map((muscle) => `${words.catalogue.muscle(muscle)} ${amount(muscle)}`);
    return [`*${words.catalogue.muscleGroup(group)}*  ${each.join(' · ')}`];
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
