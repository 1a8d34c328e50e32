import type { WholeClass } from './whole-class.ts';

export const steadyGrind: WholeClass = {
  text: `Steady Grind, 35 min, level 2, 14 people
kit: dumbbells, mats
warm-up 8:00: march, arm circle, hip hinge
straight x3, rest 60
10 deadlift
8 dumbbell shoulder press
rest 90
amrap 10, about 5 rounds
8 goblet squat
8 push-up
10 bent-over row
cool-down 6:00`,
  // 3 × (30 + 60) + 3 × (24 + 60) − 60 · 600.
  blockSeconds: [480, 462, 90, 600, 360],
  totalSeconds: 1992,
  spareSeconds: 2100 - 1992,
  workSeconds: 90 + 72 + 600,
  restSeconds: 300 + 90,
  setsByPattern: {
    hinge: 3,
    'vertical push': 3,
    // 5 rounds: 40 reps ÷ 10, 40 ÷ 10, 50 ÷ 10 but at most 4.
    squat: 4,
    'horizontal push': 4,
    'horizontal pull': 4,
  },
  conditioningSeconds: 0,
};
