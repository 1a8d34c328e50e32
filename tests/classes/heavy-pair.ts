import type { WholeClass } from './whole-class.ts';

export const heavyPair: WholeClass = {
  text: `Heavy Pair, 38 min, level 2, 8 people
kit: barbells, plates, mats
warm-up 8:00: hip hinge, bodyweight squat
straight x3, rest 90, between letters 120
barbell back squat 3x8
barbell bent-over row 4x8
rest 120
straight x2, 40/40
dead bug
side plank split sides
cool-down 7:00`,
  // 3 × 24 + 2 × 90 + 120 + 4 × 24 + 3 × 90 · 4 × 80, its last rest kept.
  blockSeconds: [480, 738, 120, 320, 420],
  totalSeconds: 2078,
  spareSeconds: 2280 - 2078,
  workSeconds: 72 + 96 + 160,
  // (180 + 120 + 270) + 120 + 160.
  restSeconds: 570 + 120 + 160,
  setsByPattern: {
    squat: 3,
    'horizontal pull': 4,
    'anti-extension': 2,
    'lateral flexion': 1,
  },
  conditioningSeconds: 0,
};
