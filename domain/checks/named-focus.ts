import { groupOfMuscle, type Muscle, muscles } from '../catalogue/muscles.ts';
import type { LetteredBlock, Plan } from '../plan/plan.ts';

const lower: readonly Muscle[] = muscles.filter((muscle) => ['legs', 'hips'].includes(groupOfMuscle[muscle]));
const upper: readonly Muscle[] = muscles.filter((muscle) =>
  ['back', 'chest', 'shoulders', 'arms'].includes(groupOfMuscle[muscle]),
);
const trunk: readonly Muscle[] = ['abdominals', 'obliques', 'lower back'];

/** The everyday words for what a class or block is about; the mapping is ours, common practice. */
const musclesOfWord: Readonly<Record<string, readonly Muscle[]>> = {
  leg: lower,
  legs: lower,
  lower: lower,
  squat: ['quadriceps', 'glutes'],
  lunge: ['quadriceps', 'glutes'],
  hinge: ['hamstrings', 'glutes', 'lower back'],
  posterior: ['hamstrings', 'glutes', 'lower back', 'upper back'],
  deadlift: ['hamstrings', 'glutes', 'lower back'],
  swing: ['hamstrings', 'glutes', 'lower back'],
  hip: ['glutes', 'hip abductors', 'hip adductors', 'hip flexors'],
  hips: ['glutes', 'hip abductors', 'hip adductors', 'hip flexors'],
  glute: ['glutes', 'hip abductors'],
  quads: ['quadriceps'],
  upper: upper,
  arm: ['biceps', 'triceps', 'forearms', 'shoulders'],
  arms: ['biceps', 'triceps', 'forearms', 'shoulders'],
  shoulder: ['shoulders', 'rear shoulders'],
  back: ['upper back', 'lats', 'lower back', 'rear shoulders'],
  pull: ['upper back', 'lats', 'biceps', 'rear shoulders'],
  row: ['upper back', 'lats', 'biceps', 'rear shoulders'],
  push: ['chest', 'shoulders', 'triceps'],
  press: ['chest', 'shoulders', 'triceps'],
  core: trunk,
  abs: trunk,
  trunk: trunk,
  grip: ['forearms'],
};

/** The muscles that a class's title, focus, aim or a block's name says it is about. */
export function namedFocus(plan: Plan, block?: LetteredBlock): ReadonlySet<Muscle> {
  const { title, focus, aim } = plan.facts;
  const said = [title, focus, aim, block?.name].join(' ').toLowerCase();
  const words = said.split(/[^a-z]+/);
  return new Set([
    ...muscles.filter((muscle) => said.includes(muscle)),
    ...words.flatMap((word) => (Object.hasOwn(musclesOfWord, word) ? (musclesOfWord[word] ?? []) : [])),
  ]);
}
