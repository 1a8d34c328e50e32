import type { WholeClass } from './whole-class.ts';

export const twoByTwo: WholeClass = {
  text: `Two by Two, 35 min, level 2, 12 people
kit: kettlebells, mats
warm-up 6:00: march, hip hinge
circuit x3, 30/20, in pairs, swap
goblet squat
plank
rest 60
circuit x4, 40/20, in pairs, one rests
kettlebell swing
push-up
cool-down to the end`,
  // 3 × (80 + 80) − 20 · 4 × (80 + 80), its last rest kept · what is left of 2,100.
  blockSeconds: [360, 460, 60, 640, 580],
  totalSeconds: 2100,
  spareSeconds: 0,
  workSeconds: 12 * 30 + 8 * 40,
  restSeconds: 5 * 20 + 60 + 8 * 40,
  setsByPattern: {
    squat: 6,
    // 6 holds of 30 s at half.
    'anti-extension': 3,
    hinge: 2,
    'horizontal push': 4,
  },
  conditioningSeconds: 0,
};
