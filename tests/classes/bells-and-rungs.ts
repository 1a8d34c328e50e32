import type { WholeClass } from './whole-class.ts';

export const bellsAndRungs: WholeClass = {
  text: `Bells and Rungs, 40 min, level 2, 10 people
kit: kettlebells, mats
warm-up 7:00: march, hip hinge
every 1:30 x6
12 kettlebell swing + 8 goblet squat
rest 90
ladder 10 to 1 in 8:00
push-up
kettlebell deadlift
rest 60
circuit x2, 30/15
kettlebell overhead press split sides
dead bug
suitcase march split sides
cool-down to the end`,
  // 6 × 90 · the cap · 2 × 3 × 45, its last rest kept · what is left of 2,400.
  blockSeconds: [420, 540, 90, 480, 60, 270, 540],
  totalSeconds: 2400,
  spareSeconds: 0,
  // 6 × (12 × 2 + 8 × 3) + 480 + 6 × 30.
  workSeconds: 288 + 480 + 180,
  // 6 × 42 + 90 + 60 + 6 × 15.
  restSeconds: 252 + 90 + 60 + 90,
  setsByPattern: {
    // 6 swings at half; 55 deadlifts ÷ 10, at most 4 under a cap.
    hinge: 3 + 4,
    // 6 bouts of 8 reps in 24 s, at most 4.
    squat: 4,
    'horizontal push': 4,
    'vertical push': 2,
    'anti-extension': 2,
    carry: 2,
  },
  conditioningSeconds: 0,
};
