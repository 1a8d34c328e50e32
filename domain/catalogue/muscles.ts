/** The eighteen muscles that load is counted for; also the keys under which load rows are stored. */
export const muscles = [
  'quadriceps',
  'hamstrings',
  'calves',
  'glutes',
  'hip adductors',
  'hip abductors',
  'hip flexors',
  'upper back',
  'lats',
  'lower back',
  'abdominals',
  'obliques',
  'chest',
  'shoulders',
  'rear shoulders',
  'biceps',
  'triceps',
  'forearms',
] as const;

export type Muscle = (typeof muscles)[number];

/** The major muscle groups of the US Physical Activity Guidelines (2008; 2nd edition 2018). */
export const muscleGroups = ['legs', 'hips', 'back', 'abdomen', 'chest', 'shoulders', 'arms'] as const;

export type MuscleGroup = (typeof muscleGroups)[number];

/** Which public-guideline group each muscle belongs to; the mapping is ours, common practice. */
export const groupOfMuscle: Readonly<Record<Muscle, MuscleGroup>> = {
  quadriceps: 'legs',
  hamstrings: 'legs',
  calves: 'legs',
  glutes: 'hips',
  'hip adductors': 'hips',
  'hip abductors': 'hips',
  'hip flexors': 'hips',
  'upper back': 'back',
  lats: 'back',
  'lower back': 'back',
  abdominals: 'abdomen',
  obliques: 'abdomen',
  chest: 'chest',
  shoulders: 'shoulders',
  'rear shoulders': 'shoulders',
  biceps: 'arms',
  triceps: 'arms',
  forearms: 'arms',
};
