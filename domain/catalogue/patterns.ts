/** Movement patterns, each move having exactly one. */
export const patterns = [
  'squat',
  'hinge',
  'lunge',
  'horizontal push',
  'vertical push',
  'horizontal pull',
  'vertical pull',
  'carry',
  'trunk flexion',
  'anti-extension',
  'anti-rotation',
  'rotation',
  'lateral flexion',
  'isolation',
  'jump',
  'locomotion',
  'mobility',
] as const;

export type Pattern = (typeof patterns)[number];
