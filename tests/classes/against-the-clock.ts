import type { WholeClass } from './whole-class.ts';

export const againstTheClock: WholeClass = {
  text: `Against the Clock, 35 min, level 2, 10 people
kit: dumbbells, mats
warm-up 7:00: march, arm circle
circuit x2, 40/20, between rounds 60
dumbbell reverse lunge alternating
push-up
bent-over row
water 60
for time, cap 12:00
40 bodyweight squat
30 dumbbell shoulder press
20 sit-up
cool-down 6:00`,
  // (180 − 20 + 60) + (180 − 20) · the cap.
  blockSeconds: [420, 380, 60, 720, 360],
  totalSeconds: 1940,
  spareSeconds: 2100 - 1940,
  workSeconds: 6 * 40 + 720,
  // 2 × 20 + 60 + 2 × 20 + 60.
  restSeconds: 200,
  setsByPattern: {
    lunge: 2,
    'horizontal push': 2,
    'horizontal pull': 2,
    // One round of 40, 30 and 20 reps ÷ 10.
    squat: 4,
    'vertical push': 3,
    'trunk flexion': 2,
  },
  conditioningSeconds: 0,
};
