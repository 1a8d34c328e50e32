import type { WholeClass } from './whole-class.ts';

export const roundTheRoom: WholeClass = {
  text: `Round the Room, 40 min, mixed, 12 people
kit: dumbbells, steps, long bands, mats
set-up 120
warm-up 6:00: step touch
stations x3, 45/15, 2 each
step-up alternating
push-up
seated band row
goblet squat
plank
farmer march
water 90
finisher, 60/0
jumping jack
wall sit
cool-down to the end`,
  // 3 × 6 × 60 − 15 · 2 × 60 · what is left of 2,400.
  blockSeconds: [120, 360, 1065, 90, 120, 645],
  totalSeconds: 2400,
  spareSeconds: 0,
  workSeconds: 18 * 45 + 120,
  restSeconds: 17 * 15 + 90,
  setsByPattern: {
    lunge: 3,
    'horizontal push': 3,
    'horizontal pull': 3,
    // The wall sit is a hold: half.
    squat: 3 + 0.5,
    'anti-extension': 1.5,
    carry: 3,
    jump: 0,
  },
  conditioningSeconds: 60,
};
