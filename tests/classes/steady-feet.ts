import type { WholeClass } from './whole-class.ts';

export const steadyFeet: WholeClass = {
  text: `Steady Feet, 35 min, level 1, older adults, 14 people
kit: chairs, long bands
warm-up 6:00: march, shoulder roll
mobility 3:00: hip circle, ankle rock
circuit x2, 30/30
chair squat
standing band row
standing side leg raise split sides
calf raise
water 60
song 3:30
step touch
circuit x2, 30/30
band chest press
standing cross crunch
cool-down to the end`,
  // 2 × 4 × 60 − 30 · 2 × 2 × 60, its last rest kept · what is left of 2,100.
  blockSeconds: [360, 180, 450, 60, 210, 240, 600],
  totalSeconds: 2100,
  spareSeconds: 0,
  workSeconds: 12 * 30,
  restSeconds: 7 * 30 + 60 + 4 * 30,
  setsByPattern: {
    squat: 2,
    'horizontal pull': 2,
    isolation: 2 + 2,
    'horizontal push': 2,
    rotation: 2,
  },
  conditioningSeconds: 0,
};
