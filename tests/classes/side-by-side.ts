import type { WholeClass } from './whole-class.ts';

export const sideBySide: WholeClass = {
  text: `Side by Side, 35 min, level 2, 12 people
kit: dumbbells, mats
warm-up 6:00: leg swing, arm circle
circuit, work 20 30 40, rest 10
goblet squat
push-up
rest 60
straight x2, 45/30
single-arm row each side
split squat split sides
rest 60
circuit x3, 30/15
by round: squat pulse, sumo squat, squat jump
single-arm floor press + glute bridge, whole set each side
cool-down 5:00`,
  // 60 + 80 + 100 − 10 · 2 × 120 + 2 × 75 − 30 · 3 × (45 + 135), its last rest kept.
  blockSeconds: [360, 230, 60, 360, 60, 540, 300],
  totalSeconds: 1910,
  spareSeconds: 2100 - 1910,
  // 2 × 90 + 2 × 90 + 2 × 44 + 3 × (30 + 120); the two odd seconds are changes of side.
  workSeconds: 180 + 180 + 88 + 450,
  // 5 × 10 + 60 + 3 × 30 + 60 + 6 × 15.
  restSeconds: 50 + 60 + 90 + 60 + 90,
  setsByPattern: {
    // Goblet squat ½ + 1 + 1; pulses 1, sumo 1.
    squat: 2.5 + 2,
    // Push-up ½ + 1 + 1; floor press: two sides make one set, 3 rounds.
    'horizontal push': 2.5 + 3,
    'horizontal pull': 2,
    lunge: 2,
    jump: 0.5,
    // The bridge twice a round.
    hinge: 6,
  },
  conditioningSeconds: 0,
};
