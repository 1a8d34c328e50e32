import type { WholeClass } from './whole-class.ts';

export const twentyTen: WholeClass = {
  text: `Twenty Ten, 35 min, level 3, 12 people
kit: mats
warm-up 6:00: jog on the spot, arm circle
tabata x2, between 60
squat jump
mountain climber
rest 60
tabata
push-up
plank shoulder tap
rest 60
tabata
burpee
cool-down 5:00`,
  // 240 + 60 + 230 · 230 · 240, since the cool-down follows at once.
  blockSeconds: [360, 530, 60, 230, 60, 240, 300],
  totalSeconds: 1780,
  spareSeconds: 2100 - 1780,
  workSeconds: 4 * 160,
  // 80 + 60 + 70, 60, 70, 60, 80.
  restSeconds: 210 + 60 + 70 + 60 + 80,
  setsByPattern: {
    // 8 bouts of 20 s of a ballistic move: a quarter each.
    jump: 2,
    locomotion: 0,
    'horizontal push': 2,
    'anti-rotation': 2,
  },
  // 8 bouts of climbers, 8 of burpees.
  conditioningSeconds: 160 + 160,
};
