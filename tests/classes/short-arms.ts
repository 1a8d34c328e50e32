import type { WholeClass } from './whole-class.ts';

export const shortArms: WholeClass = {
  text: `Short Arms, 18 min, level 2, 9 people
kit: dumbbells, mats
explain 60
warm-up 5:00: arm circle, march
circuit x2, 45/15
biceps curl + hammer curl, burnout
triceps kickback
finisher x2, 30/10
mountain climber
squat thrust
clear-up 90`,
  // 2 × (105 + 60), its last rest kept · 2 × 80 − 10.
  blockSeconds: [60, 300, 330, 150, 90],
  totalSeconds: 930,
  spareSeconds: 1080 - 930,
  workSeconds: 2 * 135 + 4 * 30,
  restSeconds: 4 * 15 + 3 * 10,
  setsByPattern: { isolation: 6, locomotion: 0, jump: 0 },
  conditioningSeconds: 4 * 30,
};
