import type { WholeClass } from './whole-class.ts';

export const firstSteps: WholeClass = {
  text: `First Steps, 25 min, level 1, beginners, 10 people
kit: mats
warm-up 5:00: march, hip hinge
circuit x3, 30/15, count-in 5
bodyweight squat
glute bridge
rest 45
emom 6, 30 work, count-in 5
superman
bird dog
cool-down to the end`,
  // 5 of its own + 3 × 90 − 15 · the rest, whose last 5 s are the count-in · what is left of 1,500.
  blockSeconds: [300, 260, 45, 360, 535],
  totalSeconds: 1500,
  spareSeconds: 0,
  workSeconds: 6 * 30 + 6 * 30,
  restSeconds: 5 * 15 + 40 + 6 * 30,
  setsByPattern: {
    squat: 3,
    hinge: 3 + 3,
    'anti-rotation': 3,
  },
  conditioningSeconds: 0,
};
