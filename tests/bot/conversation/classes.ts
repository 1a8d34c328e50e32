/** Thirty minutes to the second, at level 2. */
export const pushAndHinge = `Push & Hinge, 30 min, level 2, 10 people
warm-up 6:00: march, hip hinge
circuit x3, 40/20
push-up
kettlebell swing
plank
rest 60
emom 6
8 goblet squat
10 bent-over row
cool-down to the end`;
