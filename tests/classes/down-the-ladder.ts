import type { WholeClass } from './whole-class.ts';

export const downTheLadder: WholeClass = {
  text: `Down the Ladder, 33 min, level 2, 12 people
kit: dumbbells, mats
warm-up 6:00: march, arm circle
circuit x3, 40/20
? hinge
single-arm row split sides
dead bug
rest 60
ladder 10 to 2 step 2
goblet squat
push-up
set-up 60
amrap 6
10 sit-up
10 bodyweight squat
cool-down 5:00`,
  // 3 × 180 − 20 · 30 reps × (3 + 2) s · 360.
  blockSeconds: [360, 520, 60, 150, 60, 360, 300],
  totalSeconds: 1810,
  spareSeconds: 1980 - 1810,
  workSeconds: 9 * 40 + 150 + 360,
  restSeconds: 8 * 20 + 60,
  setsByPattern: {
    'horizontal pull': 3,
    'anti-extension': 3,
    // 30 reps ÷ 10; then 360 s ÷ (30 + 20 + 5 down + 5 up) = 6 rounds of 10, at most 4.
    squat: 3 + 4,
    'horizontal push': 3,
    'trunk flexion': 4,
  },
  conditioningSeconds: 0,
  openLines: 1,
};
