import type { Effort, MoveSides, Position } from '../../../domain/catalogue/move.ts';
import type { Muscle, MuscleGroup } from '../../../domain/catalogue/muscles.ts';
import type { Pattern } from '../../../domain/catalogue/patterns.ts';

/** The catalogue's own terms, as people read them. */
export const catalogueWords = {
  muscle: (muscle: Muscle): string => muscle,
  muscleGroup: (group: MuscleGroup): string => group,
  pattern: (pattern: Pattern): string => pattern,
  position: (position: Position): string => position,
  sides: (sides: MoveSides): string => sides,
  effort: (effort: Effort): string => effort,
} as const;
