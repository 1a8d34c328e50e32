import type { WholeClass } from './whole-class.ts';

export const rowAndSquat: WholeClass = {
  text: `Row & Squat, 40 min, level 2, 12 people
kit: dumbbells, mats
warm-up 6:00: march, hip hinge, arm circles
straight x3, 40/20
bent-over row
goblet squat
rest 60, explain
emom 10
8 push-up
10 dead bug
rest 60
circuit x3, 30/15
reverse lunge alternating
dumbbell floor press + glute bridge
? core
cool-down to the end`,
  // 6 × 60 − 20 · 10 × 60 · 3 × (45 + 75 + 45), its last rest kept · what is left of 2,400.
  blockSeconds: [360, 340, 60, 600, 60, 495, 485],
  totalSeconds: 2400,
  spareSeconds: 0,
  // 6 × 40 + 5 × (8 × 2) + 5 × (10 × 4) + 3 × (30 + 60 + 30).
  workSeconds: 240 + 80 + 200 + 360,
  // 5 × 20 + 60 + (600 − 280) + 60 + 9 × 15.
  restSeconds: 100 + 60 + 320 + 60 + 135,
  setsByPattern: {
    'horizontal pull': 3,
    squat: 3,
    // Push-ups: 5 bouts of 8 reps in 16 s, at most 4 of such short ones; floor press 3.
    'horizontal push': 4 + 3,
    'anti-extension': 5,
    lunge: 3,
    hinge: 3,
  },
  conditioningSeconds: 0,
  setsByMuscle: {
    'upper back': 3,
    lats: 1.5,
    biceps: 1.5,
    // Half of row 3, push-up 4, floor press 3.
    shoulders: 1.5 + 2 + 1.5,
    quadriceps: 3 + 3,
    // Half of goblet squat 3; lunge 3, bridge 3.
    glutes: 1.5 + 3 + 3,
    hamstrings: 1.5 + 1.5 + 1.5,
    abdominals: 1.5 + 5,
    chest: 4 + 3,
    triceps: 2 + 1.5,
    'hip flexors': 2.5,
    obliques: 2.5,
    'lower back': 1.5,
  },
  openLines: 1,
};
